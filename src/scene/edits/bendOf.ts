import type { SceneBend } from '../schema/trackSchema.ts';
import { tidy } from './tidy.ts';

/** Curvatures below this, 1/m, are straight: a radius of 100 km. */
const straightBelow = 1e-5;

/** A signed curvature, 1/m, as the format writes it. */
export const bendOf = (curvature: number): SceneBend =>
  Math.abs(curvature) < straightBelow
    ? 'straight'
    : { radiusMm: tidy(1000 / Math.abs(curvature)), turn: curvature > 0 ? 'left' : 'right' };
