import type { Scene } from '../../../../src/scene/index.ts';
import type { RouteQuestion } from '../../../../src/sim/study/route/index.ts';
import { sample, sceneOf } from '../../../scene/sample.ts';

/** Straight, quarter turn, straight, quarter turn, straight: both turns left, 400 mm; one even grade from end to end. Ends 400 mm west and 1400 mm north of where it begins. */
export const loopScene = (): Scene =>
  sceneOf({
    ...sample,
    tracks: [
      {
        id: 'line',
        name: 'Line',
        start: { xMm: 1000, yMm: 500, headingDeg: 0 },
        alignment: [
          { kind: 'straight', id: 'in', lengthMm: 800 },
          { kind: 'arc', id: 'first', radiusMm: 400, turn: 'left', angleDeg: 90 },
          { kind: 'straight', id: 'up', lengthMm: 600 },
          { kind: 'arc', id: 'second', radiusMm: 400, turn: 'left', angleDeg: 90 },
          { kind: 'straight', id: 'out', lengthMm: 1200 },
        ],
        profile: [
          { atMm: 0, heightMm: 0 },
          { at: { endOf: 'track' }, heightMm: 60 },
        ],
      },
    ],
    trials: [{ ...sample.trials[0], startMm: 700, finishMm: 3300, orders: [{ atS: 0, setting: 0.6 }] }],
  });

export const way = 'tracks/line/alignment';

/** The HO rule 32/R(in) per cent as a length, m. */
const curveLength = 0.008128;

export const loopQuestion = (more: Partial<RouteQuestion> = {}): RouteQuestion => ({
  scene: loopScene(),
  trackId: 'line',
  numbers: [
    { at: `${way}/first/radiusMm`, from: 300, to: 690, step: 10 },
    { at: `${way}/second/radiusMm`, from: 300, to: 690, step: 10 },
  ],
  aim: 'grade',
  endKept: true,
  solved: [`${way}/up/lengthMm`, `${way}/out/lengthMm`],
  heights: null,
  limits: { radius: null, verticalRadius: null, steepest: null, headroom: null, room: null },
  grade: { curveLength, window: 0, towards: 'both' },
  trialIds: [],
  gauge: 'all',
  probes: 200,
  ...more,
});

/**
 * By hand, m: with radii a and b the end stays where the straight between is 1.4 - a - b and the last one 1.2 + a - b; the grade is even, and the tighter turn adds
 * to it all along that turn.
 */
export function byHand(a: number, b: number): { between: number; last: number; ruling: number; across: number } {
  const between = 1.4 - a - b;
  const last = 1.2 + a - b;
  const length = 0.8 + (Math.PI / 2) * (a + b) + between + last;
  // From the end, 0.4 m west of the start, to the crown of the first turn.
  return { between, last, ruling: 0.06 / length + curveLength / Math.min(a, b), across: 0.4 + 0.8 + a };
}
