import { type ChainState, Contact } from './chainState.ts';
import { storedEnergy } from './couplerLaw.ts';
import { chainForce } from './sweeps.ts';

/** Moves every vehicle by the step as solved and books the work of running friction on all but the engines, J. */
export function commitVehicles(state: ChainState): void {
  const { count, step, sigma, speed, mean, mass, rolling, curve, viscous, flange, drag, slide, held, heldSpeed } = state;
  const { force, isEngine } = state;
  let rollingWork = 0;
  let curveWork = 0;
  let flangeWork = 0;
  let ahead = 0;
  for (let i = 0; i < count; i++) {
    const behind = force[i]!;
    const flangeForce = flange[i]! * Math.abs(ahead + behind);
    const V = mean[i]!;
    const v0 = speed[i]!;
    const lin = viscous[i]!;
    let v1 = 2 * V - v0;
    if (held[i] !== 0) {
      v1 = heldSpeed[i]!;
      // Brought to rest within the step by whatever friction it took.
      if (isEngine[i] === 0 && v0 !== 0) rollingWork += (chainForce(state, i) + (mass[i]! * v0) / step) * V * step;
    } else if (isEngine[i] === 0) {
      const path = slide[i]! * V * step;
      rollingWork += lin * V * V * step + rolling[i]! * path;
      curveWork += curve[i]! * path;
      flangeWork += flangeForce * path;
    }
    sigma[i] = sigma[i]! + step * V;
    speed[i] = v1;
    drag[i] = rolling[i]! + curve[i]! + lin * Math.abs(v1) + flangeForce;
    if (isEngine[i] === 0) {
      const way = v1 > 0 ? 1 : v1 < 0 ? -1 : 0;
      slide[i] = way;
      held[i] = way === 0 ? 1 : 0;
    }
    ahead = behind;
  }
  state.losses.rolling += rollingWork;
  state.losses.curve += curveWork;
  state.losses.flange += flangeWork;
}

/** Keeps the peaks and books what the joints' dampers took, J. Returns the first joint past its release force, or -1. */
export function commitJoints(state: ChainState): number {
  const { count, step, force, draftPeak, buffPeak, damping, rate, contact, extension, release } = state;
  let taken = 0;
  let parting = -1;
  for (let j = 0; j < count - 1; j++) {
    const f = force[j]!;
    if (f > draftPeak[j]!) draftPeak[j] = f;
    else if (f < buffPeak[j]!) buffPeak[j] = f;
    const branch = contact[j]!;
    if (branch === Contact.mixed) {
      const e0 = extension[j]!;
      const de = rate[j]! * step;
      taken += f * de - (storedEnergy(state.laws[j]!, e0 + de) - storedEnergy(state.laws[j]!, e0));
    } else if (branch !== Contact.slack) {
      const r = rate[j]!;
      taken += damping[j]! * r * r * step;
    }
    if (f > release[j]! && parting < 0) parting = j;
  }
  state.losses.coupler += taken;
  return parting;
}
