import type { Scene } from '../schema/schema.ts';
import type { SceneElement, SceneTrack } from '../schema/trackSchema.ts';

/** The track of a scene with this id. Throws RangeError, naming those there are. */
export function trackOf(scene: Scene, trackId: string): SceneTrack {
  const track = scene.tracks.find(({ id }) => id === trackId);
  if (track !== undefined) return track;
  throw new RangeError(`There is no track "${trackId}"; there are ${scene.tracks.map(({ id }) => id).join(', ')}.`);
}

/** An element of a track by its index, from 0. Throws RangeError. */
export function elementOf(track: SceneTrack, index: number): SceneElement {
  const element = track.alignment[index];
  if (element !== undefined) return element;
  throw new RangeError(`${track.name} has ${track.alignment.length} elements; there is no number ${index + 1}.`);
}

/** What people call an element: its own name, else its kind and number. */
export const elementName = ({ alignment }: SceneTrack, index: number): string =>
  alignment[index]?.id ?? `${alignment[index]?.kind ?? 'element'} ${index + 1}`;
