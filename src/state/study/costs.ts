import type { Scene } from '../../scene/index.ts';
import { compileScene } from '../../sim/index.ts';
import { passesOf } from '../../sim/passes.ts';
import { type RouteMeasure, routeMeasure } from '../../sim/study/index.ts';
import { tracksUnder } from './ways.ts';

/** What the tracks of some trials take to build, SI. */
export interface Costs {
  /** Of strip, all tracks together, m. */
  readonly length: number;
  /** Room for the rails, along the wider and the narrower side, m. */
  readonly width: number;
  readonly depth: number;
  readonly rise: number;
  /** Steepest grade, a ratio; tightest radius, m. */
  readonly steepest: number;
  readonly tightest: number;
  /** Least way between a rail and the deck over it, m; null where nothing passes over. */
  readonly headroom: number | null;
  /** Of deck, m². */
  readonly deck: number;
}

/** Width of the deck in gauges where the scene gives none. Source: NEM 122 (2007), formation of H0 70 mm wide. */
const deckInGauges = 70 / 16.5;

/** What the tracks that these trials run on take, all the tracks of a route, each whole, laid together; null when the railway cannot be laid. */
export function costsOf(scene: Scene, trialIds: readonly string[]): Costs | null {
  const ids = tracksUnder(scene, trialIds);
  try {
    const compiled = compileScene(scene);
    const measures = ids.flatMap((id) => {
      const track = compiled.tracks.get(id);
      return track === undefined ? [] : [routeMeasure(track)];
    });
    if (measures.length === 0) return null;
    const clear = ids.flatMap((id) => passesOf(compiled, id).map((pass) => pass.clear));
    const length = sum(measures.map((one) => one.length));
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
      tightest: least(({ tightest }) => tightest),
      headroom: clear.length === 0 ? null : Math.min(...clear),
      deck: length * deckWidth,
    };
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);
