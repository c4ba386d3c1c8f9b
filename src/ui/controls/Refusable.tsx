import { useState } from 'react';

export interface Act {
  readonly words: string;
  /** Said to a screen reader behind the words where they are too short alone. */
  readonly spoken?: string;
  /** Does it; gives why it cannot be done, or null. */
  readonly act: () => string | null;
}

/** Who speaks to a machine says what is seen: the words stay in the name. */
const nameOf = (words: string, spoken: string): string => (spoken.includes(words) ? spoken : `${words}: ${spoken}`);

/** A line of small buttons, and under it why the last of them could not do its work. */
export function Refusable({ acts }: { readonly acts: readonly Act[] }) {
  const [why, setWhy] = useState<string | null>(null);
  return (
    <div className="acts">
      {acts.map(({ words, spoken, act }) => (
        <button key={words} type="button" aria-label={spoken && nameOf(words, spoken)} onClick={() => setWhy(act())}>
          {words}
        </button>
      ))}
      {why !== null && (
        <span className="why" role="alert">
          {why}
        </span>
      )}
    </div>
  );
}
