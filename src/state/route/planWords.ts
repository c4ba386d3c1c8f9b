import { placedSupports, type Scene } from '../../scene/index.ts';
import { type RoomHandle, roomRemarks, roomSubject, roomWords } from '../room/hand/index.ts';
import type { SessionState } from '../types.ts';
import { placeWords } from '../words.ts';
import { chosenSpan } from './chosenSupports.ts';
import type { DrawnPlan } from './drawnPlan.ts';
import type { Handle } from './handles.ts';
import { handWords } from './handWords.ts';
import { supportOffWords, supportOfKey } from './supportHand.ts';
import type { RouteState } from './types.ts';

/** What is written at a hand. */
export interface PlanWords {
  /** Numbers, the one being set first. */
  readonly figures: readonly string[];
  /** What of the drawing will not go well there. */
  readonly remarks: readonly string[];
}

type Show = Pick<SessionState, 'lengthUnit' | 'gradeForm'>;

/** What a handle sets, in numbers, as the railway now is, and what is to be said of it. */
export function planWords(
  scene: Scene,
  { trackId, track }: DrawnPlan,
  handle: Handle,
  { chosenSupports }: Pick<RouteState, 'chosenSupports'>,
  show: Show,
): PlanWords {
  const subject = roomSubject(handle.key);
  if (subject !== null) {
    return {
      figures: roomWords(scene, handle as RoomHandle, show),
      remarks: roomRemarks(scene, show, subject).map(({ words }) => words),
    };
  }
  const index = supportOfKey(handle.key);
  if (index === null) return { figures: handWords(scene, trackId, track, handle, show), remarks: [] };
  const file = scene.tracks.find(({ id }) => id === trackId);
  const support = file && placedSupports(file)[index];
  if (file === undefined || support === undefined) return { figures: [], remarks: [] };
  const span = chosenSpan(chosenSupports, file);
  const together = span !== null && span.from <= index && index <= span.to ? span.to - span.from + 1 : 1;
  return {
    figures: [
      supportOffWords(support.offMm, show),
      `support ${index + 1} at ${placeWords(support.atMm / 1000, show)}`,
      ...(together > 1 ? [`${together} together`] : []),
    ],
    remarks: [],
  };
}
