/** What values a hand is led to. 0 and null lead to nothing. */
export interface Snapping {
  /** Lengths, radii and coordinates to whole multiples of this, mm. */
  readonly lengthMm: number;
  /** Angles to whole multiples of this, degrees; new track this near to straight on is straight. */
  readonly angleDeg: number;
  /** Ends of other tracks nearer than this are taken, m. */
  readonly ends: number;
}

export const noSnapping: Snapping = { lengthMm: 0, angleDeg: 0, ends: 0 };

/** A value at the nearest whole multiple of `step`; itself when that is 0. */
export const toStep = (value: number, step: number): number => (step > 0 ? Math.round(value / step) * step : value);
