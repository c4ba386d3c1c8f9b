import { extentOfObstacle, type SceneCorner, type SceneRoom, tidy } from '../../../scene/index.ts';
import { type Snapping, toStep } from '../../route/snapping.ts';
import type { Rectangle } from '../proposals.ts';
import type { RoomSubject } from './roomParts.ts';

/** A place and what it was led to, in words; null where to nothing but whole steps. */
export interface Led<T> {
  readonly to: T;
  readonly led: string | null;
}

/** A line that something square to the room can lie against: a coordinate, mm, and whose it is. */
export interface Edge {
  readonly mm: number;
  readonly of: string;
}

/** Walls, boards and obstacles that run square to the room, but those of the thing in hand: what lies east or west of them by x, south or north by y. */
export function edgesOf(
  { corners = [], obstacles = [], baseboards = [] }: Partial<SceneRoom>,
  but: RoomSubject | null,
): { readonly x: readonly Edge[]; readonly y: readonly Edge[] } {
  const x: Edge[] = [];
  const y: Edge[] = [];
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length];
    if (a.xMm === b.xMm) x.push({ mm: a.xMm, of: `wall ${i + 1}` });
    if (a.yMm === b.yMm) y.push({ mm: a.yMm, of: `wall ${i + 1}` });
  });
  const add = (low: SceneCorner, high: SceneCorner, of: string): void => {
    x.push({ mm: low.xMm, of }, { mm: high.xMm, of });
    y.push({ mm: low.yMm, of }, { mm: high.yMm, of });
  };
  baseboards.forEach(({ xMm, yMm, lengthMm, widthMm }, i) => {
    if (but !== `board:${i}`) add({ xMm, yMm }, { xMm: xMm + lengthMm, yMm: yMm + widthMm }, `board ${i + 1}`);
  });
  obstacles.forEach((obstacle, i) => {
    if (but !== `obstacle:${i}`) add(...extentOfObstacle(obstacle), obstacle.name);
  });
  return { x, y };
}

/** One coordinate led to an edge within reach, else to whole steps, mm. */
export function toEdge(mm: number, edges: readonly Edge[], snap: Snapping): Led<number> {
  const near = nearest(mm, edges, snap);
  return near === null
    ? { to: tidy(toStep(mm, snap.lengthMm)), led: null }
    : { to: near.mm, led: `against ${near.of}` };
}

/** How far something from `low` to `high` is to be shifted so that either end lies against an edge within reach, else its low end on a whole step, mm. */
export function shifted(low: number, high: number, edges: readonly Edge[], snap: Snapping): Led<number> {
  const [a, b] = [nearest(low, edges, snap), nearest(high, edges, snap)];
  const [byA, byB] = [a === null ? Infinity : a.mm - low, b === null ? Infinity : b.mm - high];
  if (a !== null && Math.abs(byA) <= Math.abs(byB)) return { to: byA, led: `against ${a.of}` };
  if (b !== null) return { to: byB, led: `against ${b.of}` };
  return { to: toStep(low, snap.lengthMm) - low, led: null };
}

function nearest(mm: number, edges: readonly Edge[], { ends }: Snapping): Edge | null {
  let [best, least]: [Edge | null, number] = [null, ends * 1000];
  for (const edge of edges) {
    if (Math.abs(edge.mm - mm) >= least) continue;
    [best, least] = [edge, Math.abs(edge.mm - mm)];
  }
  return best;
}

/** What was led where, together. */
export const bothLed = (...leds: readonly (string | null)[]): string | null =>
  [...new Set(leds.filter((led) => led !== null))].join(' and ') || null;

interface Line {
  readonly through: SceneCorner;
  readonly way: readonly [number, number];
  readonly led: string;
}

/** Lines that meet at less than about 6 degrees are one, as far as a hand goes. */
const sameWay = 0.1;

/** A corner of an outline led to where a side beside it is square to the next one, or in line with it; else to whole steps. */
export function toSquare(
  corners: readonly SceneCorner[],
  index: number,
  to: SceneCorner,
  snap: Snapping,
): Led<SceneCorner> {
  const count = corners.length;
  const at = (k: number): number => (index + k + count) % count;
  const lines = [nearestLine(corners, at(-1), at(-2), to, snap), nearestLine(corners, at(1), at(2), to, snap)];
  const [a, b] = lines;
  if (a !== null && b !== null) {
    const cross = a.way[0] * b.way[1] - a.way[1] * b.way[0];
    if (Math.abs(cross) > sameWay) {
      const [dx, dy] = [b.through.xMm - a.through.xMm, b.through.yMm - a.through.yMm];
      const along = (dx * b.way[1] - dy * b.way[0]) / cross;
      return { to: onLine(a, along), led: bothLed(a.led, b.led) };
    }
  }
  const line = a ?? b;
  if (line === null) {
    return { to: { xMm: tidy(toStep(to.xMm, snap.lengthMm)), yMm: tidy(toStep(to.yMm, snap.lengthMm)) }, led: null };
  }
  return { to: onLine(line, toStep(alongLine(line, to), snap.lengthMm)), led: line.led };
}

const onLine = ({ through, way }: Line, along: number): SceneCorner => ({
  xMm: tidy(through.xMm + along * way[0]),
  yMm: tidy(through.yMm + along * way[1]),
});

const alongLine = ({ through, way }: Line, { xMm, yMm }: SceneCorner): number =>
  (xMm - through.xMm) * way[0] + (yMm - through.yMm) * way[1];

/** The nearest within reach of the lines through a neighbouring corner: square to the side beyond it, or on in its line. */
function nearestLine(
  corners: readonly SceneCorner[],
  neighbour: number,
  beyond: number,
  to: SceneCorner,
  { ends }: Snapping,
): Line | null {
  const [through, from] = [corners[neighbour], corners[beyond]];
  const size = Math.hypot(through.xMm - from.xMm, through.yMm - from.yMm);
  const [ux, uy] = [(through.xMm - from.xMm) / size, (through.yMm - from.yMm) / size];
  const lines: Line[] = [{ through, way: [-uy, ux], led: `square at corner ${neighbour + 1}` }];
  const inLine: Line = { through, way: [ux, uy], led: `straight on at corner ${neighbour + 1}` };
  if (alongLine(inLine, to) > 0) lines.push(inLine);
  let [best, least]: [Line | null, number] = [null, ends * 1000];
  for (const line of lines) {
    const [wx, wy] = line.way;
    const off = Math.abs((to.xMm - through.xMm) * wy - (to.yMm - through.yMm) * wx);
    if (off < least) [best, least] = [line, off];
  }
  return best;
}

/** The smallest thing that stands in a room, mm. */
export const leastMm = 10;

/** The rectangle between its corners nearest the west and south, and the east and north. Throws RangeError where there is none. */
export function spanned(low: SceneCorner, high: SceneCorner): Rectangle {
  const [lengthMm, widthMm] = [tidy(high.xMm - low.xMm), tidy(high.yMm - low.yMm)];
  if (lengthMm < leastMm || widthMm < leastMm) throw new RangeError(`It needs ${leastMm} mm each way at least.`);
  return { xMm: low.xMm, yMm: low.yMm, lengthMm, widthMm };
}
