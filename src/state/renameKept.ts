import { type Scene, serialiseScene } from '../scene/index.ts';
import { sceneOfKept } from './copyKept.ts';
import type { KeepOutcome, KeepPort, KeptScene } from './ports.ts';

/** The scene called otherwise. Throws RangeError in words for no name. */
export function renamedRailway(scene: Scene, name: string): Scene {
  const called = name.trim();
  if (called === '') throw new RangeError('A railway needs a name.');
  return { ...scene, name: called };
}

/** Keeps a railway under another name, as its newest state; null when it can no longer be read. The names of earlier states stay. */
export async function renameKept(
  kept: KeptScene,
  name: string,
  port: Pick<KeepPort, 'keep'>,
  at: number,
): Promise<KeepOutcome | null> {
  const scene = sceneOfKept(kept);
  if (scene === null) return null;
  const renamed = renamedRailway(scene, name);
  return port.keep({ ...kept, name: renamed.name, text: serialiseScene(renamed), at });
}
