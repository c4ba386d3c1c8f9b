/**
 * The track as plain data. Lengths in metres, angles in radians, SI throughout.
 *
 * Chainage `s` is the distance along the centreline in plan. Curvature is positive to the left, grade `dz/ds` positive
 * uphill for increasing `s`. Outside [0, length] a track continues straight at the heading and grade of its end, so a
 * vehicle that overhangs the end can still be placed.
 */

/** A stretch whose curvature runs linearly with chainage: straight, arc, helix and clothoid are all this one shape. */
export interface PlanElement {
  /** What a builder calls it; geometry is fully given by the other fields. */
  readonly kind: 'straight' | 'arc' | 'transition' | 'helix';
  /** Plan length, m. */
  readonly length: number;
  /** Curvature at the start and at the end, 1/m, left positive. */
  readonly startCurvature: number;
  readonly endCurvature: number;
}

/** A place where one element hands over to the next with a jump. Zero components are joins that fit. */
export interface JoinJump {
  readonly chainage: number;
  /** m */
  readonly position: number;
  /** rad */
  readonly heading: number;
  /** 1/m */
  readonly curvature: number;
}

/** A point of vertical intersection: where two grades meet, with the parabola that rounds them. */
export interface GradePoint {
  readonly chainage: number;
  readonly height: number;
  /** Parabolic vertical curve centred here: by its plan length, or by its radius (length = radius * |change of grade|). */
  readonly curve?: { readonly length: number } | { readonly radius: number };
}

/** One height of the strip as built, as a departure from the planned height at that support. */
export interface SupportDeparture {
  readonly chainage: number;
  /** Built minus planned, m. */
  readonly departure: number;
}

/** The trackbed strip bent over its supports: a weightless Euler-Bernoulli beam, free at its ends and at hinges. */
export interface StripSpec {
  readonly supports: readonly SupportDeparture[];
  /** Chainages of butt joints without a splice: the beam carries no moment there, so the grade may break. */
  readonly hinges: readonly number[];
}

export interface ProfileSpec {
  /** At least one; chainage strictly increasing. Before the first and after the last point the grade continues. */
  readonly points: readonly GradePoint[];
  readonly strip?: StripSpec;
}

export interface TrackSpec {
  readonly start: { readonly x: number; readonly y: number; readonly heading: number };
  readonly elements: readonly PlanElement[];
  readonly profile: ProfileSpec;
}

/** Everything a query can say of one chainage. Mutable so that hot loops can reuse one. */
export interface TrackPoint {
  chainage: number;
  x: number;
  y: number;
  z: number;
  /** Direction of increasing chainage in plan, rad from +x, counter-clockwise. Not wrapped: grows turn by turn. */
  heading: number;
  /** 1/m, left positive. */
  curvature: number;
  /** dz/ds. */
  grade: number;
  /** d²z/ds², 1/m: positive in a sag, negative on a summit. */
  verticalCurvature: number;
}

/**
 * A prepared plan: one row an element, elements of no length left out. Arrays of equal length n, cumulative quantities
 * at each element's start.
 */
export interface PreparedPlan {
  readonly elements: readonly PlanElement[];
  readonly startChainage: Float64Array;
  readonly startX: Float64Array;
  readonly startY: Float64Array;
  readonly startHeading: Float64Array;
  readonly startCurvature: Float64Array;
  /** dκ/ds within the element, 1/m². */
  readonly sharpness: Float64Array;
  readonly bucket: BucketIndex;
  readonly panels: PlanPanels;
}

/**
 * Elements cut into equal panels that turn little. Element k owns the panels from `first[k]` on, the last of them `last[k]`
 * further, each `length[k]` long; `x`, `y`, `cos` and `sin` are where each panel starts and which way.
 */
export interface PlanPanels {
  readonly first: Int32Array;
  readonly last: Int32Array;
  readonly length: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

/** Heights as cubics of chainage: piece k is z = a + b·t + c·t² + d·t³ with t = s - startChainage[k]. */
export interface CubicPieces {
  readonly startChainage: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly c: Float64Array;
  readonly d: Float64Array;
}

/** A prepared profile: cubic pieces from chainage 0 to the end of the track. */
export interface PreparedProfile extends CubicPieces {
  /** Rail distance (arc length in space) from chainage 0 to each piece's start, m. */
  readonly startRail: Float64Array;
  readonly bucket: BucketIndex;
  /** The same look-up by rail distance. */
  readonly railBucket: BucketIndex;
}

/** Constant-time look-up of the piece that holds a chainage: uniform cells, each naming its first piece. */
export interface BucketIndex {
  readonly cell: number;
  readonly first: Int32Array;
}

/** A place where the grade changes at a point: an unrounded change of grade or a hinge of the strip. */
export interface GradeBreak {
  readonly chainage: number;
  /** dz/ds just before and just after. */
  readonly before: number;
  readonly after: number;
}

export interface Track {
  /** Plan length, m. */
  readonly length: number;
  /** Length along the rail in space, m. */
  readonly railLength: number;
  readonly spec: TrackSpec;
  readonly plan: PreparedPlan;
  /** The profile trains run on: the plan's heights plus the strip's departures. */
  readonly profile: PreparedProfile;
  /** The planned heights alone. */
  readonly plannedProfile: PreparedProfile;
  readonly jumps: readonly JoinJump[];
}
