import { useDesk, useSession } from '../context.tsx';

/** Whether the audience guesses before it is told. */
export function GuessSwitch() {
  const { actions } = useDesk();
  const guessFirst = useSession((state) => state.tour.guessFirst);
  return (
    <button
      type="button"
      aria-pressed={guessFirst}
      title={`${guessFirst ? 'Tell verdicts at once' : 'Let the audience guess first'} (G)`}
      onClick={() => actions.setGuessFirst(!guessFirst)}
    >
      Guess first
    </button>
  );
}
