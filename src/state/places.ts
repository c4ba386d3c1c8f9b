import type { PlanElement } from '../core/track/types.ts';
import type { SessionState } from './types.ts';
import { placeWords } from './words.ts';

/** A place one can look for by name. */
export interface NamedPlace {
  readonly id: string;
  readonly name: string;
  readonly where: string;
  /** Track chainage, m. */
  readonly chainage: number;
}

const elementWords: Readonly<Record<PlanElement['kind'], string>> = {
  straight: 'Straight',
  arc: 'Arc',
  helix: 'Helix',
  transition: 'Easement',
};

/** The elements and supports of the track under the trial on show. */
export function placesOf(state: SessionState): NamedPlace[] {
  const { compiled, trial } = state;
  const track = trial && compiled?.tracks.get(trial.trackId);
  const file = trial && compiled?.scene.tracks.find(({ id }) => id === trial.trackId);
  if (!track || !file) return [];
  // A branch begins with what its turnout lays, before the elements of the file.
  const laid = track.spec.elements.length - file.alignment.length;
  let start = 0;
  const elements = track.spec.elements.map((element, index): NamedPlace => {
    const chainage = start;
    start += element.length;
    const id = file.alignment[index - laid]?.id;
    return {
      id: `element-${index}`,
      name: id ? `${elementWords[element.kind]} “${id}”` : elementWords[element.kind],
      where: `from ${placeWords(chainage, state)}`,
      chainage,
    };
  });
  const supports = (track.spec.profile.strip?.supports ?? []).map(
    ({ chainage }, index): NamedPlace => ({
      id: `support-${index}`,
      name: `Support ${index + 1}`,
      where: `at ${placeWords(chainage, state)}`,
      chainage,
    }),
  );
  return [...elements, ...supports];
}
