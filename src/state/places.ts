import type { PlanElement, Track } from '../core/track/types.ts';
import type { SceneTrack } from '../scene/index.ts';
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

/** The elements and supports under the trial on show, leg by leg where it runs over a route. */
export function placesOf(state: SessionState): NamedPlace[] {
  const { compiled, trial } = state;
  if (!compiled || !trial) return [];
  const whole = { trackId: trial.trackId, start: 0, from: 0, to: Number.POSITIVE_INFINITY };
  return (trial.legs ?? [whole]).flatMap((leg, index) => {
    const track = compiled.tracks.get(leg.trackId);
    const file = compiled.scene.tracks.find(({ id }) => id === leg.trackId);
    if (!track || !file) return [];
    const named = trial.legs === undefined ? '' : `, ${file.name}`;
    const key = trial.legs === undefined ? '' : `${index}-`;
    const [low, high] = [Math.min(leg.from, leg.to), Math.max(leg.from, leg.to)];
    return placesOn(track, file).flatMap(({ id, name, from, to = from }): NamedPlace[] => {
      if (to < low || from > high) return [];
      // An element that the train enters half-way is looked at where it enters.
      const first = leg.to > leg.from ? Math.max(from, low) : Math.min(to, high);
      const chainage = leg.start + Math.abs(first - leg.from);
      const where = `${to === from ? 'at' : 'from'} ${placeWords(chainage, state)}`;
      return [{ id: key + id, name: name + named, where, chainage }];
    });
  });
}

/** A place of one track, between two of its chainages where it is an element, m. */
interface OwnPlace {
  readonly id: string;
  readonly name: string;
  readonly from: number;
  readonly to?: number;
}

function placesOn(track: Track, file: SceneTrack): OwnPlace[] {
  // A branch begins with what its turnout lays, before the elements of the file.
  const laid = track.spec.elements.length - file.alignment.length;
  let start = 0;
  const elements = track.spec.elements.map((element, index): OwnPlace => {
    const from = start;
    start += element.length;
    const id = file.alignment[index - laid]?.id;
    const kind = elementWords[element.kind];
    return { id: `element-${index}`, name: id ? `${kind} “${id}”` : kind, from, to: start };
  });
  const supports = (track.spec.profile.strip?.supports ?? []).flatMap(({ chainage, number: listed }, index) => {
    const number = listed ?? index;
    return number < 0 ? [] : [{ id: `support-${number}`, name: `Support ${number + 1}`, from: chainage }];
  });
  return [...elements, ...supports];
}
