import type { SceneCorner } from '../schema/outlineSchema.ts';
import { isInside } from './outline.ts';
import type { SceneObstacle } from './roomSchema.ts';

/** Whether a place lies in an obstacle in plan. Places on its edge may count either way. */
export function isIn(place: SceneCorner, { outline, round }: SceneObstacle): boolean {
  if (round === undefined) return outline !== undefined && isInside(place, outline);
  const [dx, dy] = [place.xMm - round.xMm, place.yMm - round.yMm];
  return 4 * (dx * dx + dy * dy) < round.diameterMm * round.diameterMm;
}

/** The rectangle square to the room that an obstacle just fits into: its corners nearest the west and south, and the east and north, mm. */
export function extentOfObstacle({ outline = [], round }: SceneObstacle): readonly [SceneCorner, SceneCorner] {
  if (round !== undefined) {
    const half = round.diameterMm / 2;
    return [
      { xMm: round.xMm - half, yMm: round.yMm - half },
      { xMm: round.xMm + half, yMm: round.yMm + half },
    ];
  }
  const [xs, ys] = [outline.map(({ xMm }) => xMm), outline.map(({ yMm }) => yMm)];
  return [
    { xMm: Math.min(...xs), yMm: Math.min(...ys) },
    { xMm: Math.max(...xs), yMm: Math.max(...ys) },
  ];
}
