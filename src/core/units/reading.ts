/** What became of a text that a builder typed. */
export type Reading =
  | {
      readonly ok: true;
      /** SI: m, kg, N, rad, m/s; a grade is rise over plan distance. */
      readonly value: number;
      /** What was understood, in words, with the same amount in another unit. */
      readonly read: string;
    }
  | {
      readonly ok: false;
      /** What was read, why it was not taken, and what is, with examples. */
      readonly message: string;
    };

/** The least and the most a field takes, SI, both allowed themselves. */
export interface Bounds {
  readonly least?: number;
  readonly most?: number;
}

/** What a refusal says of the field: `a length`, and texts that would be taken. */
export interface Kind {
  readonly called: string;
  readonly examples: string;
}

/** Longest text looked at, characters: far beyond any quantity, short enough to quote and to scan at once. */
export const longestText = 80;

const longestQuote = 40;

export function refuse(text: string, why: string, kind: Kind): Reading {
  const plain = text.trim();
  const quoted = plain.length > longestQuote ? `${plain.slice(0, longestQuote)}…` : plain;
  return { ok: false, message: `“${quoted}”: ${why}. Write ${kind.called} like ${kind.examples}.` };
}

/** A quantity understood: SI, as written in plain spelling, and the same in another unit. */
export interface Understood {
  readonly value: number;
  readonly written: string;
  readonly other: string;
}

/** Accepts a quantity if it is within the bounds; `show` writes a bound in the field's own unit. */
export function accept(
  text: string,
  { value, written, other }: Understood,
  bounds: Bounds,
  kind: Kind,
  show: (value: number) => string,
): Reading {
  if (!Number.isFinite(value)) return refuse(text, 'the number is too large', kind);
  if (bounds.least !== undefined && value < bounds.least) {
    return refuse(text, `${written} is below the least allowed here, ${show(bounds.least)}`, kind);
  }
  if (bounds.most !== undefined && value > bounds.most) {
    return refuse(text, `${written} is above the most allowed here, ${show(bounds.most)}`, kind);
  }
  return { ok: true, value: value === 0 ? 0 : value, read: other === '' ? written : `${written} (${other})` };
}
