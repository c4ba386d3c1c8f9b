import type { Vec3 } from '../../core/math/vec3.ts';
import type { Railway } from '../railway.ts';
import { trackExtent } from '../table/tableTop.ts';

/** A ball that holds everything of a railway that is drawn. */
export interface Reach {
  readonly centre: Vec3;
  /** m */
  readonly radius: number;
}

/** What lies outside a room's corners: its walls and the leaves of doors that open outwards, m. */
const wallRoom = 1.5;

/** The ball round tracks, tables, room and structures. */
export function reachOf(railway: Railway): Reach {
  const extent = trackExtent(railway.tracks);
  const low: Vec3 = [...extent.low];
  const high: Vec3 = [...extent.high];
  for (const table of railway.tables) {
    low[0] = Math.min(low[0], table.x[0]);
    high[0] = Math.max(high[0], table.x[1]);
    low[1] = Math.min(low[1], table.y[0]);
    high[1] = Math.max(high[1], table.y[1]);
    low[2] = Math.min(low[2], table.top - table.thickness);
  }
  for (const [x, y] of [...railway.room.corners, ...railway.room.obstacles.flatMap(({ outline }) => outline)]) {
    low[0] = Math.min(low[0], x - wallRoom);
    high[0] = Math.max(high[0], x + wallRoom);
    low[1] = Math.min(low[1], y - wallRoom);
    high[1] = Math.max(high[1], y + wallRoom);
    low[2] = Math.min(low[2], railway.floor);
  }
  for (const { top } of railway.structures) high[2] = Math.max(high[2], top);
  return {
    centre: [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2],
    radius: Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]) / 2 + 0.1,
  };
}
