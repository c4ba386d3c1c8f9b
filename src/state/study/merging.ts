import { type Address, changedScene, readAt, type Scene, type SceneChange, sceneChanges } from '../../scene/index.ts';
import { asBefore, changesOf, sceneOf, variantAt, withoutVariant, withVariants } from './variantEdits.ts';

/** A place that both sides of a merge changed, each to something else. */
export interface MergeConflict {
  readonly at: Address;
  /** What stands there where both began, in the variant that is merged, and in the railway that it is merged into; undefined: nothing. */
  readonly was: unknown;
  readonly merged: unknown;
  readonly into: unknown;
}

/** Whose value stays at a place that both sides changed. */
export type MergeSide = 'merged' | 'into';

interface Sides {
  /** Where both began: what the variant differs from. */
  readonly from: Scene;
  readonly merged: Scene;
  readonly into: Scene;
  readonly mine: readonly SceneChange[];
  readonly theirs: readonly SceneChange[];
}

/** Railways that a variant can be merged into: the railway itself (null) and every variant that does not come from it. */
export function mergeTargets(scene: Scene, id: string): (string | null)[] {
  const variants = scene.variants ?? [];
  const comesFrom = (one: string | undefined): boolean =>
    one !== undefined && (one === id || comesFrom(variants.find((other) => other.id === one)?.from));
  return [null, ...variants.flatMap((one) => (comesFrom(one.id) ? [] : [one.id]))];
}

/** The places that a variant and the railway it is to be merged into (null: the railway itself) both changed since the variant began, to something different. Throws RangeError where either leads nowhere. */
export function mergeConflicts(scene: Scene, id: string, into: string | null): MergeConflict[] {
  const sides = sidesOf(scene, id, into);
  return conflictsOf(sides).map((at) => ({
    at,
    was: readAt(sides.from, at),
    merged: readAt(sides.merged, at),
    into: readAt(sides.into, at),
  }));
}

/**
 * The scene with what a variant differs in made part of another railway, a variant or the railway itself (null), and the variant gone. Every other variant
 * still means what it meant; what the railway itself was becomes one. Throws RangeError, naming the place, where both sides changed it and `sides` does not say whose value stays.
 */
export function merged(
  scene: Scene,
  id: string,
  into: string | null,
  sides: ReadonlyMap<Address, MergeSide> = new Map(),
): Scene {
  const all = sidesOf(scene, id, into);
  const conflicts = conflictsOf(all);
  const open = conflicts.find((at) => !sides.has(at));
  if (open !== undefined) throw new RangeError(`Both sides changed ${open}: say whose value stays.`);
  const free = all.mine.filter(({ at }) => !conflicts.some((key) => lies(at, key)));
  const settled = conflicts.flatMap((at): SceneChange[] =>
    sides.get(at) === 'merged' ? [changeTo(at, readAt(all.merged, at))] : [],
  );
  const made = changedScene(all.into, [...free, ...settled]);
  const without = withoutVariant(scene, id);
  if (into === null) return asBefore(without, made);
  const target = variantAt(without, into);
  const result = withVariants(
    without,
    (without.variants ?? []).map((one) => {
      if (one.id === into) return { ...one, changes: sceneChanges(sceneOf(scene, target.from ?? null), made) };
      if (one.from !== into) return one;
      // What else comes from the target comes from where the target began, so that it can be merged in its turn.
      const { from: _target, ...rest } = one;
      const changes = [...target.changes, ...one.changes];
      return target.from === undefined ? { ...rest, changes } : { ...rest, from: target.from, changes };
    }),
  );
  // Two sides that are each sound can come to a railway that cannot be laid: then nothing is merged.
  sceneOf(result, into);
  return result;
}

function sidesOf(scene: Scene, id: string, into: string | null): Sides {
  const own = variantAt(scene, id);
  if (!mergeTargets(scene, id).includes(into)) {
    throw new RangeError('A variant cannot be merged into one that comes from it.');
  }
  const from = sceneOf(scene, own.from ?? null);
  const [mine, target] = [sceneOf(scene, id), sceneOf(scene, into)];
  return { from, merged: mine, into: target, mine: changesOf(from, mine), theirs: changesOf(from, target) };
}

/** Addresses at which the sides differ from each other and both from where they began: the outermost, where one lies in another. */
function conflictsOf({ merged: one, into: other, mine, theirs }: Sides): Address[] {
  const keys = mine.flatMap(({ at }) =>
    theirs.flatMap((their) => {
      if (!(lies(at, their.at) || lies(their.at, at))) return [];
      const key = at.length <= their.at.length ? at : their.at;
      return JSON.stringify(readAt(one, key)) === JSON.stringify(readAt(other, key)) ? [] : [key];
    }),
  );
  const each = [...new Set(keys)];
  return each.filter((key) => !each.some((outer) => outer !== key && lies(key, outer)));
}

/** Whether an address is another, or lies in what that holds. */
const lies = (at: Address, outer: Address): boolean => at === outer || at.startsWith(`${outer}/`);

const changeTo = (at: Address, value: unknown): SceneChange =>
  value === undefined ? { at } : { at, to: value as Exclude<SceneChange['to'], undefined> };
