import {
  BUFF_PEAK,
  type ChainRows,
  CONTACT,
  CURVE,
  DAMPING,
  DRAFT_PEAK,
  EXTENSION,
  FLANGE,
  FORCE,
  HELD,
  HELD_SPEED,
  INERTIA,
  IS_ENGINE,
  MEAN,
  MIXED,
  RATE,
  RELEASE,
  ROLLING,
  SIGMA,
  SLACK,
  SLIDE,
  SPEED,
  STRIDE,
  VISCOUS,
} from './chainRows.ts';
import { storedEnergy } from './couplerLaw.ts';
import { chainForce } from './sweeps.ts';

/**
 * Moves every vehicle by the step as solved, keeps the joints' peaks, and books the work of running friction (but the
 * engines') and of the joints' dampers, J. Returns the first joint past its release force, or -1.
 */
export function commit(chain: ChainRows): number {
  const { rows: r, step } = chain;
  const last = (chain.count - 1) * STRIDE;
  let rollingWork = 0;
  let curveWork = 0;
  let flangeWork = 0;
  let damperWork = 0;
  let parting = -1;
  let ahead = 0;
  for (let v = 0; v <= last; v += STRIDE) {
    const force = r[v + FORCE]!;
    const mean = r[v + MEAN]!;
    const v0 = r[v + SPEED]!;
    const moved = step * mean;
    r[v + SIGMA] = r[v + SIGMA]! + moved;
    if (r[v + IS_ENGINE]! !== 0) {
      r[v + SPEED] = r[v + HELD]! !== 0 ? r[v + HELD_SPEED]! : 2 * mean - v0;
    } else if (r[v + HELD]! !== 0) {
      // Brought to rest within the step by whatever friction it took.
      if (v0 !== 0) rollingWork += (chainForce(r, v) + 0.5 * r[v + INERTIA]! * v0) * moved;
      r[v + SPEED] = 0;
    } else {
      const path = r[v + SLIDE]! * moved;
      rollingWork += r[v + VISCOUS]! * mean * moved + r[v + ROLLING]! * path;
      curveWork += r[v + CURVE]! * path;
      flangeWork += r[v + FLANGE]! * Math.abs(ahead + force) * path;
      const v1 = 2 * mean - v0;
      r[v + SPEED] = v1;
      if (v1 === 0) {
        r[v + HELD] = 1;
        r[v + SLIDE] = 0;
      }
    }
    ahead = force;
    if (force > r[v + DRAFT_PEAK]!) r[v + DRAFT_PEAK] = force;
    else if (force < r[v + BUFF_PEAK]!) r[v + BUFF_PEAK] = force;
    const contact = r[v + CONTACT]!;
    if (contact === MIXED) {
      const law = chain.laws[v / STRIDE]!;
      const e0 = r[v + EXTENSION]!;
      const stretch = r[v + RATE]! * step;
      damperWork += force * stretch - (storedEnergy(law, e0 + stretch) - storedEnergy(law, e0));
    } else if (contact !== SLACK) damperWork += r[v + DAMPING]! * r[v + RATE]! * r[v + RATE]! * step;
    if (force > r[v + RELEASE]! && parting < 0) parting = v / STRIDE;
  }
  chain.losses.rolling += rollingWork;
  chain.losses.curve += curveWork;
  chain.losses.flange += flangeWork;
  chain.losses.coupler += damperWork;
  return parting;
}
