import type { ForceModel, RunOptions } from './types.ts';

/** A constant with what is plausible for it, low to high, and where it comes from. */
export interface ForceRow {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

const row = (value: number, low: number, high: number, source: string): ForceRow => ({ value, low, high, source });

/** Constants of the force model that are numbers; which edge of the band of curve drag is none. */
export type ForceConstant = Exclude<keyof ForceModel, 'curveDrag'>;

/** The one table of force constants that belong to no vehicle. */
export const forceDefaults: Readonly<Record<ForceConstant, ForceRow>> = {
  gravity: row(9.80665, 9.78, 9.83, 'Standard value (CGPM 1901), in m/s²; range from equator to pole'),
  curveFriction: row(0.2, 0.1, 0.3, 'Steel on nickel silver: tilting tracks give 0.20 to 0.30, wheels not clean less'),
  curveGaugeFactor: row(0.72, 0.5, 1, 'Protopapadakis form as remembered; no page confirming it was found'),
  curveWheelbaseFactor: row(0.47, 0.25, 0.75, 'Protopapadakis form as remembered; no page confirming it was found'),
  curveLowShare: row(0.005, 0.003, 0.01, '"+0.5 %" told of a helix of 508 mm radius in HO (trainboard.com 15048)'),
  curveHighFactor: row(
    0.4926,
    0.431,
    0.4926,
    'HO rule 32/R(in) per cent, later 28/R: 813 and 711 mm by R, over 16.5 mm (cs.trains.com 220453, 287914)',
  ),
  curveFactor: row(1, 0.4, 2, 'Span of the band by radius and wheelbase: half of nominal to twice'),
  flangeFriction: row(0.15, 0.05, 0.3, 'assumption: friction coefficient times sliding ratio at the flange'),
};

const values = Object.fromEntries(Object.entries(forceDefaults).map(([name, { value }]) => [name, value])) as Record<
  ForceConstant,
  number
>;

export const defaultForceModel: ForceModel = { ...values, curveDrag: 'nominal' };

/** Constants of a load-compensated controller; speeds as shares of the engine's free speed. */
export const controlDefaults = {
  proportional: row(2, 0.5, 8, 'assumption: setting for each share of free speed that is missing'),
  integral: row(2, 0.5, 8, 'assumption: setting for each second and share of free speed that is missing, 1/s'),
} as const;

/**
 * Room for a run's frames, bytes: 64 MiB, so that the results of a few trials, with the margins of all risks some three times as
 * much each, stay within what a browser's tab and a small machine have. At 50 bytes a vehicle a frame that is 20 vehicles for
 * 22 minutes at 20 ms, or 200 vehicles for a bit over two.
 */
const FRAME_BYTES = 64 * 1024 * 1024;

/** A millisecond resolves what most couplings do, and the method is stable at any step; stiffer ones on light vehicles are better run with less, see `usualStep`. */
export const defaultRunOptions: RunOptions = {
  step: 0.001,
  frameInterval: 0.02,
  frameBytes: FRAME_BYTES,
  forces: defaultForceModel,
  stallPatience: 1,
};
