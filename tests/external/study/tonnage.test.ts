import { describe, expect, it } from 'vitest';
import { loadTable } from '../../../src/sim/study/loads.ts';
import { probeScene } from '../../../src/sim/study/probeScene.ts';
import { sample, sceneOf } from '../../scene/sample.ts';

/**
 * Worked examples of full-size tonnage through the table of loads: a short ton is a gram here and a pound 1/2000 gf, so that grades, shares of weight and
 * numbers of vehicles are the book's. Vehicles of so many tons each; the books' engines are given by what they have left for the train:
 * the motor's greatest pull, with grip to spare.
 */
const engineTons = 20;

function tonnage(pounds: number, tonsEach: number, gradePercent: number, rollingPounds: number) {
  const [engine, coach] = sample.stock;
  // The engine's own climb comes on top of what the book leaves for the train.
  const pull = (pounds / 2000 + (engineTons * gradePercent) / 100) * 9.80665e-3;
  const { buffers: _buffers, bogies: _bogies, overBuffersMm: _over, ...plain } = coach;
  const { startMm: _start, ...trial } = sample.trials[0];
  return sceneOf({
    ...sample,
    tracks: [
      {
        id: 'line',
        name: 'Line',
        start: { xMm: 0, yMm: 0, headingDeg: 0 },
        alignment: [{ kind: 'straight', lengthMm: 20_000 }],
        profile: [
          { atMm: 0, heightMm: 0 },
          { at: { endOf: 'track' }, gradePercent },
        ],
      },
    ],
    stock: [
      {
        ...engine,
        massG: engineTons,
        rollingPercent: 0,
        rollingPercentPerMPerS: 0,
        drive: {
          drivenMassG: engineTons,
          adhesion: 2,
          slidingAdhesion: 2,
          stallForceN: pull,
          rotatingMassG: 0.1,
          transferShare: 0,
        },
      },
      {
        ...plain,
        lengthMm: 60,
        wheelbaseMm: 30,
        massG: tonsEach,
        rollingPercent: (100 * rollingPounds) / 2000,
        rollingPercentPerMPerS: 0,
      },
    ],
    trials: [{ ...trial, finishMm: 19_900, orders: [{ atS: 0, setting: 1 }] }],
  });
}

const spec = { trialIds: ['up'], engines: ['engine'], kinds: ['coach'], gauge: 'all', most: 110 } as const;

describe('table of loads', () => {
  it.each([
    // US Army rail planning, TR0603 par. 2.11: 33,600 lb at the drawbar, 0.80 for weather; rolling 7, grade 30, curve of 10 degrees 8 lb a ton: 598 short
    // tons. The curve goes in as rolling, being so many pounds a ton like it.
    ['TR0603', 33_600 * 0.8, 1.5, 7 + 8, 598],
    // "212 numerical illustration", chestofbooks.com: 28,200 lb against 22.6 lb a ton on 1 % and 34.8 on 1.6 %.
    ['the textbook on 1 %', 28_200, 1, 2.6, 1248],
    ['the textbook on 1.6 %', 28_200, 1.6, 2.8, 811],
  ])(
    '%s: as many whole vehicles as the book has tons for, quasi-statically',
    async (_, pounds, grade, rolling, tons) => {
      // A motor as strong as the pull stands still at exactly that load: so the quasi-static pass counts, which has no start to make.
      const tonsEach = tons / 100 - 0.05;
      const steady = (request: Parameters<typeof probeScene>[0]) => probeScene({ ...request, exactness: 'steady' });
      const { loads } = await loadTable(tonnage(pounds, tonsEach, grade, rolling), { ...spec, gauge: 'stall' }, steady);
      expect(Math.abs(loads[0].passes * tonsEach - tons)).toBeLessThan(tonsEach);
      expect((loads[0].fails ?? 0) * tonsEach).toBeGreaterThan(tons - 1);
    },
    120_000,
  );
});
