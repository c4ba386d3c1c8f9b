import { flangeH0Mm, gaugeMm, type Vehicle, wheelsetMm } from '../../stock/index.ts';
import { railCentres } from '../../track/index.ts';

const middle = ([least, greatest]: readonly [number, number]): number => (least + greatest) / 2;

/** Check gauge K and flange T of a wheelset that says nothing of its own, in gauges: the middle of NEM 310 (2009), 15.2 and 0.8 mm in H0. */
const checkInGauges = middle(wheelsetMm[16.5].check) / gaugeMm.H0;
const flangeInGauges = middle(flangeH0Mm.thickness) / gaugeMm.H0;

/** How far a usual wheelset's play may be off either way, in gauges: 0.1 mm in H0, all of NEM 310 (2009) one way or the other. */
const [checkLeast, checkMost] = wheelsetMm[16.5].check;
const [flangeLeast, flangeMost] = flangeH0Mm.thickness;
const playToleranceInGauges = (checkMost - checkLeast + flangeMost - flangeLeast) / 4 / gaugeMm.H0;

/** What of a vehicle says how its wheels stand between the rails. */
export type Wheelset = Pick<Vehicle, 'gauge' | 'wheels'>;

/**
 * How far a wheelset may stand to either side of the middle of the track, m: half of gauge less back to back and two flanges. A usual one is
 * (16.5 - 15.2 - 0.8)/2 = 0.25 mm in H0 (0.15 to 0.35), other gauges in proportion; a measured back to back takes its place. Wheels too wide for the
 * gauge have no play. Track laid wide adds half of what it is wider. Source: NEM 310 (2009).
 */
export function wheelPlay({ gauge, wheels }: Wheelset): number {
  const flange = wheels?.flangeThickness ?? flangeInGauges * gauge;
  const between = wheels?.backToBack ?? (checkInGauges - flangeInGauges) * gauge;
  return Math.max(0, (gauge - between - 2 * flange) / 2);
}

/** How far that play may be off either way, m: what the standard allows, nothing where the wheels were measured. */
export const wheelPlayTolerance = ({ gauge, wheels }: Wheelset): number =>
  wheels?.backToBack === undefined ? playToleranceInGauges * gauge : 0;

/** Sideways distance from the middle of the track to where its wheels bear, m: on the middle of the rail head and not on its gauge face, 8.75 mm in H0. */
export const halfSpan = (gauge: number): number => railCentres(gauge) / 2;
