import {
  parseScene,
  readAt,
  type Scene,
  type SceneElement,
  setEasement,
  setElement,
  withAt,
} from '../../scene/index.ts';
import type { Setting } from './types.ts';

export type Varied = { readonly ok: true; readonly scene: Scene } | { readonly ok: false; readonly reason: string };

/**
 * The scene with other values at some addresses, checked as a file is. An element of an alignment changes as a builder would lay it: an
 * easement takes its length from its two neighbours, and what stands further on moves along.
 */
export function vary(scene: Scene, settings: readonly Setting[]): Varied {
  let varied: Scene;
  try {
    varied = lay(scene, settings);
  } catch (error) {
    if (error instanceof RangeError) return { ok: false, reason: error.message };
    throw error;
  }
  const checked = parseScene(varied);
  if (checked.ok) return checked;
  const [{ path, found, allowed }] = checked.problems;
  return { ok: false, reason: `${path}: ${found}; allowed: ${allowed}` };
}

/** The same, not checked as a file is. Throws RangeError, in words, where it cannot be laid so. */
export const lay = (scene: Scene, settings: readonly Setting[]): Scene =>
  settings.reduce((sofar, setting) => laid(sofar, setting) ?? withAt(sofar, setting.at, setting.to), scene);

const elementAddress = /^(tracks\/([^/]+)\/alignment\/[^/]+)\/(lengthMm|radiusMm|angleDeg|turns|cantMm)$/;

/** The scene with a measure of an element of an alignment set; null when the address is something else. */
function laid(scene: Scene, { at, to }: Setting): Scene | null {
  const [, way, trackId, measure] = elementAddress.exec(at) ?? [];
  if (way === undefined || typeof to !== 'number') return null;
  const track = scene.tracks.find(({ id }) => id === trackId);
  const element = readAt(scene, way) as SceneElement | undefined;
  const index = element === undefined ? -1 : (track?.alignment.indexOf(element) ?? -1);
  if (track === undefined || element === undefined || index < 0) return null;
  if (element.kind === 'transition' && measure === 'lengthMm') return setEasement(scene, track.id, index, to);
  return setElement(scene, track.id, index, { [measure]: to });
}
