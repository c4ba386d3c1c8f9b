import { cos, sin } from '../../math/index.ts';
import { locate, makeBucketIndex } from '../bucket.ts';
import { TrackError } from '../problem.ts';
import type { PlanElement, PreparedPlan, TrackPoint, TrackSpec } from '../types.ts';
import { HALF_TURN_LIMIT, panelDisplacement } from './clothoid.ts';
import { laidElements } from './lateral.ts';

/** More turning than this, rad, in one element (over 1500 turns) is a slip of units, and would fill memory with panels. */
const MOST_TURNING = 10_000;

function checkElement(element: PlanElement, index: number): void {
  const { length, startCurvature, endCurvature } = element;
  if (!(length >= 0) || !Number.isFinite(length + startCurvature + endCurvature)) {
    throw new TrackError(
      'bad-element',
      `Element ${index + 1} (${element.kind}) needs a length of 0 or more and finite curvatures.`,
    );
  }
  const sharpest = Math.max(Math.abs(startCurvature), Math.abs(endCurvature));
  if (sharpest * length > MOST_TURNING) {
    throw new TrackError(
      'bad-element',
      `Element ${index + 1} (${element.kind}) turns through more than ${MOST_TURNING} rad.`,
    );
  }
}

/**
 * Chains the elements of `spec` end to end, with the wanderings of the rails as laid. Throws TrackError when they have no
 * length or are not finite, or wander where they cannot.
 */
export function preparePlan(spec: TrackSpec): PreparedPlan {
  const { x, y, heading } = spec.start;
  if (!Number.isFinite(x + y + heading))
    throw new TrackError('bad-start', 'The start of a track needs a finite x, y and heading.');
  spec.elements.forEach(checkElement);
  const planned = spec.elements.filter((element) => element.length > 0);
  if (planned.length === 0) throw new TrackError('no-elements', 'A track needs at least one element longer than 0.');

  const length = planned.reduce((sum, element) => sum + element.length, 0);
  const { elements, turns } =
    spec.lateral === undefined ? { elements: planned, turns: [] } : laidElements(planned, spec.lateral, length);
  const n = elements.length;
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
    const sharpest = Math.max(Math.abs(element.startCurvature), Math.abs(element.endCurvature));
    const count = Math.max(1, Math.ceil((sharpest * element.length) / (2 * HALF_TURN_LIMIT)));
    last[k] = count - 1;
    panelLength[k] = element.length / count;
    panelCount += count;
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
    panels: {
      first,
      last,
      length: panelLength,
      x: new Float64Array(panelCount),
      y: new Float64Array(panelCount),
      cos: new Float64Array(panelCount),
      sin: new Float64Array(panelCount),
    },
  };
  placeInChain(plan, spec, turns);
  return plan;
}

/** Fills in where every element and panel starts, each from the end of the one before it. */
function placeInChain(plan: PreparedPlan, spec: TrackSpec, turns: readonly number[]): void {
  const { panels } = plan;
  const at = { x: spec.start.x, y: spec.start.y, heading: spec.start.heading, curvature: 0 };
  plan.elements.forEach((element, k) => {
    plan.startX[k] = at.x;
    plan.startY[k] = at.y;
    at.heading += turns[k] ?? 0;
    plan.startHeading[k] = at.heading;
    for (let j = 0; j <= panels.last[k]; j++) {
      if (j > 0) placePanel(plan, k, j, at);
      const panel = panels.first[k] + j;
      const t = j * panels.length[k];
      const heading = plan.startHeading[k] + t * (plan.startCurvature[k] + 0.5 * plan.sharpness[k] * t);
      panels.x[panel] = at.x;
      panels.y[panel] = at.y;
      panels.cos[panel] = cos(heading);
      panels.sin[panel] = sin(heading);
    }
    placeInElement(plan, k, element.length, at);
  });
}

/** Writes where panel `j` > 0 of element `k` starts: on an arc by its chord from the start, else from the panel before. */
function placePanel(plan: PreparedPlan, k: number, j: number, out: PlanPoint): void {
  const step = plan.panels.length[k];
  const p = 0.5 * plan.startCurvature[k] * j * step;
  if (plan.sharpness[k] === 0 && p !== 0) {
    const chord = (j * step * sin(p)) / p;
    const direction = plan.startHeading[k] + p;
    out.x = plan.startX[k] + chord * cos(direction);
    out.y = plan.startY[k] + chord * sin(direction);
  } else {
    placeInPanel(plan, k, j - 1, step, out);
  }
}

type PlanPoint = Pick<TrackPoint, 'x' | 'y' | 'heading' | 'curvature'>;

/** Writes the plan at `chainage`, inside the track, into `out`. */
export function placeInPlan(plan: PreparedPlan, chainage: number, out: PlanPoint): void {
  const k = locate(plan.bucket, plan.startChainage, chainage);
  placeInElement(plan, k, chainage - plan.startChainage[k], out);
}

/** Writes the plan at `t` from the start of element `k`. */
function placeInElement(plan: PreparedPlan, k: number, t: number, out: PlanPoint): void {
  const step = plan.panels.length[k];
  const j = Math.min(Math.floor(t / step), plan.panels.last[k]);
  placeInPanel(plan, k, j, t - j * step, out);
  const curvature = plan.startCurvature[k];
  const sharpness = plan.sharpness[k];
  out.heading = plan.startHeading[k] + t * (curvature + 0.5 * sharpness * t);
  out.curvature = curvature + sharpness * t;
}

/** Writes x and y at `u` into panel `j` of element `k`. */
function placeInPanel(plan: PreparedPlan, k: number, j: number, u: number, out: PlanPoint): void {
  const { panels } = plan;
  const sharpness = plan.sharpness[k];
  panelDisplacement(u, plan.startCurvature[k] + sharpness * j * panels.length[k], sharpness, out);
  const ahead = out.x;
  const left = out.y;
  const panel = panels.first[k] + j;
  const cos = panels.cos[panel];
  const sin = panels.sin[panel];
  out.x = panels.x[panel] + ahead * cos - left * sin;
  out.y = panels.y[panel] + ahead * sin + left * cos;
}
