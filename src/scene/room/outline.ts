import type { SceneCorner } from '../schema/outlineSchema.ts';

type Outline = readonly SceneCorner[];

/** Twice the area of an outline, mm²: positive when its corners run counter-clockwise. */
export const twiceArea = (outline: Outline): number =>
  outline.reduce((sum, a, i) => {
    const b = outline[(i + 1) % outline.length];
    return sum + a.xMm * b.yMm - b.xMm * a.yMm;
  }, 0);

/** Sense of a turn from a over b to c, mm²: positive to the left. */
const turn = (a: SceneCorner, b: SceneCorner, c: SceneCorner): number =>
  (b.xMm - a.xMm) * (c.yMm - b.yMm) - (b.yMm - a.yMm) * (c.xMm - b.xMm);

/** Where c lies between a and b, all on one line. */
const between = (a: SceneCorner, b: SceneCorner, c: SceneCorner): boolean =>
  Math.min(a.xMm, b.xMm) <= c.xMm &&
  c.xMm <= Math.max(a.xMm, b.xMm) &&
  Math.min(a.yMm, b.yMm) <= c.yMm &&
  c.yMm <= Math.max(a.yMm, b.yMm);

/** Whether two sides cross or touch. */
function meet(a: SceneCorner, b: SceneCorner, c: SceneCorner, d: SceneCorner): boolean {
  const [abc, abd, cda, cdb] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (abc * abd < 0 && cda * cdb < 0) return true;
  return (
    (abc === 0 && between(a, b, c)) ||
    (abd === 0 && between(a, b, d)) ||
    (cda === 0 && between(c, d, a)) ||
    (cdb === 0 && between(c, d, b))
  );
}

/** What makes an outline none, in words; null for a sound one: a side of no length, sides that fold back on or cross each other. */
export function outlineFault(outline: Outline): string | null {
  const count = outline.length;
  for (let i = 0; i < count; i++) {
    const [a, b, c] = [outline[i], outline[(i + 1) % count], outline[(i + 2) % count]];
    if (a.xMm === b.xMm && a.yMm === b.yMm) return `corner ${i + 1} twice`;
    const along = (b.xMm - a.xMm) * (c.xMm - b.xMm) + (b.yMm - a.yMm) * (c.yMm - b.yMm);
    if (turn(a, b, c) === 0 && along < 0) return `a side that folds back at corner ${((i + 1) % count) + 1}`;
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      if (meet(a, b, outline[j], outline[(j + 1) % count])) return `sides ${i + 1} and ${j + 1} that cross`;
    }
  }
  return null;
}

/** Whether a place lies inside an outline. Places on its sides may count either way. */
export function isInside({ xMm, yMm }: SceneCorner, outline: Outline): boolean {
  let inside = false;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length];
    if (a.yMm > yMm === b.yMm > yMm) return;
    if (xMm < a.xMm + ((yMm - a.yMm) / (b.yMm - a.yMm)) * (b.xMm - a.xMm)) inside = !inside;
  });
  return inside;
}

/** Length of the side that begins at a corner, mm. */
export function sideMm(outline: Outline, index: number): number {
  const a = outline[index];
  const b = outline[(index + 1) % outline.length];
  return Math.sqrt((b.xMm - a.xMm) * (b.xMm - a.xMm) + (b.yMm - a.yMm) * (b.yMm - a.yMm));
}
