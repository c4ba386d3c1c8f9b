import { parseScene } from '../scene/index.ts';
import type { BundledScene } from '../ui/index.ts';

type Files = Readonly<Record<string, unknown>>;

const railways: Files = import.meta.glob('../../scenes/*.json', { eager: true, import: 'default' });
const oneRiskEach: Files = import.meta.glob('../../scenes/risks/*.json', { eager: true, import: 'default' });

/**
 * The scenes that come with the program, in the order of their file names, then one small scene for each risk. Each is read when it
 * is first looked at: the first verdict does not wait for the others. Throws on one that is not valid, which the tests
 * of the scenes rule out.
 */
export const bundledScenes: readonly BundledScene[] = [
  ...entriesOf(railways),
  ...entriesOf(oneRiskEach).map((entry) => Object.assign(entry, { group: 'One small railway for each risk' })),
];

function entriesOf(files: Files): BundledScene[] {
  return Object.keys(files)
    .sort()
    .map((path) => {
      const id = path.slice(path.lastIndexOf('/') + 1, -'.json'.length);
      let read: BundledScene['scene'] | null = null;
      return {
        id,
        get scene() {
          read ??= readScene(id, files[path]);
          return read;
        },
      };
    });
}

function readScene(id: string, file: unknown): BundledScene['scene'] {
  const parsed = parseScene(file);
  if (parsed.ok) return parsed.scene;
  throw new Error(`The bundled scene ${id} is not valid: ${JSON.stringify(parsed.problems)}`);
}
