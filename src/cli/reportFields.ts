import { z } from 'zod';
import type { RiskUnit } from '../core/risks/types.ts';

// A word for every field, so that the schemas in docs/reference explain themselves.
export const number = (about: string) => z.number().meta({ description: about });
export const text = (about: string) => z.string().meta({ description: about });
export const whole = (about: string) => z.int().meta({ description: about });

/** How an amount of each unit is written: what ends its field's name, and how many of it go to one in SI. */
export const amountScales = {
  length: ['Mm', 1e3],
  angle: ['Deg', 180 / Math.PI],
  share: ['Share', 1],
  force: ['N', 1],
} as const satisfies Readonly<Record<RiskUnit, readonly [suffix: string, factor: number]>>;

/** A margin in the unit its risk has: exactly one of the four is there. `what` is what it is of. */
export const marginFields = (what: string) => ({
  marginMm: z.exactOptional(number(`${what}, mm; negative when it fails.`)),
  marginDeg: z.exactOptional(number('The same as an angle, degrees.')),
  marginShare: z.exactOptional(number('The same as a share of the limit; 1 is all of it.')),
  marginN: z.exactOptional(number('The same as a force, N.')),
});

/** Metres as the reports have them, mm; null for what has no bound. */
export const finiteMm = (metres: number): number | null => (Number.isFinite(metres) ? metres * 1e3 : null);
