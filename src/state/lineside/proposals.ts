import { gaugeMm, structureGaugeMm, tunnelWidth } from '../../core/stock/standards/index.ts';
import { plannedHeight, trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import type { Scene, SceneLineside, SceneStructure } from '../../scene/index.ts';
import { nearestNorm } from '../../sim/advice/index.ts';
import { fromRectangle } from '../room/proposals.ts';

type Portal = Extract<SceneLineside, { kind: 'portal' }>;
type Wall = Extract<SceneLineside, { kind: 'wall' }>;

/** Places are proposed to this, mm. */
const gridMm = 10;
/** Length of a platform or wall that is first put beside a track, mm: a coach or two. */
const wallMm = 600;
/** Width of a deck across, its thickness, and side of a pier, in gauges: of a usual size to look at; to be made what they are. */
const [deckWideGauges, deckThickGauges, pierGauges] = [4, 1, 2];
/** Height of a platform over the rail of the prototype, mm: the lower of the two of European railways; from memory. */
const platformMm = 550;
/** Gauge of the prototype that scales without a ratio are taken from, mm. */
const standardGaugeMm = 1435;

/** A track of a scene in its drawn form. */
interface Line {
  readonly id: string;
  readonly drawn: Track;
}

/** Clear of everything: the structure gauge of the norm nearest to a scene's gauge, in proportion to it, mm. Source: NEM 102 (2017), NEM 105 (2013). */
function clearOf({ scale }: Scene) {
  const norm = nearestNorm(scale.gaugeMm);
  const row = norm === 'II' ? 'I' : norm;
  const by = scale.gaugeMm / gaugeMm[row];
  const { bl1, hl4 } = structureGaugeMm[row];
  return {
    aside: (by * bl1) / 2,
    height: Math.ceil(by * hl4),
    mouth: Math.ceil(by * tunnelWidth(row) * 1000),
  };
}

/** Where something is first put: the middle of the longest straight, or of the whole line where it has none, mm. */
function quietPlace({ plan: { elements, startChainage }, length }: Track): number {
  let [from, longest] = [0, 0];
  elements.forEach((element, k) => {
    if (element.startCurvature === 0 && element.endCurvature === 0 && element.length > longest) {
      [from, longest] = [startChainage[k], element.length];
    }
  });
  const metres = longest > 0 ? from + longest / 2 : length / 2;
  return Math.floor((metres * 1000) / gridMm) * gridMm;
}

/** The mouth of a tunnel over a track, as wide and as high as the norms ask on straight track. */
export function proposedMouth(scene: Scene, { id, drawn }: Line, name: string): Portal {
  const { height, mouth } = clearOf(scene);
  return { kind: 'portal', name, track: id, atMm: quietPlace(drawn), widthMm: mouth, heightMm: height };
}

/** A stretch of wall or platform to the left of a track, with its face at the edge of the norm's structure gauge. */
function beside(scene: Scene, { id, drawn }: Line, name: string, heightMm: number): Wall {
  const middle = quietPlace(drawn);
  const endMm = Math.floor(drawn.length * 1000);
  const fromMm = Math.max(0, Math.min(middle - wallMm / 2, endMm - wallMm));
  return {
    kind: 'wall',
    name,
    track: id,
    fromMm,
    toMm: Math.min(fromMm + wallMm, endMm),
    side: 'left',
    distanceMm: clearOf(scene).aside,
    heightMm,
  };
}

/** A platform: as high as one of the prototype, scaled. */
export function proposedPlatform(scene: Scene, line: Line, name: string): Wall {
  const { ratio, gaugeMm: gauge } = scene.scale;
  return beside(scene, line, name, Math.round((2 * platformMm) / (ratio ?? standardGaugeMm / gauge)) / 2);
}

/** A wall as high as the norm's structure gauge. */
export const proposedWall = (scene: Scene, line: Line, name: string): Wall =>
  beside(scene, line, name, clearOf(scene).height);

/** A square of this side, mm, about a place beside a track, m to its left. */
function square(drawn: Track, atMm: number, left: number, sideMm: number) {
  const { x, y, heading } = trackPoint(drawn, atMm / 1000);
  const [xMm, yMm] = [x - left * Math.sin(heading), y + left * Math.cos(heading)].map((metres) =>
    Math.round(metres * 1000 - sideMm / 2),
  );
  return fromRectangle({ xMm, yMm, lengthMm: sideMm, widthMm: sideMm });
}

/** A deck across a track, the norm's clear height over its rail. */
export function proposedDeck(scene: Scene, { drawn }: Line, name: string): SceneStructure {
  const atMm = quietPlace(drawn);
  const gauge = Math.ceil(scene.scale.gaugeMm);
  const bottomMm = Math.ceil(plannedHeight(drawn, atMm / 1000) * 1000) + clearOf(scene).height;
  const outline = square(drawn, atMm, 0, deckWideGauges * gauge);
  return { name, outline, bottomMm, topMm: bottomMm + deckThickGauges * gauge };
}

/** A pier to the left of a track, clear of the norm's structure gauge whichever way it is turned, as high as what may pass it. */
export function proposedPier(scene: Scene, { drawn }: Line, name: string): SceneStructure {
  const atMm = quietPlace(drawn);
  const sideMm = pierGauges * Math.ceil(scene.scale.gaugeMm);
  const { aside, height } = clearOf(scene);
  const railMm = Math.round(plannedHeight(drawn, atMm / 1000) * 1000);
  // From the middle of a square to its corner; a millimetre for the rounding of its place.
  const left = (aside + sideMm * Math.SQRT1_2 + 1) / 1000;
  return { name, outline: square(drawn, atMm, left, sideMm), bottomMm: railMm - height, topMm: railMm + height };
}
