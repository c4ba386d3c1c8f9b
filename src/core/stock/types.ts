/**
 * Vehicles as plain data, SI units. A vehicle's own axes: origin midway between its running points at rail level,
 * `ahead` along the chord towards its front, `left`, `up`.
 */

/** Where the shank of a coupling turns and what carries it. */
export type CouplingMount = 'pocket' | 'body' | 'bogie';

/** The trade's families; the mechanics differ only by the numbers below. */
export type CouplingKind = 'hook-and-bar' | 'loop' | 'link' | 'knuckle' | 'rigid-bar' | 'close' | 'magnetic';

/** Where a spring meets its stop: from this travel (m) on it is as stiff as given, N/m. Never softer than before. */
export interface SecondStage {
  readonly from: number;
  readonly stiffness: number;
}

/**
 * A guided shank: a slot in the body leads the head out as it swings, so that buffers clear each other in curves and
 * nearly touch on the straight.
 */
export interface CouplingGuide {
  /** Farthest the head is led out, m, and the swing either way at which it is there, rad. */
  readonly lengthening: number;
  readonly fullSwing: number;
}

/** One half of a joint: what hangs on one end of a vehicle. */
export interface Coupling {
  readonly kind: CouplingKind;
  readonly mount: CouplingMount;
  /** Pivot of the shank behind the body end (negative: beyond it), m. */
  readonly pivotInset: number;
  /** Pivot to the contact face of the head, m. */
  readonly reach: number;
  /** Height of the head's middle above the rail as fitted, m: nominal plus whatever this one is off. */
  readonly headHeight: number;
  /** How far off `headHeight` may be either way: fitting, droop and play in the pocket, m. */
  readonly headHeightTolerance: number;
  /** Height of the face that meets the mate: heads further apart than this ride over each other in buff, m. */
  readonly facingHeight: number;
  /** Vertical hold in draft: heads further apart than this let go when pulled, m. */
  readonly engagement: number;
  /** Sideways hold in draft: heads further apart across than this let go when pulled, m; absent: they never do. */
  readonly sideHold?: number;
  /** Tilt of the shank up or down in its pocket before it takes the body with it, rad; absent: as far as it is asked to. */
  readonly freeTilt?: number;
  /** Tilt of the contact face from vertical, rad (0 for an upright face). */
  readonly faceTilt: number;
  /** Friction coefficient between contact faces. */
  readonly faceFriction: number;
  /** Swing of the shank to either side before the body takes the couple, rad. */
  readonly freeSwing: number;
  /** Stiffness of this half, N/m. Halves in series make the joint's. */
  readonly draftStiffness: number;
  readonly buffStiffness: number;
  /** Second stage of this half's spring, counted from where the joint's slack ends; absent: one stage. */
  readonly draftSecond?: SecondStage;
  readonly buffSecond?: SecondStage;
  /** Viscous damping of this half, N·s/m, in series with its mate's. */
  readonly damping: number;
  /** This half's share of the free play, m. */
  readonly slack: number;
  /** Draft force at which it lets go, N (Infinity: never). */
  readonly release: number;
  /** Couples again when pushed against its mate, as magnets do; absent: what has let go stays parted. */
  readonly recouples?: boolean;
  /** Absent: the shank is as long in a curve as on the straight. */
  readonly guide?: CouplingGuide;
}

/** Wheels as measured, lengths m, angle rad; what is left out is in the middle of the standard's limits. */
export interface WheelProfile {
  readonly backToBack?: number;
  readonly flangeThickness?: number;
  readonly flangeDepth?: number;
  /** Of the flange to the level where it bears on the rail. */
  readonly flangeAngle?: number;
}

/** A pair of side buffers at one end. */
export interface Buffers {
  /** Between centres across the track, m. */
  readonly spacing: number;
  /** Centre above the rail, m. */
  readonly height: number;
  readonly headWidth: number;
  readonly headHeight: number;
  /** Face beyond the body end at rest, m. */
  readonly length: number;
}

export interface VehicleEnd {
  readonly coupling: Coupling;
  readonly buffers: Buffers | null;
}

/** How a locomotive turns a speed setting into force at the rail. */
export interface Drive {
  /** Mass that stands on driven wheels on the level, kg. */
  readonly drivenMass: number;
  /** Wheel-rail coefficient while the wheels grip. */
  readonly adhesion: number;
  /** Coefficient that fast-slipping wheels fall to. */
  readonly slidingAdhesion: number;
  /** Slip speed over which the coefficient falls by 1/e of the way, m/s. */
  readonly slipScale: number;
  /** Force at the rim at standstill with the setting at 1, N. */
  readonly stallForce: number;
  /** Speed with no load and the setting at 1, m/s. */
  readonly freeSpeed: number;
  /** Rotor, flywheel and gears as mass at the wheel rim, kg. */
  readonly rotatingMass: number;
  /** A worm that cannot be back-driven: overhauled, it holds its speed; at standstill it holds the train. */
  readonly worm: boolean;
  /** Drawbar height, m, and wheelbase over the driven wheels, m: together they move weight off the leading axles. */
  readonly drawbarHeight: number;
  readonly drivenWheelbase: number;
  /** Share of the transferred weight that leaves the driven wheels: 0 when every wheel drives, 1 when only the leading ones do. */
  readonly transferShare: number;
  /** Axles of the frame that carry weight, driven and idle; absent: the driven share is the same on every profile. */
  readonly axles?: readonly CarryingAxle[];
}

