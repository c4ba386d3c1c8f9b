import { thinSpace } from '../../core/units/index.ts';
import './measured.css';

/** A number with its unit, and what is written to it. */
const amount = new RegExp(`(\\S+(?:${thinSpace}\\S+)+)`);

/** Words in which a line never ends between a number and its unit. */
export function Measured({ words }: { readonly words: string }) {
  // With its one group the pattern leaves the amounts at the odd places.
  return words.split(amount).map((part, place) =>
    place % 2 === 1 ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: the parts of one text have no other name than their place
      <span key={place} className="amount">
        {part}
      </span>
    ) : (
      part
    ),
  );
}
