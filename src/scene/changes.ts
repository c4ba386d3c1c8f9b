import { type Address, itemName, type Json, withAt } from './address.ts';
import { isRecord } from './record.ts';
import type { Scene } from './schema/schema.ts';

/** One difference between two scenes: what stands at an address in the second; absent: it is not there any more. */
export interface SceneChange {
  readonly at: Address;
  readonly to?: Json;
}

/** A scene with changes made one after the other. Unchecked, like `withAt`, and throws like it. */
export const changedScene = (scene: Scene, changes: readonly SceneChange[]): Scene =>
  changes.reduce((sofar, { at, to }) => withAt(sofar, at, to), scene);

/**
 * The differences that make `before` into `after`, as few and as deep as the formats allow: a list is compared item by item
 * while its items keep their names and order, and is replaced as a whole otherwise.
 */
export function sceneChanges(before: Scene, after: Scene): SceneChange[] {
  const changes: SceneChange[] = [];
  compare(before, after, [], changes);
  return changes;
}

function compare(before: unknown, after: unknown, way: readonly string[], out: SceneChange[]): void {
  if (Object.is(before, after)) return;
  if (Array.isArray(before) && Array.isArray(after) && sameItems(before, after)) {
    before.forEach((item, index) => {
      compare(item, after[index], [...way, itemName(item, index)], out);
    });
  } else if (isRecord(before) && isRecord(after) && (way.length === 0 || sameKind(before, after))) {
    for (const key of new Set([...Object.keys(before), ...Object.keys(after)])) {
      if (!Object.hasOwn(after, key)) out.push({ at: [...way, key].join('/') });
      else if (!Object.hasOwn(before, key)) out.push({ at: [...way, key].join('/'), to: after[key] as Json });
      else compare(before[key], after[key], [...way, key], out);
    }
  } else out.push({ at: way.join('/'), to: after as Json });
}

/** Names decide, and each name may stand once only, else a change would find the wrong item. */
function sameItems(before: readonly unknown[], after: readonly unknown[]): boolean {
  if (before.length !== after.length) return false;
  const names = before.map(itemName);
  return new Set(names).size === names.length && names.every((name, index) => name === itemName(after[index], index));
}

/** An element that becomes another kind of element is a new one. */
const sameKind = (before: Record<string, unknown>, after: Record<string, unknown>): boolean =>
  before.kind === after.kind;
