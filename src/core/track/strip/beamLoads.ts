import type { StripLoad, StripSection } from '../types.ts';

/** A section starts at a node named in the same file; chainages that differ by rounding alone are one, m. */
const SAME_PLACE = 1e-6;

/** What the loads of one span do to it as if it were simply supported at its ends; all 0 for a weightless strip. */
export interface SpanLoads {
  readonly length: number;
  /** Stiffness of the first section over this span's. */
  readonly softness: number;
  /** Weight with creep over stiffness, 1/m³: -y⁗. */
  readonly sag: number;
  /** Point loads by distance from the start of the span, m, and force over stiffness, 1/m². */
  readonly points: readonly { readonly at: number; readonly press: number }[];
  /** dy/ds at the ends. */
  readonly startSlope: number;
  readonly endSlope: number;
  /** Shear at the ends over the stiffness of the first section, 1/m². */
  readonly startShear: number;
  readonly endShear: number;
  /** y‴ at the start from the point loads alone, 1/m². */
  readonly pointShear: number;
}

/**
 * The loads of the span `from` to `to`, m. A beam table's simply supported cases: under a uniform load the end slopes are
 * -+w·l³/24EI; under a point load P at a and b from the ends -P·b(l²-b²)/6lEI and +P·a(l²-a²)/6lEI (Roark, beams with
 * simple ends; from memory, and checked against printed tables).
 */
export function spanLoads(
  from: number,
  to: number,
  sections: readonly StripSection[],
  loads: readonly StripLoad[],
  creep: number,
): SpanLoads {
  const length = to - from;
  let section = sections[0];
  for (const next of sections) if (next.from <= from + SAME_PLACE) section = next;
  if (section === undefined) {
    const [startSlope, endSlope, startShear, endShear] = [0, 0, 0, 0];
    return { length, softness: 1, sag: 0, points: [], startSlope, endSlope, startShear, endShear, pointShear: 0 };
  }
  const { stiffness } = section;
  const softness = sections[0].stiffness / stiffness;
  const sag = (section.weight * (1 + creep)) / stiffness;
  // A load on a support presses on nothing; one at a hinge is carried by the span before it.
  const points = loads
    .filter((load) => load.chainage > from && load.chainage <= to)
    .map((load) => ({ at: load.chainage - from, press: load.force / stiffness }))
    .sort((p, q) => p.at - q.at);
  let startSlope = (-sag * length * length * length) / 24;
  let endSlope = -startSlope;
  let pointShear = 0;
  let pressed = 0;
  for (const { at: a, press } of points) {
    const b = length - a;
    startSlope -= (press * b * (length * length - b * b)) / (6 * length);
    endSlope += (press * a * (length * length - a * a)) / (6 * length);
    pointShear += (press * b) / length;
    pressed += press;
  }
  return {
    length,
    softness,
    sag,
    points,
    startSlope,
    endSlope,
    startShear: ((sag * length) / 2 + pointShear) / softness,
    endShear: (pointShear - pressed - (sag * length) / 2) / softness,
    pointShear,
  };
}
