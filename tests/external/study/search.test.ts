import { describe, expect, it } from 'vitest';
import {
  type Choice,
  divideBoxes,
  numbersAt,
  searchFront,
  settingsOf,
  type Weigh,
} from '../../../src/core/study/search/index.ts';

/**
 * Textbook functions whose least values are published. Branin and Hartmann: L. C. W. Dixon & G. P. Szegö, "Towards Global Optimisation 2", 1978;
 * constants, least values and places as tabulated at benchmarkfcns.info (Branin N. 1: 0.397887; Hartmann 3: -3.86278 at 0.114614, 0.555649,
 * 0.852547) and by A. Hedar, Test Functions for Unconstrained Global Optimization, Kyoto University (Hartmann 6: -3.32237 at 0.20169, 0.150011, 0.476874,
 * 0.275332, 0.311652, 0.6573). The matrix of Hartmann 6 is from memory; its published least value and place check it.
 */

function branin([x, y]: readonly number[]): number {
  const a = y - (5.1 / (4 * Math.PI ** 2)) * x * x + (5 / Math.PI) * x - 6;
  return a * a + 10 * (1 - 1 / (8 * Math.PI)) * Math.cos(x) + 10;
}

const hartmann =
  (a: readonly (readonly number[])[], p: readonly (readonly number[])[]) =>
  (x: readonly number[]): number =>
    -[1, 1.2, 3, 3.2].reduce(
      (sum, c, i) => sum + c * Math.exp(-a[i].reduce((far, one, j) => far + one * (x[j] - p[i][j]) ** 2, 0)),
      0,
    );

const hartmann3 = hartmann(
  [
    [3, 10, 30],
    [0.1, 10, 35],
    [3, 10, 30],
    [0.1, 10, 35],
  ],
  [
    [0.3689, 0.117, 0.2673],
    [0.4699, 0.4387, 0.747],
    [0.1091, 0.8732, 0.5547],
    [0.03815, 0.5743, 0.8828],
  ],
);

const hartmann6 = hartmann(
  [
    [10, 3, 17, 3.5, 1.7, 8],
    [0.05, 10, 17, 0.1, 8, 14],
    [3, 3.5, 1.7, 10, 17, 8],
    [17, 8, 0.05, 10, 0.1, 14],
  ],
  [
    [0.1312, 0.1696, 0.5569, 0.0124, 0.8283, 0.5886],
    [0.2329, 0.4135, 0.8307, 0.3736, 0.1004, 0.9991],
    [0.2348, 0.1451, 0.3522, 0.2883, 0.3047, 0.665],
    [0.4047, 0.8828, 0.8732, 0.5743, 0.1091, 0.0381],
  ],
);

const unit = (count: number): Choice[] => Array.from({ length: count }, () => ({ from: 0, to: 1, step: 1e-4 }));

describe('dividing boxes, then looking around, on textbook functions', () => {
  // The least on the lattice lies above the published one by less than half the curvature times half a step squared: far below 1e-4.
  it.each([
    [
      'Branin',
      [
        { from: -5, to: 10, step: 1e-3 },
        { from: 0, to: 15, step: 1e-3 },
      ],
      branin,
      0.397887,
      null,
      400,
    ],
    ['Hartmann 3', unit(3), hartmann3, -3.86278, [0.114614, 0.555649, 0.852547], 600],
    ['Hartmann 6', unit(6), hartmann6, -3.32237, [0.20169, 0.150011, 0.476874, 0.275332, 0.311652, 0.6573], 3000],
  ] as const)('%s', async (_name, choices, value, least, place, most) => {
    const settings = settingsOf(choices);
    let asked = 0;
    const weigh: Weigh = async (places) => {
      asked += places.length;
      return places.map((at) => ({ values: [value(numbersAt(choices, at))], missed: 0 }));
    };
    const never = (): boolean => false;
    const seen = await divideBoxes({ settings, value: 0, wish: 'least', probes: most / 2 }, weigh, never);
    const spec = { settings, wishes: ['least'], probes: 2 * most } as const;
    const { front, settled } = await searchFront(spec, seen, weigh, never);
    expect(settled).toBe(true);
    expect(asked).toBeLessThan(2 * most);
    const [best] = front;
    expect(Math.abs(best.worth.values[0] - least)).toBeLessThan(1e-4);
    const numbers = numbersAt(choices, best.at);
    for (const [k, x] of (place ?? []).entries()) expect(Math.abs(numbers[k] - x)).toBeLessThan(2e-3);
  });
});
