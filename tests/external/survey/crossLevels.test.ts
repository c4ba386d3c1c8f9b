import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/math/index.ts';
import { acrossBelief, drawLeans, type LeanReading } from '../../../src/core/survey/acrossBelief.ts';

/** Places, priors and zeros of every kind: read once and often, with either level or one without a zero, one place shown to be off. */
function drawnCase(seed: number) {
  const random = seededRandom(seed);
  const priors = [0.016, 0.016, Number.POSITIVE_INFINITY, 0.016, 0.03].map((deviation) => deviation * deviation);
  const zeros = [0.004 * 0.004, 0.001 * 0.001];
  const places = priors.map((_, p): LeanReading[] =>
    Array.from({ length: 1 + ((p + seed) % 3) }, (_, k) => ({
      lean: 0.02 * random.normal(),
      variance: (0.0005 + 0.0005 * k) * (0.0005 + 0.0005 * k),
      zero: ((p + k + seed) % 3) - 1,
    })),
  );
  return { places, priors, zeros };
}

/** The same as one dense system over places and zeros, solved by ml-matrix: mean (AᵀA)⁻¹Aᵀb and covariance (AᵀA)⁻¹. */
function dense({ places, priors, zeros }: ReturnType<typeof drawnCase>) {
  const columns = places.length + zeros.length;
  const rows: number[][] = [];
  const right: number[] = [];
  const put = (entries: readonly (readonly [number, number])[], observed: number, variance: number) => {
    const row = new Array<number>(columns).fill(0);
    for (const [column, factor] of entries) row[column] = factor / Math.sqrt(variance);
    rows.push(row);
    right.push(observed / Math.sqrt(variance));
  };
  places.forEach((readings, p) => {
    if (Number.isFinite(priors[p])) put([[p, 1]], 0, priors[p]);
    for (const { lean, variance, zero } of readings) {
      put(
        zero < 0
          ? [[p, 1]]
          : [
              [p, 1],
              [places.length + zero, 1],
            ],
        lean,
        variance,
      );
    }
  });
  zeros.forEach((variance, i) => {
    put([[places.length + i, 1]], 0, variance);
  });
  const a = new Matrix(rows);
  const covariance = inverse(a.transpose().mmul(a));
  const mean = covariance.mmul(a.transpose()).mmul(Matrix.columnVector(right)).to1DArray();
  return { mean: mean.slice(0, places.length), covariance };
}

describe('what is believed across the deck, against dense least squares of ml-matrix', () => {
  it.each([1, 2, 3, 4, 5, 6])('mean and covariance, case %i', (seed) => {
    const one = drawnCase(seed);
    const { mean, own, shared } = acrossBelief(one.places, one.priors, one.zeros);
    const reference = dense(one);
    one.places.forEach((_, p) => {
      expect(mean[p]).toBeCloseTo(reference.mean[p], 10);
      one.places.forEach((_, q) => {
        const between = shared.reduce((sum, moved) => sum + moved[p] * moved[q], p === q ? own[p] * own[p] : 0);
        expect(between / reference.covariance.get(p, p)).toBeCloseTo(
          reference.covariance.get(p, q) / reference.covariance.get(p, p),
          6,
        );
      });
    });
  });

  it('draws scatter as the covariance says', () => {
    const one = drawnCase(2);
    const believed = acrossBelief(one.places, one.priors, one.zeros);
    const reference = dense(one);
    const count = 4000;
    const drawn = drawLeans(believed, count, 3);
    one.places.forEach((_, p) => {
      const squares = drawn.reduce((sum, line) => sum + (line[p] - believed.mean[p]) ** 2, 0);
      // The variance of 4000 draws has a relative deviation of √(2/4000) = 2.2 %.
      expect(squares / count / reference.covariance.get(p, p)).toBeGreaterThan(0.9);
      expect(squares / count / reference.covariance.get(p, p)).toBeLessThan(1.1);
    });
    expect(drawLeans(believed, 2, 3)).toEqual(drawn.slice(0, 2));
  });
});
