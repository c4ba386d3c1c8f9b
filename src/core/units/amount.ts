/** A number as typed, or why it is not one. */
export type Amount =
  | { readonly ok: true; readonly value: number; readonly whole: boolean }
  | { readonly ok: false; readonly why: string };

const wrong = (why: string): Amount => ({ ok: false, why });

/**
 * Reads an unsigned number in plain spelling: `610`, `2.38`, `2,38`, `1/2`, `1 1/2`, `1-1/2`.
 *
 * One comma is a decimal comma. `1,500` is refused because it could be meant as fifteen hundred; `0,500` is clear.
 */
export function readAmount(text: string): Amount {
  const fraction = /^(?:(\d+)(?: ?- ?| ))?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (fraction) {
    const [, whole, top, bottom] = fraction;
    const over = Number(bottom);
    if (over === 0) return wrong(`${text} divides by nothing`);
    if (whole !== undefined && Number(top) >= over) {
      return wrong(`after the whole number ${whole} the fraction must be less than one, and ${top}/${bottom} is not`);
    }
    return { ok: true, value: (Number(whole ?? 0) * over + Number(top)) / over, whole: false };
  }
  if (/^[1-9]\d{0,2},\d{3}$/.test(text)) {
    return wrong(`${text} could be ${text.replace(',', '.')} or ${text.replace(',', '')}; write one of these`);
  }
  if (/^(\d+([.,]\d+)?|[.,]\d+)$/.test(text)) {
    return { ok: true, value: Number(text.replace(',', '.')), whole: /^\d+$/.test(text) };
  }
  if (/[.,]\d*[.,]/.test(text)) return wrong(`${text} has more than one decimal mark`);
  if (/[.,]$/.test(text)) return wrong(`the number ${text} is not finished`);
  return wrong(`${text} is not one number`);
}
