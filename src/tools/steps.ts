import { noSnapping, type Snapping, supportStepMm } from '../state/route/index.ts';
import type { SessionState } from '../state/types.ts';

type Unit = SessionState['lengthUnit'];

/** Steps that a hand is led to: a centimetre, or a quarter of an inch, mm; and degrees. */
const snapMm: Readonly<Record<Unit, number>> = { mm: 10, in: 25.4 / 4 };
const snapDeg = 5;

/** Ends of other tracks, walls and right angles are taken from this many px away. */
const endReach = 16;

/** What a hand is led to; nothing while it asks to be free. */
export const snappingFor = (unit: Unit, free: boolean, metresPerPixel: number): Snapping =>
  free ? noSnapping : { lengthMm: snapMm[unit], angleDeg: snapDeg, ends: endReach * metresPerPixel };

/** One press of an arrow key, and one with Shift, m: 1 and 10 mm, or a sixteenth and half an inch. */
export const nudgeSteps: Readonly<Record<Unit, readonly [fine: number, coarse: number]>> = {
  mm: [0.001, 0.01],
  in: [0.0254 / 16, 0.0254 / 2],
};

/** One press of an arrow key that bends new track or opens a door, and one with Shift, degrees. */
export const turnSteps: readonly [fine: number, coarse: number] = [1, 5];

/** One press of an arrow key at a support, and one with Shift, mm. */
export const raiseSteps: readonly [fine: number, coarse: number] = [supportStepMm, 10 * supportStepMm];

/** What a px up or down raises a support by, mm: far more than its picture moves. With Shift a tenth of it. */
export const raisePerPixel: readonly [usual: number, slow: number] = [0.05, 0.005];
