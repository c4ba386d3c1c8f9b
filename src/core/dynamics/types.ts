import type { Train } from '../stock/types.ts';
import type { RouteStretch } from '../track/route.ts';
import type { Track } from '../track/types.ts';

/** One order to the controller, obeyed when its place or its time is reached. Settings run from -1 (full back) to 1. */
export interface SpeedOrder {
  /** `time` in s from the start, or `chainage` in m of the train's leading end, path chainage. */
  readonly when: { readonly time: number } | { readonly chainage: number };
  readonly setting: number;
  /**
   * Speed in m/s, at least 0, that a load-compensated controller is to hold the way `setting` points; `setting` is then the
   * most it may use. Absent: the setting itself is ordered.
   */
  readonly hold?: number;
  /** Seconds over which the setting, or the speed to hold, is turned from its old value to the new one. */
  readonly ramp: number;
  /** Index of the one vehicle it is for; absent: all locomotives. */
  readonly vehicle?: number;
}

/** What the driver does: where the train stands, how it is driven, when the trial is over. */
export interface Script {
  /** Path chainage of the leading body end at the start, m. */
  readonly start: number;
  /** Path chainage of the leading body end at which the train has arrived, m. */
  readonly finish: number;
  /**
   * On arrival the driver turns every setting to 0 over this long, s, and the run is over when the train stands; a train that comes to the end of its
   * path first has run off it. Absent: the run is over on arrival.
   */
  readonly stop?: number;
  /** s; the run ends here at the latest. */
  readonly timeLimit: number;
  /** In the order they are obeyed: an order waits for the one before it. */
  readonly orders: readonly SpeedOrder[];
}

/** Where in the band of curve drag a run stands, see `curveDragBand`. */
export type CurveDragChoice = 'nominal' | 'low' | 'high';

/** Constants of the force model that belong to no vehicle. Defaults, ranges and sources: `forceDefaults`. */
export interface ForceModel {
  /** m/s² */
  readonly gravity: number;
  /** Sliding coefficient of wheels in a curve, μ in R_c = N·μ·(A·gauge + B·wheelbase)/R. */
  readonly curveFriction: number;
  /** A and B of that form. */
  readonly curveGaugeFactor: number;
  readonly curveWheelbaseFactor: number;
  /** Most drag of the band's low edge, as a share of weight, on any radius. */
  readonly curveLowShare: number;
  /** Drag of the band's high edge: this times gauge/R, as a share of weight. */
  readonly curveHighFactor: number;
  readonly curveDrag: CurveDragChoice;
  /** Multiplies curve drag, whichever edge is chosen. */
  readonly curveFactor: number;
  /** Flange friction coefficient times sliding ratio (μ_f·χ) on the sideways coupler load. */
  readonly flangeFriction: number;
}

export interface RunOptions {
  /** Time step, s. */
  readonly step: number;
  /** Time between recorded frames, s; a multiple of `step`. */
  readonly frameInterval: number;
  /**
   * Most room the recorded frames may take, bytes. A run that would take more keeps every second frame, then every fourth and so
   * on; never fewer than three are kept. Events, peaks, the energy account and the end of the run are as they are without.
   */
  readonly frameBytes: number;
  readonly forces: ForceModel;
  /** Stall is declared after this long at rest while an engine is ordered to move, s. */
  readonly stallPatience: number;
}

export type RunEventKind =
  | 'stall'
  | 'slip'
  | 'grip'
  | 'standstill'
  | 'moving'
  | 'run-in'
  | 'run-out'
  | 'parting'
  | 'recoupling'
  | 'arrived'
  | 'end-of-track'
  | 'time-limit';

export interface RunEvent {
  readonly kind: RunEventKind;
  /** s */
  readonly time: number;
  /** Path chainage of the vehicle or joint it happened at, m. */
  readonly chainage: number;
  /** Vehicle index, or joint index for run-in, run-out, parting and recoupling. */
  readonly subject: number;
  /** N: peak force for run-in (negative), run-out and parting. m/s: slip of the wheels for slip, the vehicle's speed for grip and for every end; else 0. */
  readonly value: number;
}

/** Work and energy from start to end, J. `residual` is what the account fails to close by. */
export interface EnergyAccount {
  readonly motor: number;
  readonly kinetic: number;
  readonly potential: number;
  readonly stored: number;
  readonly rolling: number;
  readonly curve: number;
  readonly flange: number;
  readonly coupler: number;
  readonly slip: number;
  /** Taken by the worm when the train pushes the engine. */
  readonly holding: number;
  readonly residual: number;
}

export type Outcome = 'arrived' | 'stalled' | 'parted' | 'end-of-track' | 'time-limit';

/**
 * A solved run. `frames` F, `vehicles` N, joints N-1, locomotives K. Row f of an array starts at f times its width.
 * Chainages are path chainages of each vehicle's origin (midway between its running points).
 */
export interface Run {
  readonly frames: number;
  readonly vehicles: number;
  /** Time between the frames kept, s: the options' frame interval times 1, 2, 4 and so on, see `frameBytes`. The last may come sooner. */
  readonly interval: number;
  /** F, s. */
  readonly time: Float64Array;
  /** F×N, m. */
  readonly chainage: Float64Array;
  /** F×N, m/s along the rail. */
  readonly speed: Float64Array;
  /** F×(N-1), N: at the frame's moment; draft positive. Exactly 0 is slack. */
  readonly force: Float64Array;
  /** F×(N-1), N: greatest draft (≥ 0) and greatest buff (≤ 0) since the frame before. */
  readonly draftPeak: Float64Array;
  readonly buffPeak: Float64Array;
  /** F×(N-1), m: stretch of the joint from its free length. */
  readonly extension: Float64Array;
  /** Vehicle index of each locomotive, K. */
  readonly locomotives: Int32Array;
  /** F×K: setting, rim speed m/s, force at the rail N, grip in use (|force| / available, 0..1). */
  readonly setting: Float64Array;
  readonly rimSpeed: Float64Array;
  readonly railForce: Float64Array;
  readonly gripUse: Float64Array;
  /** F×K: most the motor gives at this setting as the train slows it to a stand, N; most the wheels can grip, N. */
  readonly motorLimit: Float64Array;
  readonly gripLimit: Float64Array;
  /** F×K, N: what the train asks of this engine to keep its speed here (grade, rolling, curves), shared by driven mass. */
  readonly demand: Float64Array;
  readonly events: readonly RunEvent[];
  readonly outcome: Outcome;
  readonly energy: EnergyAccount;
  /** Steps taken, for the record of cost. */
  readonly steps: number;
}

/** The way a train takes: a track, the same track run the other way, or a route over stretches of several made one track. */
export interface Path {
  /** Chainage grows the way the train goes. */
  readonly track: Track;
  readonly reversed: boolean;
  /** The stretches of a route in order, on the tracks as the scene gives them; absent: the path is one track. A route is never `reversed`. */
  readonly legs?: readonly PathLeg[];
}

export interface PathLeg extends RouteStretch {
  /** Where it starts along the path, m. */
  readonly start: number;
}

export interface RunInput {
  readonly path: Path;
  readonly train: Train;
  readonly script: Script;
  readonly options: RunOptions;
  /** Extension of each joint from its free length at the start, m, the leading joint first; absent: every joint at its free length, in the middle of its slack. */
  readonly stretch?: readonly number[];
}
