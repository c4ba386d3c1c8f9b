import { type ChainState, Contact } from './chainState.ts';
import { storedEnergy } from './couplerLaw.ts';
import { chainForce } from './sweeps.ts';

/**
 * Moves every vehicle by the step as solved, keeps the joints' peaks, and books the work of running friction (but the
 * engines') and of the joints' dampers, J. Returns the first joint past its release force, or -1.
 */
export function commit(state: ChainState): number {
  const { step, sigma, speed, mean, inertia, rolling, curve, viscous, flange, slide, held, heldSpeed } = state;
  const { force, isEngine, draftPeak, buffPeak, damping, rate, contact, extension, release } = state;
  const last = state.count - 1;
  let rollingWork = 0;
  let curveWork = 0;
  let flangeWork = 0;
  let damperWork = 0;
  let parting = -1;
  let ahead = 0;
  for (let i = 0; i <= last; i++) {
    const f = force[i]!;
    const V = mean[i]!;
    const v0 = speed[i]!;
    const moved = step * V;
    sigma[i] = sigma[i]! + moved;
    if (isEngine[i] !== 0) {
      speed[i] = held[i] !== 0 ? heldSpeed[i]! : 2 * V - v0;
    } else if (held[i] !== 0) {
      // Brought to rest within the step by whatever friction it took.
      if (v0 !== 0) rollingWork += (chainForce(state, i) + 0.5 * inertia[i]! * v0) * moved;
      speed[i] = 0;
    } else {
      const path = slide[i]! * moved;
      rollingWork += viscous[i]! * V * moved + rolling[i]! * path;
      curveWork += curve[i]! * path;
      flangeWork += flange[i]! * Math.abs(ahead + f) * path;
      const v1 = 2 * V - v0;
      speed[i] = v1;
      if (v1 === 0) {
        held[i] = 1;
        slide[i] = 0;
      }
    }
    ahead = f;
    if (i === last) break;
    if (f > draftPeak[i]!) draftPeak[i] = f;
    else if (f < buffPeak[i]!) buffPeak[i] = f;
    const branch = contact[i]!;
    if (branch === Contact.mixed) {
      const e0 = extension[i]!;
      const de = rate[i]! * step;
      damperWork += f * de - (storedEnergy(state.laws[i]!, e0 + de) - storedEnergy(state.laws[i]!, e0));
    } else if (branch !== Contact.slack) damperWork += damping[i]! * rate[i]! * rate[i]! * step;
    if (f > release[i]! && parting < 0) parting = i;
  }
  state.losses.rolling += rollingWork;
  state.losses.curve += curveWork;
  state.losses.flange += flangeWork;
  state.losses.coupler += damperWork;
  return parting;
}
