import { type BranchStart, branchStart, chainEnd, makeTrack, type Pose, reverseTrack } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import { startTurnout } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import { trackOf } from './parts.ts';
import { planElement } from './planElements.ts';

/** Where a track of its own begins in the room; null for a branch. */
function roomPose({ start }: SceneTrack): Pose | null {
  if ('branchOf' in start) return null;
  return { x: start.xMm / 1000, y: start.yMm / 1000, heading: (start.headingDeg * Math.PI) / 180 };
}

/** Where a branch leaves its main track, with the elements of its turnout as the main track bends them; null for a track of its own. Throws RangeError. */
function leaving(scene: Scene, track: SceneTrack): BranchStart | null {
  const turnout = startTurnout(track);
  if (turnout === null || !('branchOf' in track.start)) return null;
  const { branchOf, atMm, towards } = track.start;
  const main = levelTrack(scene, trackOf(scene, branchOf));
  return towards === 'end'
    ? branchStart(main, atMm / 1000, turnout)
    : branchStart(reverseTrack(main), main.length - atMm / 1000, turnout);
}

/** A track in plan, as if it were level. Throws RangeError when it cannot be laid. */
export function levelTrack(scene: Scene, track: SceneTrack): Track {
  const branch = leaving(scene, track);
  const own = track.alignment.map((_, index) => planElement(track, index));
  return makeTrack({
    start: branch?.start ?? (roomPose(track) as Pose),
    elements: branch === null ? own : [...branch.elements, ...own],
    profile: { points: [{ chainage: 0, height: 0 }] },
  });
}

/** Where the first element of a track begins in plan: in the room, or at the heel of its turnout. Throws RangeError when that cannot be laid. */
export function beginOf(scene: Scene, track: SceneTrack): Pose {
  const room = roomPose(track);
  if (room !== null) return room;
  const branch = leaving(scene, track) as BranchStart;
  return chainEnd(branch.start, branch.elements);
}
