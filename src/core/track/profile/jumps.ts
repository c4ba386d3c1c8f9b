import type { GradeBreak, JoinJump, PreparedPlan, Track } from '../types.ts';

/** Curvature jumps smaller than this, 1/m, are rounding of radii: they move a metre of vehicle by a nanometre. */
const CURVATURE_JUMP_TOLERANCE = 1e-8;

/** Breaks of grade smaller than this are rounding: 0.0001 %, a thousandth of what the best digital level shows. */
const GRADE_BREAK_TOLERANCE = 1e-6;

/** Turns smaller than this, rad, are rounding of the headings of a long chain. */
const HEADING_JUMP_TOLERANCE = 1e-9;

/** The joins between elements where curvature jumps, or heading where rails are kinked. Elements are chained end to end, so position cannot. */
export function joinJumps(plan: PreparedPlan): JoinJump[] {
  const jumps: JoinJump[] = [];
  for (let k = 1; k < plan.elements.length; k++) {
    const curvature = plan.elements[k].startCurvature - plan.elements[k - 1].endCurvature;
    const { length, startCurvature, endCurvature } = plan.elements[k - 1];
    const arriving = plan.startHeading[k - 1] + (length * (startCurvature + endCurvature)) / 2;
    const turned = plan.startHeading[k] - arriving;
    const heading = Math.abs(turned) > HEADING_JUMP_TOLERANCE ? turned : 0;
    if (Math.abs(curvature) > CURVATURE_JUMP_TOLERANCE || heading !== 0) {
      jumps.push({ chainage: plan.startChainage[k], position: 0, heading, curvature });
    }
  }
  return jumps;
}

/** The places inside the track where the grade breaks: grade points without a curve, and hinges of the strip. */
export function gradeBreaks(track: Track): GradeBreak[] {
  const { startChainage, b, c, d, e } = track.profile;
  const breaks: GradeBreak[] = [];
  for (let k = 1; k < startChainage.length; k++) {
    const t = startChainage[k] - startChainage[k - 1];
    const before = b[k - 1] + t * (2 * c[k - 1] + t * (3 * d[k - 1] + t * 4 * e[k - 1]));
    if (Math.abs(b[k] - before) > GRADE_BREAK_TOLERANCE)
      breaks.push({ chainage: startChainage[k], before, after: b[k] });
  }
  return breaks;
}

/** Vertical curvature that changes at once by more than this, 1/m, makes a corner of the profile: over 3 mm the rail leaves the tangent by 5 micrometres. */
const SHARP_BEND = 1;

/** The places inside the track (m, rising) where its profile has a corner: breaks of grade, and ends of bridged steps. */
export function profileCorners(track: Track): Float64Array {
  const { startChainage, b, c, d, e } = track.profile;
  const corners: number[] = [];
  for (let k = 1; k < startChainage.length; k++) {
    const t = startChainage[k] - startChainage[k - 1];
    const grade = b[k - 1] + t * (2 * c[k - 1] + t * (3 * d[k - 1] + t * 4 * e[k - 1]));
    const bend = 2 * c[k - 1] + t * (6 * d[k - 1] + t * 12 * e[k - 1]);
    if (Math.abs(b[k] - grade) > GRADE_BREAK_TOLERANCE || Math.abs(2 * c[k] - bend) > SHARP_BEND) {
      corners.push(startChainage[k]);
    }
  }
  return Float64Array.from(corners);
}
