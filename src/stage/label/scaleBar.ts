/** A scale bar: how long it is in the room (m) and on the screen (px). */
export interface ScaleBar {
  readonly length: number;
  readonly pixels: number;
}

/** Lengths a bar may have: one, two and five of every power of ten, in mm or in inches. */
const steps = [1, 2, 5] as const;
const metresPerInch = 0.0254;

/** The longest round length that fits into `room` px at a scale of `pixelsPerMetre`. */
export function scaleBar(pixelsPerMetre: number, room: number, unit: 'mm' | 'in'): ScaleBar {
  const one = unit === 'mm' ? 0.001 : metresPerInch;
  const most = room / pixelsPerMetre / one;
  const power = 10 ** Math.floor(Math.log10(most));
  const step = [...steps].reverse().find((candidate) => candidate * power <= most) ?? 1;
  const length = step * power * one;
  return { length, pixels: length * pixelsPerMetre };
}
