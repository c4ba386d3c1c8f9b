import type { Json } from './address.ts';
import { changedScene, type SceneChange } from './changes.ts';
import { type ParsedScene, parseScene } from './parse.ts';
import type { Scene } from './schema/schema.ts';
import type { SceneVariant } from './schema/variantSchema.ts';

/**
 * The scene as one of its variants has it, checked as a file is; its own list of variants stays with it. A variant that leads nowhere
 * comes back as a problem that names it.
 */
export function variantScene(scene: Scene, id: string): ParsedScene {
  const chain = ancestry(scene, id);
  if (chain.length === 0) return refusal(id, 'no such variant', (scene.variants ?? []).map((one) => one.id).join(', '));
  try {
    return parseScene(changedScene(scene, chain.flatMap(changesOf)));
  } catch (error) {
    if (error instanceof RangeError) return refusal(id, error.message, 'an address that the scene has');
    throw error;
  }
}

const changesOf = ({ changes }: SceneVariant): SceneChange[] =>
  changes.map(({ at, to }) => (to === undefined ? { at } : { at, to: to as Json }));

/** A variant and those that it differs from, the oldest first; nothing when it is not there. Stops where it would go in circles. */
function ancestry(scene: Scene, id: string): SceneVariant[] {
  const chain: SceneVariant[] = [];
  let next: string | undefined = id;
  while (next !== undefined) {
    const one: SceneVariant | undefined = (scene.variants ?? []).find((entry) => entry.id === next);
    if (one === undefined || chain.includes(one)) break;
    chain.unshift(one);
    next = one.from;
  }
  return chain;
}

const refusal = (id: string, found: string, allowed: string): ParsedScene => ({
  ok: false,
  problems: [{ path: `variants "${id}"`, found, allowed, example: '' }],
});
