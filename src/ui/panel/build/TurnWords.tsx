import type { TurnByTurn } from '../../../core/build/index.ts';
import { counted, lengthShown, useShow } from '../../show.ts';

/** How supports of helices stand over one another, and the blocks between turns. */
export function TurnWords({ helices }: { readonly helices: readonly TurnByTurn[] }) {
  const show = useShow();
  const words = (metres: number): string => lengthShown(metres, show).shown.join('\u2009');
  return helices.map(({ element, turn, perTurn, aside, inLine, blocks }) => (
    <p key={element} className="build-turn">
      <b>{words(turn)} a turn</b>, {perTurn.toFixed(2)} supports to it.{' '}
      {aside !== null &&
        (blocks.length > 0
          ? `They stand over one another within ${words(aside)}: rods can go right through. Blocks from turn to turn: ${blocks
              .map(({ height, count }) => `${count} of ${words(height)}`)
              .join(', ')}.`
          : `They do not stand over one another: ${words(aside)} aside at most. Every ${words(inLine)} (${counted(
              Math.round(turn / inLine),
              'support',
            )} to a turn) they would.`)}
    </p>
  ));
}
