import { parseScene, type Scene, serialiseScene } from '../scene/index.ts';
import type { KeepOutcome, KeepPort, KeptScene } from './ports.ts';

/** The railway in a kept text; null when it can no longer be read. */
export function sceneOfKept({ text }: KeptScene): Scene | null {
  const parsed = parseScene(text);
  return parsed.ok ? parsed.scene : null;
}

/** Keeps a copy of a railway beside it, called so. */
export async function copyKept(kept: KeptScene, port: Pick<KeepPort, 'keep'>): Promise<KeepOutcome | null> {
  const scene = sceneOfKept(kept);
  if (scene === null) return null;
  const name = `${scene.name}, copy`;
  return port.keep({ ...kept, id: crypto.randomUUID(), name, text: serialiseScene({ ...scene, name }) });
}
