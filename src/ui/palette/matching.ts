/** How well a text answers what was typed; 0 is not at all. Every word typed must be found, word beginnings count most. */
export function matchScore(text: string, typed: string): number {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return 1;
  const plain = text.toLowerCase();
  let score = 0;
  for (const word of words) {
    const at = plain.indexOf(word);
    if (at < 0) return 0;
    const begins = at === 0 || /[^\p{L}\p{N}]/u.test(plain[at - 1]);
    score += (begins ? 3 : 1) + (at === 0 ? 1 : 0) + word.length / plain.length;
  }
  return score;
}
