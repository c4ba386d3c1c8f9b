import { passesOf } from '../passes.ts';
import type { CompiledScene } from '../types.ts';
import { type RouteMeasure, routeMeasure } from './routeMeasure.ts';
import type { Takes } from './types.ts';

/** Width of the deck in gauges where the scene gives none. Source: NEM 122 (2007), formation of H0 70 mm wide. */
const deckInGauges = 70 / 16.5;

/** A vertical radius beyond this is rounding of an even grade, m: a coach rises by less than a micrometre on it. */
const even = 1e4;

const finite = (radius: number): number => (radius > even ? Number.POSITIVE_INFINITY : radius);

/** What some tracks of a scene take, each whole, laid together; null when there are none. */
export function takesOf(compiled: CompiledScene, trackIds: readonly string[]): Takes | null {
  const { scene, tracks } = compiled;
  const measures = trackIds.flatMap((id) => {
    const track = tracks.get(id);
    return track === undefined ? [] : [routeMeasure(track)];
  });
  if (measures.length === 0) return null;
  const clear = trackIds.flatMap((id) => passesOf(compiled, id).map((pass) => pass.clear));
  const length = measures.reduce((sum, one) => sum + one.length, 0);
  const most = (of: (one: RouteMeasure) => number) => Math.max(...measures.map(of));
  const least = (of: (one: RouteMeasure) => number) => Math.min(...measures.map(of));
  const sides = [
    most(({ east }) => east) - least(({ west }) => west),
    most(({ north }) => north) - least(({ south }) => south),
  ];
  const deckWidth =
    scene.deck.widthMm === undefined ? (deckInGauges * scene.scale.gaugeMm) / 1e3 : scene.deck.widthMm / 1e3;
  return {
    length,
    width: Math.max(...sides),
    depth: Math.min(...sides),
    rise: most(({ highest }) => highest) - least(({ lowest }) => lowest),
    steepest: most(({ steepest }) => steepest),
    ruling: most(({ ruling }) => ruling),
    tightest: least(({ tightest }) => tightest),
    sharpest: finite(least(({ sharpest }) => sharpest)),
    headroom: clear.length === 0 ? null : clear.reduce((low, one) => Math.min(low, one), Number.POSITIVE_INFINITY),
    deck: length * deckWidth,
  };
}
