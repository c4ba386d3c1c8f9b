import {
  elementCurvatures,
  elementLengthMm,
  parseScene,
  readAt,
  type Scene,
  type SceneElement,
  withAt,
} from '../../scene/index.ts';
import { shortened } from '../cures/alignment.ts';
import { tidy } from '../cures/parts.ts';
import type { Setting } from './types.ts';

export type Varied = { readonly ok: true; readonly scene: Scene } | { readonly ok: false; readonly reason: string };

/**
 * The scene with other values at some addresses, checked as a file is. An easement made longer or shorter takes from or gives to
 * its two neighbours alike, so that the line beyond keeps its heading and its length, as a builder would lay it.
 */
export function vary(scene: Scene, settings: readonly Setting[]): Varied {
  let sofar = scene;
  try {
    for (const setting of settings) sofar = easementLaid(sofar, setting) ?? withAt(sofar, setting.at, setting.to);
  } catch (error) {
    if (error instanceof RangeError) return { ok: false, reason: error.message };
    throw error;
  }
  const checked = parseScene(sofar);
  if (checked.ok) return checked;
  const [{ path, found, allowed }] = checked.problems;
  return { ok: false, reason: `${path}: ${found}; allowed: ${allowed}` };
}

const easementAddress = /^tracks\/([^/]+)\/alignment\/([^/]+)\/lengthMm$/;

/** The scene with the length of a transition set and its neighbours fitted; null when the address is something else. */
function easementLaid(scene: Scene, { at, to }: Setting): Scene | null {
  const match = easementAddress.exec(at);
  if (match === null || typeof to !== 'number') return null;
  const track = scene.tracks.find(({ id }) => id === match[1]);
  const element = readAt(scene, at.slice(0, -'/lengthMm'.length)) as SceneElement;
  const index = track?.alignment.indexOf(element) ?? -1;
  if (track === undefined || index < 1 || index === track.alignment.length - 1) return null;
  const lying = track.alignment[index];
  if (lying.kind !== 'transition') return null;
  const [from, end] = elementCurvatures(track, index);
  // What a clothoid turns is the mean of its curvatures times its length: half of it is what each neighbour would turn.
  if (from === end) return null;
  const half = (to - elementLengthMm(lying)) / 2;
  const before = shortened(track.alignment[index - 1], half);
  const after = shortened(track.alignment[index + 1], half);
  if (before === null || after === null) {
    throw new RangeError(`There is no room for ${tidy(to)} mm at "${at}": a neighbour is not long enough.`);
  }
  return withAt(scene, `tracks/${track.id}/alignment`, [
    ...track.alignment.slice(0, index - 1),
    before,
    { ...lying, lengthMm: to },
    after,
    ...track.alignment.slice(index + 2),
  ]);
}
