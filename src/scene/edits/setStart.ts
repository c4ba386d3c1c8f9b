import type { Scene } from '../schema/schema.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import { trackOf } from './parts.ts';
import { putTrack } from './putTrack.ts';
import { tidy } from './tidy.ts';

/** Where a track in the room begins, and which way. */
export interface StartChange {
  readonly xMm?: number;
  readonly yMm?: number;
  readonly headingDeg?: number;
}

/** The scene with a track begun elsewhere in the room; all of it moves along. Throws RangeError for a track that begins at a turnout. */
export function setStart(scene: Scene, trackId: string, { xMm, yMm, headingDeg }: StartChange): Scene {
  const track = trackOf(scene, trackId);
  const { start } = track;
  if ('branchOf' in start) throw new RangeError(`${track.name} begins at a turnout: move that along its main track.`);
  const moved: SceneTrack['start'] = {
    xMm: tidy(xMm ?? start.xMm),
    yMm: tidy(yMm ?? start.yMm),
    headingDeg: tidy(withinTurn(headingDeg ?? start.headingDeg)),
  };
  return putTrack(scene, { ...track, start: moved });
}

/** The same direction within half a turn either way, degrees. */
const withinTurn = (deg: number): number => deg - 360 * Math.round(deg / 360);
