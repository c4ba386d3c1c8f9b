/** American scales for which a car weight is recommended. */
export type AmericanScale = 'O' | 'S' | 'HO' | 'TT' | 'N' | 'On3' | 'HOn3' | 'Sn3';

/** Initial weight and weight per inch of body length, oz. Source: NMRA RP-20.1. */
export const carWeightOz: Readonly<Record<AmericanScale, { readonly initial: number; readonly perInch: number }>> = {
  O: { initial: 5, perInch: 1 },
  S: { initial: 2, perInch: 0.5 },
  HO: { initial: 1, perInch: 0.5 },
  TT: { initial: 0.75, perInch: 0.375 },
  N: { initial: 0.5, perInch: 0.15 },
  On3: { initial: 1.5, perInch: 0.75 },
  HOn3: { initial: 0.75, perInch: 0.375 },
  Sn3: { initial: 1, perInch: 0.5 },
};

/** Avoirdupois ounce, kg, and inch, m: exact by definition. */
const ounce = 0.028349523125;
const inch = 0.0254;

/** Recommended total mass (kg) of a car of the given body length (m), car included. Source: NMRA RP-20.1. */
export function recommendedCarMass(scale: AmericanScale, bodyLength: number): number {
  const { initial, perInch } = carWeightOz[scale];
  return (initial + (perInch * bodyLength) / inch) * ounce;
}
