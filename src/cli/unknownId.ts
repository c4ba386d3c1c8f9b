import { nearestWords } from '../scene/index.ts';
import { BadInput } from './exitCodes.ts';

/** Most ids that a message names. */
const mostNamed = 20;

/** An id that the scene does not have, with those that it has: the most alike first where they are many. */
export function unknownId(what: string, id: string, list: readonly { readonly id: string }[]): BadInput {
  const ids = list.map((one) => one.id);
  const shown = ids.length > mostNamed ? [...nearestWords(id, ids).slice(0, mostNamed), '…'] : ids;
  return new BadInput(`The scene has no ${what} "${id}". It has: ${shown.join(', ')}.`);
}
