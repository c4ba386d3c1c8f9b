import { trackPoint } from '../../core/track/index.ts';
import type { TrackPoint } from '../../core/track/types.ts';
import type { DrawnTrack } from '../way/drawnTrack.ts';
import type { TableTop } from './tableTop.ts';

/** Where and how dark the railway shades a table: width × height bytes, row by row from the table's south-west corner. */
export interface ShadowMask {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** How far the shadow moves east and north for every metre that its strip stands above the table. */
const slant = { x: 0.22, y: 0.16 } as const;

/** Width of the soft edge, m: at the table, and more for each metre of height. */
const softness = 0.006;
const softnessPerHeight = 0.09;

/** Size of one cell of the mask, m, and the most cells along a side. */
const cell = 0.008;
const mostCells = 640;

const fullShade = 255;

/**
 * The flat shadow of all strips on a table. Where turns lie above each other it is no darker than under one: the mask holds the
 * deepest shade, not the sum.
 */
export function shadowMask(tracks: readonly DrawnTrack[], stripWidth: number, table: TableTop): ShadowMask {
  const sizeX = table.x[1] - table.x[0];
  const sizeY = table.y[1] - table.y[0];
  const width = Math.max(1, Math.min(mostCells, Math.round(sizeX / cell)));
  const height = Math.max(1, Math.min(mostCells, Math.round(sizeY / cell)));
  const data = new Uint8Array(width * height);
  const cellX = sizeX / width;
  const cellY = sizeY / height;
  const step = Math.max(cellX, cellY);
  const point = {} as TrackPoint;
  for (const { track } of tracks) {
    const count = Math.ceil(track.length / step);
    for (let i = 0; i <= count; i++) {
      trackPoint(track, (track.length * i) / count, point);
      const above = point.z - table.top;
      if (above < 0) continue;
      const soft = softness + softnessPerHeight * above;
      stamp(point.x + slant.x * above - table.x[0], point.y + slant.y * above - table.y[0], stripWidth / 2, soft);
    }
  }
  return { width, height, data };

  function stamp(x: number, y: number, radius: number, soft: number): void {
    const reach = radius + soft;
    const x0 = Math.max(0, Math.floor((x - reach) / cellX));
    const x1 = Math.min(width - 1, Math.ceil((x + reach) / cellX));
    const y0 = Math.max(0, Math.floor((y - reach) / cellY));
    const y1 = Math.min(height - 1, Math.ceil((y + reach) / cellY));
    for (let row = y0; row <= y1; row++) {
      const dy = (row + 0.5) * cellY - y;
      for (let column = x0; column <= x1; column++) {
        const away = Math.hypot((column + 0.5) * cellX - x, dy);
        const inside = Math.min(1, Math.max(0, (radius + soft - away) / (2 * soft)));
        const shade = Math.round(fullShade * inside * inside * (3 - 2 * inside));
        const at = row * width + column;
        if (shade > data[at]) data[at] = shade;
      }
    }
  }
}