/** One axle under an engine's frame, for how the weight moves between axles where the rail is not straight. */
export interface CarryingAxle {
  /** Place ahead of the vehicle's origin, m. */
  readonly ahead: number;
  readonly driven: boolean;
  /** Share of the vehicle's mass that it carries on level track. */
  readonly share: number;
  /** What yields between frame and rail: the axle's spring, or frame, wheel and track where it has none, N/m. */
  readonly stiffness: number;
  /** How much better its wheels grip than the drive's coefficients say, as tyres do; absent: 1. */
  readonly grip?: number;
}

export interface Vehicle {
  readonly name: string;
  readonly kind: 'locomotive' | 'tender' | 'coach' | 'wagon';
  /** kg, all of it. */
  readonly mass: number;
  /** Body length between body ends (headstocks), m. */
  readonly bodyLength: number;
  readonly bodyWidth: number;
  /** Top of the body above the rail, m; underside of the lowest part above the rail, m. */
  readonly bodyHeight: number;
  readonly underside: number;
  /** Height of the centre of mass above the rail, m, and its place ahead of the origin, m. */
  readonly massHeight: number;
  readonly massAhead: number;
  /** Distance between running points: bogie centres, or the end axles of a rigid frame, m. */
  readonly pivotSpacing: number;
  /** Body ends beyond the running points: front and rear overhang, m. */
  readonly frontOverhang: number;
  readonly rearOverhang: number;
  /** Wheelbase that curving has to slew: of a bogie, or of the rigid frame, m. */
  readonly rigidWheelbase: number;
  readonly bogies: boolean;
  /** Axles of a rigid frame, evenly apart from end to end; absent: three under a locomotive or tender, else two. */
  readonly axles?: number;
  /** Axles of a bogie, evenly apart over its wheelbase; absent: two. */
  readonly bogieAxles?: number;
  readonly wheelRadius: number;
  readonly wheels?: WheelProfile;
  readonly gauge: number;
  readonly front: VehicleEnd;
  readonly rear: VehicleEnd;
  readonly rolling: Rolling;
  readonly drive: Drive | null;
}

/** Drag on plain level track, as a share of weight: `coulomb + perSpeed * |v|`, times `breakaway` from rest. */
export interface Rolling {
  readonly coulomb: number;
  /** s/m */
  readonly perSpeed: number;
  /** At least 1. */
  readonly breakaway: number;
}

/** Vehicle 0 leads; every vehicle's `front` faces the way the train goes. Joint j couples vehicle j's rear to j+1's front. */
export interface Train {
  readonly name: string;
  readonly vehicles: readonly Vehicle[];
}

/** Two coupling halves as one joint. */
export interface Joint {
  /** Pivot to pivot at free length, m: both reaches. */
  readonly freeLength: number;
  readonly draftStiffness: number;
  readonly buffStiffness: number;
  /** Second stages, counted from where the slack ends. */
  readonly draftSecond?: SecondStage;
  readonly buffSecond?: SecondStage;
  readonly damping: number;
  /** Total free play, m: half of it either side of the free length. */
  readonly slack: number;
  readonly release: number;
  /** Whether both halves couple again when pushed together. */
  readonly recouples: boolean;
}

/** A body on the track: its frame and the chainages of its running points. Mutable for reuse. */
export interface Placement {
  chainage: number;
  frontChainage: number;
  rearChainage: number;
  /** Midway between the running points, at rail level, m. */
  origin: [number, number, number];
  /** Orthonormal frame in the room. */
  ahead: [number, number, number];
  left: [number, number, number];
  up: [number, number, number];
  /** Unit tangent of the track at each running point: what a bogie standing there lies along. */
  frontTangent: [number, number, number];
  rearTangent: [number, number, number];
  /** Roll of the body, rad: the mean cant of its running points. Positive: the left side is lower. */
  roll: number;
  /** Cant at the front running point less that at the rear one, rad: what the frame or its springs must take up. */
  twist: number;
}

/** What two coupled ends look like to each other at one moment. Lengths m, angles rad. */
export interface JointGeometry {
  /** Pivot to pivot in space. */
  pinDistance: number;
  /** Rise of that line drawn ahead from the trailing pivot, for each metre of it: the sine of its pitch. */
  rise: number;
  /** Where the joint is: chainage midway between the two pivots. */
  chainage: number;
  /** Middle of the leading vehicle's rear body end minus middle of the trailing vehicle's front body end, across the bisector of the two bodies, left positive. */
  lateralOffset: number;
  /** Leading coupler head's middle minus trailing coupler head's middle, square to the bisector, up positive. */
  verticalOffset: number;
  /**
   * Angle in plan from each carrier's axis (body, or bogie when the coupling is bogie-mounted) to the line drawn ahead
   * from the trailing pivot to the leading pivot, counter-clockwise positive. With body mounts the turn from the leading body to the trailing one is swingLeading - swingTrailing.
   */
  swingLeading: number;
  swingTrailing: number;
  /** What the guides of both shanks add to the joint's free length at these swings, m; 0 without guides. */
  lengthening: number;
  /**
   * Facing buffer heads, leading minus trailing: offset across and up of each pair, and the gap between face centres along
   * the bisector (negative: pressed together). Left pair, right pair; NaN when either end has no buffers.
   */
  bufferLateral: [number, number];
  bufferVertical: [number, number];
  bufferGap: [number, number];
}
