/** A rectangle on the stage, px. */
export interface Area {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Where an element stands in what it is placed in. */
export const areaOf = ({ offsetLeft, offsetTop, offsetWidth, offsetHeight }: HTMLElement): Area => ({
  left: offsetLeft,
  top: offsetTop,
  width: offsetWidth,
  height: offsetHeight,
});

/** How far the words stand from the hand to the side, and their upper edge above it, px. */
const aside = 22;
const above = 34;
/** From the edges of the stage, and from what they must leave free, px. */
const margin = 4;

const meet = (a: Area, b: Area): boolean =>
  a.left < b.left + b.width && b.left < a.left + a.width && a.top < b.top + b.height && b.top < a.top + a.height;

/**
 * Where words of this size stand beside a hand on the stage: to its right, else its left, a little above, else below; off what they must leave free, and
 * under it where nowhere else is.
 */
export function wordsPlace(
  hand: { readonly x: number; readonly y: number },
  size: { readonly width: number; readonly height: number },
  stage: { readonly width: number; readonly height: number },
  free: readonly Area[],
): { readonly left: number; readonly top: number } {
  const most = { left: stage.width - size.width - margin, top: stage.height - size.height - margin };
  const tops = [hand.y - above, hand.y + aside, hand.y - above - size.height];
  const lefts = [hand.x + aside, hand.x - aside - size.width];
  const tries = tops.flatMap((top) => lefts.map((left): Area => ({ left, top, ...size })));
  const inside = ({ left, top }: Area): boolean =>
    left >= margin && top >= margin && left <= most.left && top <= most.top;
  const found = tries.find((area) => inside(area) && !free.some((one) => meet(area, one)));
  if (found !== undefined) return found;
  const held = (value: number, greatest: number): number => Math.max(margin, Math.min(value, greatest));
  const left = held(lefts[0], most.left);
  const lowest = free
    .filter((one) => meet({ left, top: held(tops[0], most.top), ...size }, one))
    .reduce((low, one) => Math.max(low, one.top + one.height + margin), held(tops[0], most.top));
  return { left, top: held(lowest, most.top) };
}
