import type { Vec3 } from '../../core/math/vec3.ts';
import type { SupportDeparture } from '../../core/track/types.ts';
import type { TableTop } from '../table/tableTop.ts';
import type { DrawnTrack } from '../way/drawnTrack.ts';
import { stripTop, stripUnderside, type WayMeasures } from '../way/measures.ts';
import { layStations, type Stations, stationChainages } from '../way/stations.ts';

/** One support as it is drawn: a bearer under the strip, hung between two threaded rods. */
export interface Post {
  readonly trackId: string;
  /** Number of the support, from 0 as findings count; null for one that only keeps the picture from floating. */
  readonly index: number | null;
  readonly chainage: number;
  readonly departure: number;
  /** Centreline at the rail top, m, and the level direction to the left. */
  readonly centre: Vec3;
  readonly left: readonly [number, number];
  readonly rods: readonly Rod[];
}

/** A threaded rod, upright: place in plan, foot and head, m. */
export interface Rod {
  readonly x: number;
  readonly y: number;
  readonly foot: number;
  readonly head: number;
  /** To the left (1) or right (-1) of the track. */
  readonly side: 1 | -1;
}

/** Sizes in gauges: how far rods stand outside the strip's edge, and above its top. */
const outside = 0.35;
const above = 0.5;

/** How close under a rod another strip has to pass to carry it, beyond half the strip's width, m. */
const clear = 0.003;

/** Below this height over the table there is no room for rods: the bearer lies on the table, m. */
const leastRod = 0.004;

/** Where the file gives a track no supports, plain rods stand about this far apart, m. */
const assumedPitch = 0.4;

/** Chords of the strips that rods may stand on depart by this much, m. */
const coarse = 0.001;

/** Works out all supports of a railway. A rod that would pierce another strip stands on that strip instead. */
export function posts(tracks: readonly DrawnTrack[], tables: readonly TableTop[], m: WayMeasures): Post[] {
  const strips = tracks.map(({ track }) => layStations(track, stationChainages(track, 0, track.length, coarse, [])));
  const list: Post[] = [];
  for (const { id, track, supports: given } of tracks) {
    const assumed = given.length === 0;
    const supports = assumed ? evenly(track.length) : given;
    const at = layStations(
      track,
      supports.map((support) => support.chainage),
    );
    supports.forEach(({ chainage, departure, number: listed }, index) => {
      const number = listed ?? index;
      const centre: Vec3 = [at.centre[3 * index], at.centre[3 * index + 1], at.centre[3 * index + 2]];
      const left = [at.left[2 * index], at.left[2 * index + 1]] as const;
      const rods: Rod[] = [];
      for (const side of [1, -1] as const) {
        const across = side * (m.stripWidth / 2 + outside * m.gauge);
        const x = centre[0] + across * left[0];
        const y = centre[1] + across * left[1];
        const head = centre[2] - stripTop(m) + above * m.gauge;
        const foot = standsOn(strips, tables, m, x, y, centre[2] - stripUnderside(m));
        if (foot !== null && centre[2] - stripUnderside(m) - foot > leastRod) rods.push({ x, y, foot, head, side });
      }
      list.push({ trackId: id, index: assumed || number < 0 ? null : number, chainage, departure, centre, left, rods });
    });
  }
  return list;
}

function evenly(length: number): SupportDeparture[] {
  const count = Math.max(2, Math.round(length / assumedPitch));
  return Array.from({ length: count }, (_, i) => ({ chainage: ((i + 0.5) * length) / count, departure: 0 }));
}

/** Height of what lies under a place, below `under`: the highest strip there, else the table, else null. */
function standsOn(
  strips: readonly Stations[],
  tables: readonly TableTop[],
  m: WayMeasures,
  x: number,
  y: number,
  under: number,
): number | null {
  const reach = m.stripWidth / 2 + clear;
  let best: number | null = null;
  for (const table of tables) {
    if (x < table.x[0] || x > table.x[1] || y < table.y[0] || y > table.y[1] || table.top > under) continue;
    if (best === null || table.top > best) best = table.top;
  }
  for (const strip of strips) {
    for (let i = 0; i + 1 < strip.count; i++) {
      const top = strip.centre[3 * i + 2] - stripTop(m);
      if (top >= under || (best !== null && top <= best)) continue;
      if (awayFrom(strip.centre, i, x, y) < reach) best = top;
    }
  }
  return best;
}

/** Distance in plan from a place to the chord from station i to the next, m. */
function awayFrom(centre: Float64Array, i: number, x: number, y: number): number {
  const ax = centre[3 * i];
  const ay = centre[3 * i + 1];
  const dx = centre[3 * i + 3] - ax;
  const dy = centre[3 * i + 4] - ay;
  const share = ((x - ax) * dx + (y - ay) * dy) / Math.max(dx * dx + dy * dy, 1e-12);
  const t = Math.min(1, Math.max(0, share));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}
