/** A name like `wish` that none of `taken` is: with a number behind it where need be. */
export function freeId(taken: readonly (string | undefined)[], wish: string): string {
  if (!taken.includes(wish)) return wish;
  for (let number = 2; ; number++) {
    const id = `${wish}-${number}`;
    if (!taken.includes(id)) return id;
  }
}

/** A short name out of what people call something, such as none of `others` has; `otherwise` where its letters give none. */
export function newId(others: readonly { readonly id: string }[], name: string, otherwise = 'line'): string {
  const letters = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, longest)
    .replace(/^-|-$/g, '');
  return freeId(
    others.map(({ id }) => id),
    letters === '' || letters === reserved ? otherwise : letters,
  );
}

/** Longest stem of a short name: with a number behind it, still below what the format takes. */
const longest = 50;

/** Means the whole of a track in places, so that nothing is named so. */
const reserved = 'track';
