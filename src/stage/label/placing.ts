/** A rectangle on the stage, px. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A straight line on the stage. */
export interface Line {
  readonly from: Spot;
  readonly to: Spot;
}

/** What lies on the stage already: boxes of words, and the lines that lead from them. */
export interface Taken {
  readonly boxes: readonly Box[];
  readonly leaders: readonly Line[];
}

/** From where a label's leader starts: the end of its rule (`rule` px under its top) that is nearer to the anchor. */
export function leaderStart(anchor: Spot, { left, top, width }: Box, rule: number): Spot {
  return { x: anchor.x < left + width / 2 ? left : left + width, y: top + rule };
}

/** Distances a label may stand from what it names, px, and the directions tried (0 to the right, growing downward). */
const reaches = [120, 170, 230, 310];
const directions = 24;

/**
 * How much a label counts to have on its ground: marks of the railway, other boxes, px out of the stage, px of leader, a
 * leader across words, a leader across another. No ground is so crowded that one label may lie on another or be
 * struck through.
 */
const costs = { crowd: 9, box: 4000, outside: 30, reach: 0.16, steep: 12, strike: 3000, crossing: 120 } as const;

/** A label keeps its place until another one is better by this much. */
const loyalty = 14;

/** Marks of a drawn line are no further apart than this, px. */
const markPitch = 9;

/** A line through points on the screen (null: out of sight) as marks close to each other, x and y in a row. */
export function crowdOf(points: readonly (Spot | null)[], pitch = markPitch): number[] {
  const marks: number[] = [];
  let before: Spot | null = null;
  for (const point of points) {
    if (point !== null && before !== null) {
      const away = Math.hypot(point.x - before.x, point.y - before.y);
      // A line that long comes from right beside the eye: its marks would lie anywhere.
      const count = away > 2000 ? 1 : Math.ceil(away / pitch);
      for (let i = 1; i <= count; i++) {
        marks.push(before.x + ((point.x - before.x) * i) / count, before.y + ((point.y - before.y) * i) / count);
      }
    }
    before = point;
  }
  return marks;
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.left + b.width && b.left < a.left + a.width && a.top < b.top + b.height && b.top < a.top + a.height;

/** Whether a straight line from a to b runs through a box. */
function crosses(a: Spot, b: Spot, box: Box): boolean {
  let from = 0;
  let to = 1;
  for (const [start, change, low, high] of [
    [a.x, b.x - a.x, box.left, box.left + box.width],
    [a.y, b.y - a.y, box.top, box.top + box.height],
  ]) {
    if (change === 0) {
      if (start < low || start > high) return false;
      continue;
    }
    const one = (low - start) / change;
    const other = (high - start) / change;
    from = Math.max(from, Math.min(one, other));
    to = Math.min(to, Math.max(one, other));
  }
  return from < to;
}

/** A box without its rim: a line that starts on the rim does not run through it. */
const within = ({ left, top, width, height }: Box): Box => ({
  left: left + 1,
  top: top + 1,
  width: width - 2,
  height: height - 2,
});

const side = (a: Spot, b: Spot, c: Spot): number => Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));

/** Whether two straight lines cross between their ends. */
const meet = (one: Line, other: Line): boolean =>
  side(one.from, one.to, other.from) !== side(one.from, one.to, other.to) &&
  side(other.from, other.to, one.from) !== side(other.from, other.to, one.to);

/** How far a box sticks out of another, px. */
const outside = (box: Box, frame: Box): number =>
  Math.max(0, frame.left - box.left) +
  Math.max(0, frame.top - box.top) +
  Math.max(0, box.left + box.width - frame.left - frame.width) +
  Math.max(0, box.top + box.height - frame.top - frame.height);

/**
 * The middle of a label of a size for something at `anchor`: near it, inside `frame`, clear of what is `taken`, and on as little as can
 * be of the railway, whose outline on the screen is `crowd` (x, y in a row), `clearance` px wide to either side. The leader starts at a rule `rule` px under the label's top. `before` is its offset from its anchor in the last
 * picture, which it keeps when that is still about as good.
 */
export function placeLabel(
  anchor: Spot,
  size: { readonly width: number; readonly height: number },
  frame: Box,
  taken: Taken,
  crowd: ArrayLike<number>,
  before: Spot | null,
  { clearance = 4, rule = size.height }: { readonly clearance?: number; readonly rule?: number } = {},
): Spot {
  const cost = (x: number, y: number): number => {
    const box: Box = { left: x - size.width / 2, top: y - size.height / 2, ...size };
    let sum = costs.outside * outside(box, frame);
    const leader: Line = { from: leaderStart(anchor, box, rule), to: anchor };
    if (crosses(leader.from, anchor, within(box))) sum += costs.strike;
    for (const other of taken.boxes) {
      if (overlap(box, other)) sum += costs.box;
      else if (crosses(leader.from, anchor, other)) sum += costs.strike;
    }
    for (const other of taken.leaders) {
      if (crosses(other.from, other.to, box)) sum += costs.strike;
      else if (meet(leader, other)) sum += costs.crossing;
    }
    let inside = 0;
    for (let i = 0; i < crowd.length; i += 2) {
      const cx = crowd[i] - box.left;
      const cy = crowd[i + 1] - box.top;
      if (cx > -clearance && cx < size.width + clearance && cy > -clearance && cy < size.height + clearance) inside++;
    }
    sum += costs.crowd * inside;
    sum += costs.reach * Math.hypot(x - anchor.x, y - anchor.y);
    // A label straight above or below its place reads less well than one to the side.
    sum += costs.steep * Math.abs(Math.sin(Math.atan2(y - anchor.y, x - anchor.x)));
    return sum;
  };
  let best: Spot | null = null;
  let least = Infinity;
  for (const reach of reaches) {
    for (let i = 0; i < directions; i++) {
      const angle = (2 * Math.PI * i) / directions;
      const spot = { x: anchor.x + reach * Math.cos(angle), y: anchor.y + reach * Math.sin(angle) };
      const now = cost(spot.x, spot.y);
      if (now < least) {
        least = now;
        best = spot;
      }
    }
  }
  if (before !== null) {
    const kept = { x: anchor.x + before.x, y: anchor.y + before.y };
    if (cost(kept.x, kept.y) < least + loyalty) return kept;
  }
  return best ?? anchor;
}
