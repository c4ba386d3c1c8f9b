/** Longest part of a word that is compared: a hostile one costs no more. */
const longest = 60;

/** Least number of letters to put in, take out or change (Levenshtein 1966), capitals counting as small letters. */
function editSteps(a: string, b: string): number {
  const [from, to] = [a.slice(0, longest).toLowerCase(), b.slice(0, longest).toLowerCase()];
  let row = Array.from({ length: to.length + 1 }, (_, j) => j);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      next.push(Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + (from[i - 1] === to[j - 1] ? 0 : 1)));
    }
    row = next;
  }
  return row[to.length];
}

/** The words of a list from the one most like `word` on; equals keep their order. */
export const nearestWords = (word: string, list: readonly string[]): readonly string[] =>
  list
    .map((one) => ({ one, steps: editSteps(word, one) }))
    .sort((a, b) => a.steps - b.steps)
    .map(({ one }) => one);
