/**
 * Brings the many ways of writing a quantity to one spelling: typographic minus and primes, doubled apostrophes, fraction
 * characters, every kind of space, and the full stop after an abbreviation.
 */
export function plainSpelling(text: string): string {
  return text
    .replace(/[−–﹣－]/g, '-')
    .replace(/[′’‘ʹ´`]/g, "'")
    .replace(/[″”“„ʺ]|''/g, '"')
    .replace(/[¼-¾⅐-⅞]/g, (sign) => ` ${sign.normalize('NFKC')}`)
    .replace(/⁄/g, '/')
    .replace(/º|˚/g, '°')
    .replace(/([a-z])\.(?![\d.,])/gi, '$1')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Takes a leading sign off a text in plain spelling. */
export function splitSign(plain: string): { readonly sign: 1 | -1; readonly rest: string } {
  const first = plain[0];
  if (first !== '-' && first !== '+') return { sign: 1, rest: plain };
  return { sign: first === '-' ? -1 : 1, rest: plain.slice(1).trimStart() };
}
