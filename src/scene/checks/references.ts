import type { Problem } from './problems.ts';

/** A list of ids for a message: the first few, in the order of the file. */
export const idList = (ids: readonly string[]): string =>
  ids.length === 0
    ? 'nothing, there is none yet'
    : `one of ${ids
        .slice(0, 12)
        .map((id) => `"${id}"`)
        .join(', ')}`;

/** A reference that leads nowhere. */
export const unknownId = (path: string, found: string, ids: readonly string[]): Problem => ({
  path,
  found: `"${found}", which is not in this file`,
  allowed: idList(ids),
  example: JSON.stringify(ids[0] ?? ''),
});

/** Ids that stand twice in one list. */
export function repeatedIds(path: string, list: readonly { readonly id?: string }[]): Problem[] {
  const seen = new Set<string>();
  const problems: Problem[] = [];
  list.forEach((one, index) => {
    if (one.id === undefined) return;
    if (seen.has(one.id)) {
      problems.push({
        path: `${path}[${index}].id`,
        found: `"${one.id}" a second time`,
        allowed: 'a name that no other entry of the list has',
        example: JSON.stringify(`${one.id}-2`),
      });
    }
    seen.add(one.id);
  });
  return problems;
}
