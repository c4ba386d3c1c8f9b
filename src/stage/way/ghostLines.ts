import type { Vec3 } from '../../core/math/vec3.ts';
import type { Track } from '../../core/track/types.ts';
import { emptyStrokes, line, type Strokes } from '../ink/strokes.ts';
import { wayStroke } from '../palette.ts';
import { stripTop, type WayMeasures } from './measures.ts';
import { sectionPlace } from './ribbon.ts';
import { layStations, stationChainages } from './stations.ts';

/** Departures smaller than this are the same track, m: a hundredth of what the eye can find on a strip. */
const same = 2e-5;

/** How far the ghost's chords may lie off its track, m. */
const tolerance = 5e-5;

const weight = 1.1;

/** Strip edges and rails of the track as it would become, wherever it leaves the track as it is. Path chainages of both run alike. */
export function ghostLines(now: Track, then: Track, m: WayMeasures): Strokes {
  const strokes = emptyStrokes();
  const supports = then.spec.profile.strip?.supports.map((support) => support.chainage) ?? [];
  const chainages = stationChainages(then, 0, then.length, tolerance, supports);
  const ghost = layStations(then, chainages);
  const plain = layStations(now, chainages);
  const half = m.stripWidth / 2;
  const lines: [number, number][] = [
    [-half, -stripTop(m)],
    [half, -stripTop(m)],
    [-m.gauge / 2, 0],
    [m.gauge / 2, 0],
  ];
  const off = chainages.map((_, i) => {
    const at = 3 * i;
    return Math.hypot(
      ghost.centre[at] - plain.centre[at],
      ghost.centre[at + 1] - plain.centre[at + 1],
      ghost.centre[at + 2] - plain.centre[at + 2],
    );
  });
  for (const point of lines) {
    for (let i = 1; i < chainages.length; i++) {
      if (Math.max(off[i - 1], off[i]) < same) continue;
      const a: Vec3 = sectionPlace(ghost, i - 1, point);
      const b: Vec3 = sectionPlace(ghost, i, point);
      line(strokes, a, b, weight, wayStroke.mark, 0, chainages[i - 1]);
    }
  }
  return strokes;
}
