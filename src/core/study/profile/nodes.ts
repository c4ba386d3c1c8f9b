import { clamp, lastNotAbove } from '../../math/index.ts';
import { trackPoint } from '../../track/index.ts';
import type { ProfileTask } from './types.ts';

/** Places nearer to each other than this are one, m: a micrometre. */
const ONE_PLACE = 1e-6;

/** Where the grade may begin or cease to change, from the start of the track to its end. */
export interface Nodes {
  /** m, rising; first 0, last the length of the track. */
  readonly at: readonly number[];
  /** |curvature| just before and just after each, 1/m; it runs linearly between nodes. */
  readonly before: Float64Array;
  readonly after: Float64Array;
  /** ∫|curvature| from the start to each, rad. */
  readonly turned: Float64Array;
}

/**
 * Nodes of a task: ends of elements, places where the curvature changes sides, places with a height or a grade to be met, and between them
 * even steps no longer than asked. Grade is linear between nodes, so everything asked of it is decided at them.
 */
export function nodesOf({ track, heights, grades, every }: ProfileTask): Nodes {
  const { plan, length } = track;
  const set = [0, length, ...heights.map((one) => one.chainage), ...grades.map((one) => one.chainage)];
  plan.elements.forEach(({ startCurvature, endCurvature, length: run }, k) => {
    const start = plan.startChainage[k];
    set.push(start);
    if (startCurvature * endCurvature < 0) set.push(start + (run * startCurvature) / (startCurvature - endCurvature));
  });
  const fixed = set.filter((s) => s >= 0 && s <= length).sort((a, b) => a - b);
  const at = [0];
  for (const s of fixed) {
    const from = at[at.length - 1];
    if (s - from <= ONE_PLACE) continue;
    const steps = Math.ceil((s - from) / every - 1e-9);
    for (let k = 1; k < steps; k++) at.push(from + ((s - from) * k) / steps);
    at.push(s);
  }
  const before = new Float64Array(at.length);
  const after = new Float64Array(at.length);
  const turned = new Float64Array(at.length);
  for (let k = 0; k + 1 < at.length; k++) {
    // Within an interval the curvature is linear: two places of it give it at both ends.
    const [a, b] = [at[k], at[k + 1]];
    const third = (b - a) / 3;
    const low = Math.abs(trackPoint(track, a + third).curvature);
    const high = Math.abs(trackPoint(track, b - third).curvature);
    after[k] = Math.max(0, 2 * low - high);
    before[k + 1] = Math.max(0, 2 * high - low);
    turned[k + 1] = turned[k] + ((b - a) * (low + high)) / 2;
  }
  before[0] = after[0];
  after[at.length - 1] = before[at.length - 1];
  return { at, before, after, turned };
}

/** The interval of nodes that holds a place, from 0. */
export function intervalAt({ at }: Nodes, s: number): number {
  return clamp(lastNotAbove(at, s), 0, at.length - 2);
}

/** ∫|curvature| from the start of the track to a place, rad. */
export function turnedTo(nodes: Nodes, s: number): number {
  const k = intervalAt(nodes, s);
  const t = s - nodes.at[k];
  const run = nodes.at[k + 1] - nodes.at[k];
  const rate = (nodes.before[k + 1] - nodes.after[k]) / run;
  return nodes.turned[k] + t * (nodes.after[k] + (rate * t) / 2);
}
