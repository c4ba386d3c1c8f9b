/**
 * The track as plain data. Lengths in metres, angles in radians, SI throughout.
 *
 * Chainage `s` is the distance along the centreline in plan. Curvature is positive to the left, grade `dz/ds` positive
 * uphill for increasing `s`. Cant is positive where the right rail is the higher one, as a left-hand curve wants it, so
 * cant and curvature agree in sign where cant leans a train inwards. Outside [0, length] a track continues straight at
 * the heading, grade and cant of its end, so a vehicle that overhangs the end can still be placed.
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
  /** m, in plan or in height. */
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
  /** What the builder's list counts it as, from 0; absent: its place among the supports. -1: it is in no list. */
  readonly number?: number;
}

/** A joint whose two tops stand at different heights; the rail bridges it. */
export interface StripStep {
  /** At one of the hinges. */
  readonly chainage: number;
  /** The top after the joint less the top before it, m. A support under the joint gives the top before it. */
  readonly rise: number;
  /** Length over which the rail and its sleepers span the step, half to either side of the joint, m. */
  readonly over: number;
}

/** What the strip is made of from a support or hinge on; the first section also holds for all before it. */
export interface StripSection {
  readonly from: number;
  /** Bending stiffness EI, N·m². */
  readonly stiffness: number;
  /** Weight of strip and track, N/m. */
  readonly weight: number;
}

/** A weight that stands on the strip. */
export interface StripLoad {
  readonly chainage: number;
  /** Downward, N. */
  readonly force: number;
}

/**
 * The trackbed strip bent over its supports: an Euler-Bernoulli beam. Weightless and of one stiffness when it has no
 * sections; free at its ends unless clamped, and at hinges.
 */
export interface StripSpec {
  readonly supports: readonly SupportDeparture[];
  /** Chainages of butt joints without a splice: the beam carries no moment there, so the grade may break. */
  readonly hinges: readonly number[];
  readonly steps?: readonly StripStep[];
  /** In order of chainage; each starts at a support or a hinge. */
  readonly sections?: readonly StripSection[];
  /** Need sections, because only a stiffness says how far a weight presses. */
  readonly loads?: readonly StripLoad[];
  /** Further sag that the strip's own weight brings in time, as a multiple of the sag at once. */
  readonly creep?: number;
  /** An end held to the slope of the plan: screwed down flat beyond its outer support. */
  readonly clampedStart?: boolean;
  readonly clampedEnd?: boolean;
}

/** A height found with a level, not as a departure from a plan. */
export interface MeasuredHeight {
  readonly chainage: number;
  readonly height: number;
}

/** The rails as measured. Beyond the outer heights the grade goes on. */
export interface MeasuredSpec {
  /** At least two; chainage strictly increasing. */
  readonly heights: readonly MeasuredHeight[];
  /** A strip bent through the heights, or straight from one to the next. */
  readonly between: 'beam' | 'straight';
  /** Joints of the bent strip, as in `StripSpec`. */
  readonly hinges: readonly number[];
}

/** A stretch whose heights another track gives: over the long sleepers of a turnout both tracks lie in one plane. */
export interface HeldHeights {
  readonly from: number;
  readonly to: number;
  /** By the chainages of this track. */
  readonly pieces: HeightPieces;
}

export interface ProfileSpec {
  /** At least one; chainage strictly increasing. Before the first and after the last point the grade continues. */
  readonly points: readonly GradePoint[];
  readonly strip?: StripSpec;
  /** In place of a strip. */
  readonly measured?: MeasuredSpec;
  readonly held?: readonly HeldHeights[];
}

/** Where the rails as laid lie beside the planned line. */
export interface LateralPoint {
  readonly chainage: number;
  /** m, left positive. */
  readonly offset: number;
}

/** A rail joint at which the track turns at once. */
export interface RailKink {
  readonly chainage: number;
  /** Heading after less heading before, rad: left positive. */
  readonly turn: number;
  /**
   * How far to either side the rails lie off the plan because of it, m: there they are held, and beyond the track is
   * where it was. 0: all that follows swings round.
   */
  readonly reach: number;
}

/** How the rails as laid wander from the plan: they bend as a beam between the places where they are held. */
export interface LateralSpec {
  /** None, or at least two of rising chainage; the outer two are on the line, offset 0, and hold its direction. */
  readonly points: readonly LateralPoint[];
  /** Rail joints that carry no moment. */
  readonly hinges: readonly number[];
  readonly kinks: readonly RailKink[];
}

/** The lean of the track at one place; between places it runs linearly. */
export interface CantPoint {
  readonly chainage: number;
  /** Angle of the sleepers to the level, rad; positive: the right rail is higher. */
  readonly cant: number;
}

export interface CantSpec {
  /** At least one; chainage strictly increasing. Before the first and after the last point the cant stays. */
  readonly points: readonly CantPoint[];
  /**
   * From the centreline to the line the track is turned about, towards the low rail, m: half the gauge where only the high
   * rail is packed up, which lifts the centreline by lever·|cant|; 0 where it turns about the centreline.
   */
  readonly lever: number;
}

export interface TrackSpec {
  readonly start: { readonly x: number; readonly y: number; readonly heading: number };
  readonly elements: readonly PlanElement[];
  readonly profile: ProfileSpec;
  /** Left out: level across everywhere. */
  readonly cant?: CantSpec;
  /**
   * How the deck as built leans beside the plan: cant to be added to the planned one, linear between places and constant beyond the
   * outer two. The centreline keeps its height. Chainage strictly increasing; left out: built as planned.
   */
  readonly lean?: readonly CantPoint[];
  /** Left out: laid on the line. */
  readonly lateral?: LateralSpec;
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
  /** Angle of the sleepers to the level, rad; positive: the right rail is higher. */
  cant: number;
  /** d(cant)/ds, rad/m. */
  twist: number;
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

/** Heights as polynomials of chainage: piece k is z = a + b·t + c·t² + d·t³ + e·t⁴ with t = s - startChainage[k]. */
export interface HeightPieces {
  readonly startChainage: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly c: Float64Array;
  readonly d: Float64Array;
  /** 0 but where a strip sags under its own weight. */
  readonly e: Float64Array;
}

/** A prepared profile: pieces from chainage 0 to the end of the track. */
export interface PreparedProfile extends HeightPieces {
  /** Rail distance (arc length in space) from chainage 0 to each piece's start, m. */
  readonly startRail: Float64Array;
  readonly bucket: BucketIndex;
  /** The same look-up by rail distance. */
  readonly railBucket: BucketIndex;
}

/** Cant as straight pieces from chainage 0 on: piece k is cant[k] + twist[k]·(s - startChainage[k]). */
export interface PreparedCant {
  readonly startChainage: Float64Array;
  readonly cant: Float64Array;
  readonly twist: Float64Array;
  readonly bucket: BucketIndex;
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
  /** As built; null when the track is level across everywhere. */
  readonly cant: PreparedCant | null;
  readonly jumps: readonly JoinJump[];
}
