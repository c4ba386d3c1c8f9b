import { type StoreApi, useStore } from 'zustand';
import type { CameraName, SessionState } from '../../state/types.ts';
import { namedFinding } from '../view/subjects.ts';
import { labelWords, railwayWords } from './words.ts';

const standing: Readonly<Record<CameraName, string>> = {
  walk: 'seen from a little way off; arrow keys walk round it, plus and minus go nearer and further',
  eye: 'seen standing beside it; arrow keys walk round the table and lift the eyes',
  ride: 'seen from on the train; arrow keys turn the head',
  down: 'seen from straight above; arrow keys move over it',
  follow: 'with the train kept in the middle; arrow keys walk round it',
};

/** The picture in words, for those who do not see it. */
export function pictureWords(state: SessionState): string {
  const { scene, trial } = state;
  if (scene === null) return 'An empty stage: no railway is open.';
  const train = trial === null ? '' : ` ${trial.train.name}, ${trial.train.vehicles.length} vehicles, stands on it.`;
  const index = namedFinding(state);
  const finding = index === null ? undefined : state.result?.findings[index];
  const told = finding === undefined ? null : labelWords(state, finding);
  const named = told === null ? '' : ` ${told.head}: ${told.line}.`;
  return `${scene.name}, ${railwayWords(state)}, ${standing[state.camera]}.${train}${named}`;
}

export const useStageWords = (session: StoreApi<SessionState>): string => useStore(session, pictureWords);
