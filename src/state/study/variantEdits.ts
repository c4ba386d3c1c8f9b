import {
  changedScene,
  newId,
  type Scene,
  type SceneChange,
  type SceneVariant,
  sceneChanges,
  variantScene,
} from '../../scene/index.ts';

/** A scene without its variants: what variants differ in. */
export function bare(scene: Scene): Scene {
  const { variants: _variants, ...rest } = scene;
  return rest;
}

/** The railway that a study starts from: the scene as it is (null), or one of its variants. Throws RangeError where that leads nowhere. */
export function sceneOf(scene: Scene, variantId: string | null): Scene {
  if (variantId === null) return bare(scene);
  const made = variantScene(scene, variantId);
  if (!made.ok) throw new RangeError(made.problems[0].found);
  return bare(made.scene);
}

/** The scene with one more variant, under an id of its own, that differs from the scene or from another variant. Throws RangeError when its changes lead nowhere. */
export function withVariant(
  scene: Scene,
  name: string,
  from: string | null,
  changes: readonly SceneChange[],
): { readonly scene: Scene; readonly id: string } {
  changedScene(sceneOf(scene, from), changes);
  const id = newId(scene.variants ?? [], name, 'variant');
  const variant = { id, name: name.slice(0, mostName), ...(from === null ? {} : { from }), changes: [...changes] };
  return { scene: { ...scene, variants: [...(scene.variants ?? []), variant] }, id };
}

/** Longest name the format takes. */
const mostName = 120;

/** The scene with a variant that is another railway, as what that one differs in from where it began. */
export const withRailway = (scene: Scene, name: string, from: string | null, other: Scene) =>
  withVariant(scene, name, from, sceneChanges(sceneOf(scene, from), bare(other)));

/** The scene without a variant; those that come from it come from its parent then, with its changes made their own. */
export function withoutVariant(scene: Scene, id: string): Scene {
  const gone = variantAt(scene, id);
  const variants = (scene.variants ?? []).flatMap((one) => {
    if (one.id === id) return [];
    if (one.from !== id) return [one];
    const { from: _gone, ...rest } = one;
    const changes = [...gone.changes, ...one.changes];
    return [gone.from === undefined ? { ...rest, changes } : { ...rest, from: gone.from, changes }];
  });
  return withVariants(scene, variants);
}

/** The scene as a variant has it; what it was becomes a variant, and every other variant still means what it meant. */
export function adopted(scene: Scene, id: string): Scene {
  const fresh = sceneOf(scene, id);
  // What came from the variant comes from the railway now; what came from the railway, from what that was.
  const stays: SceneVariant[] = [];
  const others = (scene.variants ?? []).flatMap((one): SceneVariant[] => {
    if (one.id === id) return [];
    if (one.from !== id) return [one];
    const { from: _now, ...rest } = one;
    stays.push(rest);
    return [rest];
  });
  return asBefore(withVariants(scene, others), fresh, stays);
}

/** Another railway in place of the scene's own. What that was becomes a variant, and what came from it comes from that one, those left out excepted. */
export function asBefore(scene: Scene, fresh: Scene, except: readonly SceneVariant[] = []): Scene {
  const { scene: kept, id } = withRailway(withVariants(fresh, scene.variants ?? []), 'As it was before', null, scene);
  const variants = (kept.variants ?? []).map((one) =>
    one.from === undefined && one.id !== id && !except.includes(one) ? { ...one, from: id } : one,
  );
  return withVariants(kept, variants);
}

/** What a railway differs from another in, variants apart. */
export const changesOf = (from: Scene, to: Scene): SceneChange[] => sceneChanges(bare(from), bare(to));

export function variantAt(scene: Scene, id: string): SceneVariant {
  const found = scene.variants?.find((one) => one.id === id);
  if (found === undefined) throw new RangeError('That variant is not there any more.');
  return found;
}

export const withVariants = (scene: Scene, variants: readonly SceneVariant[]): Scene =>
  variants.length === 0 ? bare(scene) : { ...scene, variants: [...variants] };
