import type { Vec3 } from '../../core/math/vec3.ts';
import type { Track } from '../../core/track/types.ts';
import type { Scene, SceneTrack } from '../../scene/index.ts';
import { roomHandles, roomLines, roomSubject } from '../room/hand/index.ts';
import { chosenSpan } from './chosenSupports.ts';
import { type Handle, handlesOf } from './handles.ts';
import { supportHandles } from './supportHand.ts';
import type { RouteState } from './types.ts';

/** The track being drawn as the railway now is, with the handles there are. */
export interface DrawnPlan {
  readonly trackId: string;
  readonly track: Track;
  readonly handles: readonly Handle[];
  /** Where the room is worked at: the lines of what is chosen in it, m. Null at the line. */
  readonly lines: readonly (readonly Vec3[])[] | null;
  /** Heads of the chosen supports, m. */
  readonly posts: readonly Vec3[];
}

/** What a hand can work at: the line of a track, compiled, with its supports, or the room. */
export function drawnPlan(
  scene: Scene,
  file: SceneTrack,
  track: Track,
  { works, chosenHandle, chosenSupports, atSupport }: RouteState,
): DrawnPlan {
  const trackId = file.id;
  if (works === 'room') {
    const lines = roomLines(scene, roomSubject(chosenHandle));
    return { trackId, track, handles: roomHandles(scene, chosenHandle), lines, posts: [] };
  }
  const span = chosenSpan(chosenSupports, file);
  const head = span === null ? null : chosenSupports?.head;
  const supports = [head, atSupport].flatMap((index) => index ?? []);
  const handles = [
    ...handlesOf(scene, trackId, track),
    // The keyboard finds one of them even while none is chosen or pointed at.
    ...supportHandles(file, track, supports.length > 0 ? supports : [0]),
  ];
  const all = span === null ? [] : Array.from({ length: span.to - span.from + 1 }, (_, k) => span.from + k);
  const posts = supportHandles(file, track, all).map(({ place: [x, y, z] }): Vec3 => [x, y, z]);
  return { trackId, track, handles, lines: null, posts };
}
