/** Sorts items into classes of equal ones; `of[i]` is item i's class. */
export function classesOf<T>(items: readonly T[], keyOf: (item: T) => T, same: (a: T, b: T) => boolean = Object.is) {
  const kinds: T[] = [];
  const of = items.map((item) => {
    const key = keyOf(item);
    const known = kinds.findIndex((kind) => same(kind, key));
    return known >= 0 ? known : kinds.push(key) - 1;
  });
  return { kinds, of };
}
