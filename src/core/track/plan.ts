import { cos, sin } from '../math/index.ts';
import { locate, makeBucketIndex } from './bucket.ts';
import { HALF_TURN_LIMIT, panelDisplacement } from './clothoid.ts';
import { TrackError } from './problem.ts';
import type { PlanElement, PreparedPlan, TrackPoint, TrackSpec } from './types.ts';

/** More turning than this, rad, in one clothoid (over 150 turns) is a slip of units, and would fill memory with panels. */
const MOST_TURNING = 1000;

function checkElement(element: PlanElement, index: number): void {
  const { length, startCurvature, endCurvature } = element;
  if (!(length >= 0) || !Number.isFinite(length + startCurvature + endCurvature)) {
    throw new TrackError(
      'bad-element',
      `Element ${index + 1} (${element.kind}) needs a length of 0 or more and finite curvatures.`,
    );
  }
  const sharpest = Math.max(Math.abs(startCurvature), Math.abs(endCurvature));
  if (startCurvature !== endCurvature && sharpest * length > MOST_TURNING) {
    throw new TrackError(
      'bad-element',
      `Element ${index + 1} (${element.kind}) turns through more than ${MOST_TURNING} rad.`,
    );
  }
}

/** Chains the elements of `spec` end to end. Throws TrackError when they have no length or are not finite. */
export function preparePlan(spec: TrackSpec): PreparedPlan {
  const { x, y, heading } = spec.start;
  if (!Number.isFinite(x + y + heading))
    throw new TrackError('bad-start', 'The start of a track needs a finite x, y and heading.');
  spec.elements.forEach(checkElement);
  const elements = spec.elements.filter((element) => element.length > 0);
  const n = elements.length;
  if (n === 0) throw new TrackError('no-elements', 'A track needs at least one element longer than 0.');

  const startChainage = new Float64Array(n);
  const startX = new Float64Array(n);
  const startY = new Float64Array(n);
  const startHeading = new Float64Array(n);
  const startCurvature = new Float64Array(n);
  const sharpness = new Float64Array(n);
  const first = new Int32Array(n);
  const last = new Int32Array(n);
  const panelLength = new Float64Array(n);
  let panelCount = 0;
  let chainage = 0;
  elements.forEach((element, k) => {
    startChainage[k] = chainage;
    startCurvature[k] = element.startCurvature;
    sharpness[k] = (element.endCurvature - element.startCurvature) / element.length;
    first[k] = panelCount;
    if (sharpness[k] !== 0) {
      const sharpest = Math.max(Math.abs(element.startCurvature), Math.abs(element.endCurvature));
      const panels = Math.max(1, Math.ceil((sharpest * element.length) / (2 * HALF_TURN_LIMIT)));
      panelLength[k] = element.length / panels;
      last[k] = panels - 1;
      panelCount += panels;
    }
    chainage += element.length;
  });
  const plan: PreparedPlan = {
    elements,
    startChainage,
    startX,
    startY,
    startHeading,
    startCurvature,
    sharpness,
    bucket: makeBucketIndex(startChainage, chainage),
    panels: { first, last, length: panelLength, x: new Float64Array(panelCount), y: new Float64Array(panelCount) },
  };
  placeInChain(plan, spec);
  return plan;
}

/** Fills in where every element and panel starts, each from the end of the one before it. */
function placeInChain(plan: PreparedPlan, spec: TrackSpec): void {
  const { panels } = plan;
  const at = { x: spec.start.x, y: spec.start.y, heading: spec.start.heading, curvature: 0 };
  plan.elements.forEach((element, k) => {
    plan.startX[k] = at.x;
    plan.startY[k] = at.y;
    plan.startHeading[k] = at.heading;
    const step = panels.length[k];
    for (let j = 0; step > 0 && j <= panels.last[k]; j++) {
      if (j > 0) placeInPanel(plan, k, j - 1, step, at);
      panels.x[panels.first[k] + j] = at.x;
      panels.y[panels.first[k] + j] = at.y;
    }
    placeInElement(plan, k, element.length, at);
  });
}

type PlanPoint = Pick<TrackPoint, 'x' | 'y' | 'heading' | 'curvature'>;

/** Writes the plan at `chainage`, inside the track, into `out`. */
export function placeInPlan(plan: PreparedPlan, chainage: number, out: PlanPoint): void {
  const k = locate(plan.bucket, plan.startChainage, chainage);
  placeInElement(plan, k, chainage - plan.startChainage[k], out);
}

/** Writes the plan at `t` from the start of element `k`. */
function placeInElement(plan: PreparedPlan, k: number, t: number, out: PlanPoint): void {
  const curvature = plan.startCurvature[k];
  const sharpness = plan.sharpness[k];
  if (sharpness !== 0) {
    const step = plan.panels.length[k];
    const j = Math.min(Math.floor(t / step), plan.panels.last[k]);
    placeInPanel(plan, k, j, t - j * step, out);
  } else {
    // The chord of an arc: it leaves at half the turning, and is sin p / p of the arc's length.
    const p = 0.5 * curvature * t;
    const chord = p === 0 ? t : (t * sin(p)) / p;
    const direction = plan.startHeading[k] + p;
    out.x = plan.startX[k] + chord * cos(direction);
    out.y = plan.startY[k] + chord * sin(direction);
  }
  out.heading = plan.startHeading[k] + t * (curvature + 0.5 * sharpness * t);
  out.curvature = curvature + sharpness * t;
}

/** Writes x and y at `u` into panel `j` of clothoid `k`. */
function placeInPanel(plan: PreparedPlan, k: number, j: number, u: number, out: PlanPoint): void {
  const sharpness = plan.sharpness[k];
  const middle = j * plan.panels.length[k] + u / 2;
  const direction = plan.startHeading[k] + middle * (plan.startCurvature[k] + 0.5 * sharpness * middle);
  panelDisplacement(u, plan.startCurvature[k] + sharpness * middle, sharpness, out);
  const ahead = out.x;
  const left = out.y;
  const cosine = cos(direction);
  const sine = sin(direction);
  const panel = plan.panels.first[k] + j;
  out.x = plan.panels.x[panel] + ahead * cosine - left * sine;
  out.y = plan.panels.y[panel] + ahead * sine + left * cosine;
}
