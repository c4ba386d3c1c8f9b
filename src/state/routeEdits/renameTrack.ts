import type { Scene } from '../../scene/index.ts';

/** The scene with one of its tracks called otherwise; its id, by which trials find it, stays. */
export function renameTrack(scene: Scene, trackId: string, name: string): Scene {
  const called = name.trim();
  if (called === '') throw new RangeError('A track needs a name.');
  return {
    ...scene,
    tracks: scene.tracks.map((track) => (track.id === trackId ? { ...track, name: called } : track)),
  };
}
