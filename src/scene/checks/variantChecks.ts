import type { Scene } from '../schema/schema.ts';
import type { Problem } from './problems.ts';
import { repeatedIds, unknownId } from './references.ts';

/**
 * What is wrong with a scene's variants among themselves. What their changes come to is looked at when one is asked for: the scene
 * itself stays usable while a variant is not.
 */
export function variantProblems({ variants = [] }: Scene): Problem[] {
  const ids = variants.map(({ id }) => id);
  return [
    ...repeatedIds('variants', variants),
    ...variants.flatMap(({ id, from }, index) => {
      if (from === undefined) return [];
      const path = `variants[${index}].from`;
      if (!ids.includes(from)) return [unknownId(path, from, ids)];
      const seen = new Set([id]);
      for (let next: string | undefined = from; next !== undefined; ) {
        if (seen.has(next)) {
          const allowed = 'a variant that does not itself come from this one';
          return [{ path, found: `"${from}", which leads back to itself`, allowed, example: '' }];
        }
        seen.add(next);
        const parent: string = next;
        next = variants.find((one) => one.id === parent)?.from;
      }
      return [];
    }),
  ];
}
