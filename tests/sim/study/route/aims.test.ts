import { describe, expect, it } from 'vitest';
import { unbeaten } from '../../../../src/core/study/index.ts';
import { closestCall, probeScene } from '../../../../src/sim/study/index.ts';
import { searchRoute } from '../../../../src/sim/study/route/index.ts';
import { byHand, loopQuestion, loopScene, way } from './loop.ts';

/** Every aim over three numbers against all places of a grid, one by one: grade and room by hand, margins by full runs. */

const radii = [400, 600];
const masses = [100, 140, 180];
const numbers = [
  { at: `${way}/first/radiusMm`, from: 400, to: 600, step: 200 },
  { at: `${way}/second/radiusMm`, from: 400, to: 600, step: 200 },
  { at: 'stock/coach/massG', from: 100, to: 180, step: 40 },
];

/** Width of the deck where the scene says none: 70 mm at 16.5 mm gauge (NEM 122). */
const deck = 0.07;

const rounded = (value: number): number => Math.round(value * 1e3) / 1e3;

interface PlaceByHand {
  readonly values: readonly number[];
  readonly ruling: number;
  readonly area: number;
  readonly margin: number;
}

async function everyPlace(): Promise<PlaceByHand[]> {
  const places: PlaceByHand[] = [];
  for (const a of radii) {
    for (const b of radii) {
      for (const mass of masses) {
        const { between, last, ruling, across } = byHand(a / 1e3, b / 1e3);
        const settings = [
          ...[a, b, mass].map((to, k) => ({ at: numbers[k].at, to })),
          { at: `${way}/up/lengthMm`, to: between * 1e3 },
          { at: `${way}/out/lengthMm`, to: last * 1e3 },
        ];
        const probe = await probeScene({ scene: loopScene(), settings, trialIds: ['up'], exactness: 'run' });
        const arrived = probe.ok && probe.trials.every(({ outcome }) => outcome === 'arrived');
        const share = closestCall(probe, 'all')?.share ?? Number.NaN;
        places.push({
          values: [a, b, mass],
          ruling: rounded(ruling * 100),
          area: rounded((across + deck) * (1.4 + deck)),
          margin: rounded(arrived ? share : Math.min(share, 0)),
        });
      }
    }
  }
  return places;
}

describe('three numbers at once', () => {
  it('come out for every aim as all places of their grid say', async () => {
    const places = await everyPlace();
    const ask = (aim: 'grade' | 'margin' | 'front') =>
      searchRoute(loopQuestion({ numbers, aim, trialIds: ['up'] }), { probe: probeScene, solver: null });
    const grade = await ask('grade');
    expect(grade.certainty).toBe('every-setting');
    expect(grade.routes).toHaveLength(1);
    expect(grade.routes[0].ruling * 100).toBeCloseTo(Math.min(...places.map(({ ruling }) => ruling)), 3);

    const margin = await ask('margin');
    expect(margin.inFull).toBe(true);
    const most = Math.max(...places.map((one) => one.margin));
    expect(new Set(places.map((one) => one.margin)).size).toBeGreaterThan(2);
    expect(margin.routes[0].margin ?? Number.NaN).toBeCloseTo(most, 3);

    const front = await ask('front');
    const rows = places.map((one) => [one.ruling, one.area, one.margin]);
    const unbeatenPlaces = unbeaten(rows, ['least', 'least', 'most']).map((k) => places[k]);
    // Places alike in all three figures beat none of each other: the front names one of them.
    const figures = new Set(unbeatenPlaces.map(({ ruling, area, margin }) => `${ruling} ${area} ${margin}`));
    expect(figures.size).toBeGreaterThan(1);
    expect(front.inFull).toBe(true);
    expect(front.routes).toHaveLength(figures.size);
    const named = front.routes.map(({ values }) =>
      unbeatenPlaces.find((one) => one.values.every((value, k) => Math.abs(value - values[k]) < 1e-9)),
    );
    expect(new Set(named.map((one) => `${one?.ruling} ${one?.area} ${one?.margin}`))).toEqual(figures);
  }, 300_000);

  it('are found among 8000 places in 300 looks, the least ruling grade as by hand', async () => {
    const many = [
      { at: `${way}/first/radiusMm`, from: 300, to: 690, step: 10 },
      { at: `${way}/second/radiusMm`, from: 300, to: 690, step: 10 },
      { at: `${way}/in/lengthMm`, from: 600, to: 1000, step: 100 },
    ];
    const steps = (from: number, to: number, step: number) =>
      Array.from({ length: Math.round((to - from) / step) + 1 }, (_, k) => from + k * step);
    const answer = await searchRoute(loopQuestion({ numbers: many, probes: 300 }), { probe: probeScene, solver: null });
    // A longer lead is made up for by the last straight: both add to the length of an even grade.
    const all = steps(300, 690, 10).flatMap((a) =>
      steps(300, 690, 10).flatMap((b) =>
        steps(600, 1000, 100).flatMap((lead) => {
          const { between, last } = byHand(a / 1e3, b / 1e3);
          const [first, end] = [lead / 1e3, last + lead / 1e3 - 0.8];
          if (between <= 0 || end <= 0) return [];
          const length = first + (Math.PI / 2) * ((a + b) / 1e3) + between + end;
          return [0.06 / length + 0.008128 / (Math.min(a, b) / 1e3)];
        }),
      ),
    );
    expect(answer.settings).toBe(8000);
    expect(answer.probes).toBeLessThanOrEqual(300);
    expect(answer.certainty).not.toBe('every-setting');
    expect(answer.routes[0].ruling).toBeCloseTo(Math.min(...all), 8);
  }, 120_000);
});
