import { parseScene } from '../scene/index.ts';
import type { BundledScene } from '../ui/index.ts';

const files = import.meta.glob<unknown>('../../scenes/*.json', { eager: true, import: 'default' });

/** The scenes that come with the program, in the order of their file names. One that is not valid is left out and said so. */
export const bundledScenes: readonly BundledScene[] = Object.keys(files)
  .sort()
  .flatMap((path) => {
    const id = path.slice(path.lastIndexOf('/') + 1, -'.json'.length);
    const parsed = parseScene(files[path]);
    if (parsed.ok) return [{ id, scene: parsed.scene }];
    console.error(`The bundled scene ${id} is not valid`, parsed.problems);
    return [];
  });
