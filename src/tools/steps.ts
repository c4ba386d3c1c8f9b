import { noSnapping, type Snapping } from '../state/route/index.ts';
import type { SessionState } from '../state/types.ts';

type Unit = SessionState['lengthUnit'];

/** Steps that a hand is led to: a centimetre, or a quarter of an inch, mm; and degrees. */
const snapMm: Readonly<Record<Unit, number>> = { mm: 10, in: 25.4 / 4 };
const snapDeg = 5;

/** Ends of other tracks are taken from this many px away. */
const endReach = 16;

/** What a hand is led to; nothing while it asks to be free. */
export const snappingFor = (unit: Unit, free: boolean, metresPerPixel: number): Snapping =>
  free ? noSnapping : { lengthMm: snapMm[unit], angleDeg: snapDeg, ends: endReach * metresPerPixel };

/** One press of an arrow key, and one with Shift, m: 1 and 10 mm, or a sixteenth and half an inch. */
export const nudgeSteps: Readonly<Record<Unit, readonly [fine: number, coarse: number]>> = {
  mm: [0.001, 0.01],
  in: [0.0254 / 16, 0.0254 / 2],
};

/** One press of an arrow key that bends new track, and one with Shift, degrees. */
export const turnSteps: readonly [fine: number, coarse: number] = [1, 5];
