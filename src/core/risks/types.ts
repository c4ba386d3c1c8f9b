import type { Path, Run } from '../dynamics/types.ts';
import type { JointGeometry, Placement, Train, Vehicle } from '../stock/types.ts';
import type { Track } from '../track/types.ts';

/** Every way a train fails on a grade that the project knows of. */
export type RiskId =
  | 'stall'
  | 'wheelspin'
  | 'wheel-climb'
  | 'string-lining'
  | 'jack-knife'
  | 'overturning'
  | 'buffer-lock'
  | 'coupler-swing'
  | 'override'
  | 'parting'
  | 'headroom'
  | 'axle-lift'
  | 'grounding'
  | 'bar-lift'
  | 'passing'
  | 'structure';

export type RiskSubject = 'joint' | 'vehicle' | 'locomotive';

/** How a value is shown: a length in mm or inches, a force in N, a plain share in per cent, an angle in degrees. */
export type RiskUnit = 'length' | 'force' | 'share' | 'angle';

/**
 * Which of a risk's several ways to fail is the nearest: it names what `value` and `limit` are. Heads against their
 * facing or their engagement, a lifted end, a release force, buffers kept by overlap or by an open gap, a motor or a grip,
 * a middle axle that hangs, an end axle or one wheel of a twisted frame that lifts, the middle of a body or an overhang over the rail, a track beside,
 * the rail that a flange climbs or a vehicle tips over (plain `rail` on straight track), heads apart across, a hook that nothing holds down,
 * a bar that lifts a vehicle, a structure beside or above.
 */
export type Governing =
  | 'facing'
  | 'lift'
  | 'engagement'
  | 'release'
  | 'overlap'
  | 'gap'
  | 'swing'
  | 'motor'
  | 'grip'
  | 'slip'
  | 'deck'
  | 'outer-rail'
  | 'inner-rail'
  | 'rail'
  | 'middle-axle'
  | 'end-axle'
  | 'corner'
  | 'middle'
  | 'overhang'
  | 'beside'
  | 'side-hold'
  | 'float'
  | 'bar'
  | 'wall'
  | 'lintel';

/** What one risk finds for one subject at one moment. `margin` ≥ 0 passes; NaN: nothing to say here. */
export interface Sample {
  value: number;
  limit: number;
  margin: number;
  governing: Governing | null;
}

/**
 * One part of what makes up a value ("heads as fitted", "break in grade"), same unit as the value. Parts add up to the
 * value, but for `tolerance`: that one may add to it or take from it, and is what `range` is made of.
 */
export interface ValuePart {
  readonly label: 'fitted-heads' | 'track-geometry' | 'tolerance' | 'lateral-throw' | 'grade' | 'rolling' | 'curve';
  readonly value: number;
}

/**
 * The same moment judged another way, to be shown beside the margin: without the cant of the track, at rest, by the sum over both wheels of an
 * axle instead of one wheel, dragged up by the mate instead of lifted by the push alone. Units as those of the risk.
 */
export interface Comparison {
  readonly label: 'without-cant' | 'at-rest' | 'axle-sum' | 'dragged-up';
  readonly value: number;
  readonly limit: number;
  readonly margin: number;
}

/** Something solid beside or over a track: an upright prism in the room, lengths m. */
export interface Structure {
  /** What people call it. */
  readonly name: string;
  /** Corners in plan, [x, y], counter-clockwise, convex. */
  readonly outline: readonly (readonly [number, number])[];
  /** Heights in the room between which it is solid. */
  readonly bottom: number;
  readonly top: number;
}

/** Things beside the train's own track that it may touch. */
export interface Surroundings {
  /** Every track of the scene incl. the train's own, the way the scene gives them. */
  readonly tracks: readonly Track[];
  /** Thickness from a track's rail top down to the underside of its deck, m. */
  readonly deckDepth: number;
  /** From a track's centreline to the edge of its deck, m; absent: the standard formation of the train's gauge. */
  readonly deckHalfWidth?: number;
  /** Vehicles that may stand on the tracks beside; absent: those of the train itself. */
  readonly passers?: readonly Vehicle[];
  /** Walls, piers, portals; absent: none. */
  readonly structures?: readonly Structure[];
}

export interface RiskContext {
  readonly path: Path;
  readonly train: Train;
  readonly run: Run;
  readonly surroundings: Surroundings;
  /** Pushed: the locomotive is behind what it moves. */
  readonly propelled: boolean;
}

/** One frame, posed once and shared by all risks. */
export interface Frame {
  readonly index: number;
  readonly placements: readonly Placement[];
  readonly joints: readonly JointGeometry[];
}

/** A risk made ready for one trial. */
export interface Sampler {
  /** Writes the sample of one subject (joint, vehicle or locomotive index) into `out`. */
  sample(frame: Frame, subject: number, out: Sample): void;
  /** What the value at one moment is made of; empty when it has no parts. */
  parts(frame: Frame, subject: number): ValuePart[];
  /** Margin [least, greatest] over tolerances that the parts do not tell; absent: what the parts make of it. */
  range?(frame: Frame, subject: number): readonly [number, number] | null;
  /** The same moment judged other ways; absent: there are none. */
  compare?(frame: Frame, subject: number): Comparison[];
}

export interface RiskDefinition {
  readonly id: RiskId;
  readonly subject: RiskSubject;
  /** How the margin is shown, and value and limit too unless `valueUnit` or what governs says otherwise. */
  readonly unit: RiskUnit;
  readonly valueUnit?: RiskUnit;
  /** Margin (SI) from which there is plenty: the pale end of the scale. */
  readonly plenty: number;
  /** Margin below which a pass is called near. */
  readonly near: number;
  /** Null when the risk cannot arise for this train on this track. */
  prepare(context: RiskContext): Sampler | null;
}

/** The least margin of a risk over a whole trial. */
export interface Worst {
  readonly frame: number;
  readonly subject: number;
  /** Path chainage, m. */
  readonly chainage: number;
  readonly value: number;
  readonly limit: number;
  readonly margin: number;
  /** Margin when every tolerance adds up one way and the other, if the risk has tolerances: [least, greatest]. */
  readonly range: readonly [number, number] | null;
  readonly parts: readonly ValuePart[];
  readonly governing: Governing | null;
  readonly compare?: readonly Comparison[];
}

/** A risk over a whole trial: `margins` is frames × subjects, NaN where it does not apply. */
export interface RiskSeries {
  readonly risk: RiskId;
  readonly subjects: number;
  readonly margins: Float64Array;
  /** Path chainage of each sample, frames × subjects, m; one array for all risks with the same kind of subject. */
  readonly chainages: Float64Array;
  readonly worst: Worst | null;
}
