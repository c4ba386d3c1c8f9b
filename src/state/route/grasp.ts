import type { Track } from '../../core/track/types.ts';
import { placedSupports, type Scene, type SupportSpan } from '../../scene/index.ts';
import { drawnKey, type RoomHandle, type RoomTool, roomDragged, roomDrawn } from '../room/hand/index.ts';
import { draftTrack } from '../routeEdits/index.ts';
import { type Dragged, dragged, type Held, type Steer, steered } from './dragged.ts';
import { openEnds } from './ends.ts';
import type { Handle, Place } from './handles.ts';
import type { Snapping } from './snapping.ts';
import { moveWith, raisedOff, supportLabel } from './supportHand.ts';

/** What a hand can do with what it holds; each is worked out from the railway as it was when it took hold. */
export interface Grasp {
  /** What is in the hand from now on, and chosen when it lets go: something new has another key than what it is drawn from. */
  readonly key: string;
  /** Takes it to a place in plan. */
  readonly to?: (place: Place, snap: Snapping) => Dragged;
  /** Raises it by this much, mm. */
  readonly raise?: (byMm: number, snaps: boolean) => Dragged;
  /** Lays on, takes back or bends new track, from where the hold has brought it. */
  readonly steer?: (by: Steer) => { readonly label: string; readonly make: (scene: Scene) => Scene };
}

/** A hand on a handle of a track's plan. */
export function graspTrack(scene: Scene, trackId: string, track: Track, handle: Handle): Grasp {
  const tracks = new Map(
    scene.tracks.flatMap(({ id }) => {
      const drawn = draftTrack(scene, id);
      return drawn === null ? [] : [[id, drawn] as const];
    }),
  );
  const held: Held = { scene, trackId, track, handle, tracks, ends: openEnds(tracks) };
  return {
    key: handle.key,
    to: (place, snap) => dragged(held, place, snap),
    steer: (by) => ({ label: 'new track', make: (now) => steered(now, trackId, by) }),
  };
}

/** A hand on a support, and on the chosen ones that it is one of. */
export function graspSupport(scene: Scene, trackId: string, handle: Handle, span: SupportSpan | null): Grasp {
  const index = handle.element;
  const file = scene.tracks.find(({ id }) => id === trackId);
  const offMm = (file && placedSupports(file)[index]?.offMm) ?? 0;
  return {
    key: handle.key,
    raise: (byMm, snaps) => ({
      label: supportLabel(index, span),
      make: () => ({ scene: moveWith(scene, trackId, index, raisedOff(offMm, byMm, snaps), span), led: null }),
    }),
  };
}

/** A hand on something of the room. What it makes new is in the hand at once. */
export const graspRoom = (scene: Scene, handle: RoomHandle): Grasp => ({
  key: handle.part.of === 'split' ? `room:corner:${handle.part.index + 1}` : handle.key,
  to: (place, snap) => roomDragged(scene, handle, place, snap),
});

/** A hand that draws something new from where it was put down. */
export const graspNew = (scene: Scene, tool: RoomTool, start: Place): Grasp => ({
  key: drawnKey(tool, scene.room ?? {}),
  to: (place, snap) => roomDrawn(scene, tool, start, place, snap),
});
