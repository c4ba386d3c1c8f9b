import type { MeasureText } from '../textWidth.ts';

/** The noun stands last in a vehicle's name: "Six-coupled tank engine" is a tank engine, and an engine. */
const shorter = (name: string): string => {
  const at = name.indexOf(' ');
  if (at < 0) return name;
  const rest = name.slice(at + 1);
  // A number alone is no name.
  return /\p{L}/u.test(rest) ? rest : name;
};

/**
 * The names of the two ends of a joint so short that they fit into `room` px in a font, the longer one giving way word by word from
 * its front; null where even single words do not fit.
 */
export function fitNames(
  names: readonly [leading: string, trailing: string],
  room: number,
  font: string,
  measure: MeasureText,
): readonly [string, string] | null {
  let [leading, trailing] = names;
  while (measure(`${leading}–${trailing}`, font) > room) {
    const [a, b] = [shorter(leading), shorter(trailing)];
    if (a === leading && b === trailing) return null;
    const first = b === trailing || (a !== leading && measure(leading, font) >= measure(trailing, font));
    if (first) leading = a;
    else trailing = b;
  }
  return [leading, trailing];
}
