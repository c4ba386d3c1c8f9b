import { isRecord } from './record.ts';

/**
 * An address names one value of a scene by the way to it: keys of the file, an item of a list by its id or, where it has
 * none, by its number from 1. "tracks/gill-line/alignment/mouth/lengthMm", "tracks/gill-line/profile/2/gradePercent",
 * "tracks/gill-line/supports/off/38/byMm" (support 38 of a row of supports at even distances).
 */
export type Address = string;

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

export type { Json };

/** What an item of a list is called in an address: its id, the number of its support, else its place counted from 1. */
export function itemName(item: unknown, index: number): string {
  if (isRecord(item)) {
    if (typeof item.id === 'string') return item.id;
    if (typeof item.support === 'number') return String(item.support);
  }
  return String(index + 1);
}

/** The value at an address, or undefined when the scene has none there. */
export function readAt(scene: unknown, address: Address): unknown {
  let value: unknown = scene;
  for (const step of address.split('/')) {
    if (Array.isArray(value)) value = value[itemIndex(value, step)];
    else if (isRecord(value) && Object.hasOwn(value, step)) value = value[step];
    else return undefined;
  }
  return value;
}

/**
 * The scene with another value at an address, or without the one there when `value` is undefined; the old scene is left as
 * it was. A field that was not there is added, and so is a support to a list of those that are off.
 *
 * The result is unchecked: give it to `parseScene`. Throws RangeError, naming the step that leads nowhere.
 */
export function withAt<S>(scene: S, address: Address, value: Json | undefined): S {
  return changed(scene, address.split('/'), value, []) as S;
}

function changed(holder: unknown, steps: readonly string[], value: Json | undefined, gone: readonly string[]): unknown {
  if (steps.length === 0) return value;
  const [step, ...rest] = steps;
  const way = [...gone, step];
  if (Array.isArray(holder)) {
    const index = itemIndex(holder, step);
    if (index >= 0) {
      if (rest.length === 0 && value === undefined) return holder.toSpliced(index, 1);
      return holder.with(index, changed(holder[index], rest, value, way));
    }
    if (gone.at(-1) === 'off' && /^\d+$/.test(step)) {
      const added = changed({ support: Number(step) }, rest, value, way);
      return [...holder, added].sort((a, b) => Number(a.support) - Number(b.support));
    }
    throw new RangeError(`"${way.join('/')}" leads nowhere: there ${areItems(holder)}.`);
  }
  if (isRecord(holder)) {
    if (Object.hasOwn(holder, step) || rest.length === 0) {
      const next = changed(holder[step], rest, value, way);
      if (next !== undefined) return { ...holder, [step]: next };
      const { [step]: _gone, ...others } = holder;
      return others;
    }
    // A whole list or record can be missing because everything in it is as usual.
    if (step === 'off') return { ...holder, off: changed([], rest, value, way) };
    if (step === 'headHeightOffMm' || step === 'forces') return { ...holder, [step]: changed({}, rest, value, way) };
    throw new RangeError(`"${way.join('/')}" leads nowhere: there are ${Object.keys(holder).join(', ')}.`);
  }
  throw new RangeError(`"${way.join('/')}" leads nowhere: "${gone.join('/')}" has no parts.`);
}

/** Index of the item that a step of an address names, -1 when none is. */
function itemIndex(list: readonly unknown[], step: string): number {
  const byName = list.findIndex((item, index) => itemName(item, index) === step);
  if (byName >= 0) return byName;
  // An item that has an id also answers to its number, so that a person may count.
  const number = /^\d+$/.test(step) ? Number(step) : 0;
  return number >= 1 && number <= list.length && !hasSupports(list) ? number - 1 : -1;
}

const hasSupports = (list: readonly unknown[]): boolean =>
  list.some((item) => isRecord(item) && typeof item.support === 'number');

const areItems = (list: readonly unknown[]): string =>
  list.length === 0 ? 'is nothing' : `are ${list.map(itemName).join(', ')}`;
