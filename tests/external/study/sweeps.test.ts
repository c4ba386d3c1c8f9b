import { describe, expect, it } from 'vitest';
import { probeScene, sweepScene } from '../../../src/sim/study/index.ts';
import { steepestGrade } from '../../../src/sim/study/steepestGrade.ts';
import { sample, sceneOf } from '../../scene/sample.ts';

/**
 * Edges of sweeps against closed forms: end and centre throw by plane geometry of a rigid body on two pivots (as in NEM 103 and any handbook of track
 * alignment: h² = R² - (a/2)²), and the grade at which adhesion is used up.
 */

/** A coach 246 mm long and 40 mm wide on pivots 186 mm apart; its bogies are so short that pivots stand on the middle of the track. */
const body = { length: 246, pivots: 186, width: 40 };

const coach = {
  id: 'coach',
  name: 'Coach',
  kind: 'coach',
  massG: 120,
  lengthMm: body.length,
  widthMm: body.width,
  bogies: { centresMm: body.pivots, wheelbaseMm: 2 },
  coupling: 'bar',
};

function curveWithWall(side: 'left' | 'right', distanceMm: number) {
  const { overBuffersMm: _over, buffers: _buffers, ...engine } = { overBuffersMm: 0, buffers: 0, ...sample.stock[0] };
  return sceneOf({
    ...sample,
    tracks: [
      {
        id: 'line',
        name: 'Line',
        start: { xMm: 0, yMm: 0, headingDeg: 0 },
        alignment: [{ kind: 'arc', id: 'bend', radiusMm: 800, turn: 'left', angleDeg: 180 }],
        profile: [{ atMm: 0, heightMm: 0 }],
      },
    ],
    stock: [engine, coach],
    trains: [{ id: 'train', name: 'Train', vehicles: [{ stock: 'engine' }, { stock: 'coach' }] }],
    trials: [{ ...sample.trials[0], startMm: 450, finishMm: 1400 }],
    lineside: [{ kind: 'wall', name: 'Wall', track: 'line', fromMm: 900, toMm: 1100, side, distanceMm, heightMm: 60 }],
  });
}

/** Middle of the body inside the curve by its versine: its distance from the centre of the curve, mm. */
const middle = (radius: number) => Math.sqrt(radius ** 2 - (body.pivots / 2) ** 2);
const endThrow = (radius: number) => Math.hypot(middle(radius) + body.width / 2, body.length / 2) - radius;
const centreThrow = (radius: number) => radius - (middle(radius) - body.width / 2);

/** The radius at which a throw that falls with the radius is so much, mm. */
function radiusFor(thrown: (radius: number) => number, much: number): number {
  let [low, high] = [300, 3000];
  for (let k = 0; k < 60; k++) {
    const half = 0.5 * (low + high);
    if (thrown(half) > much) low = half;
    else high = half;
  }
  return low;
}

describe('the tightest curve past a wall', () => {
  it.each([
    ['outside, by end throw', 'right', 24, endThrow],
    ['outside, by end throw', 'right', 23.5, endThrow],
    ['inside, by centre throw', 'left', 24, centreThrow],
    ['inside, by centre throw', 'left', 26.5, centreThrow],
  ] as const)('%s (%s, %f mm from the track)', async (_where, side, distanceMm, thrown) => {
    const radius = radiusFor(thrown, distanceMm);
    expect(radius).toBeGreaterThan(550);
    expect(radius).toBeLessThan(1200);
    const line = await sweepScene(
      curveWithWall(side, distanceMm),
      { at: 'tracks/line/alignment/bend/radiusMm', from: 500, to: 1300, points: 5, edgeWithin: 0.5 },
      { trialIds: ['up'], gauge: 'structure', exactness: 'steady' },
      probeScene,
    );
    expect(line.edges).toHaveLength(1);
    const [{ passes, fails }] = line.edges;
    // The wall is laid in flat pieces of 10 mm: its face departs from the curve by up to their versine, some 0.02 mm, which is this much of radius.
    const versine = 10 ** 2 / (8 * radius);
    const slope = thrown(radius) - thrown(radius + 1);
    const within = versine / slope + 0.5;
    expect(Math.abs(passes - radius)).toBeLessThan(within);
    expect(Math.abs(fails - radius)).toBeLessThan(within);
    expect(passes).toBeGreaterThan(fails);
  });
});

describe('the steepest grade with six', () => {
  it('is where adhesion is used up: tan = (mu W - r w) / (W + w)', async () => {
    // All of the engine's 300 g drive; grip and rolling resistance are given, so that nothing but statics is left: six coaches of 40 g, 1.5 %.
    const [mu, engineMass, coaches, rolling] = [0.2, 0.3, 6 * 0.04, 0.015];
    const scene = sceneOf({
      ...sample,
      stock: [
        {
          ...sample.stock[0],
          rollingPercent: 0,
          rollingPercentPerMPerS: 0,
          drive: { drivenMassG: 300, adhesion: mu, slidingAdhesion: mu, stallForceN: 5, transferShare: 0 },
        },
        {
          ...coach,
          widthMm: 34,
          massG: 40,
          lengthMm: 60,
          bogies: undefined,
          wheelbaseMm: 30,
          rollingPercent: rolling * 100,
          rollingPercentPerMPerS: 0,
        },
      ].map((one) => JSON.parse(JSON.stringify(one))),
      trains: [{ id: 'train', name: 'Train', vehicles: [{ stock: 'engine' }, { stock: 'coach', count: 6 }] }],
    });
    const percent = (100 * (mu * engineMass - rolling * coaches)) / (engineMass + coaches);
    const found = await steepestGrade(scene, 'up', null, probeScene);
    expect(found.whole).toBe(true);
    expect(found.passesPercent).toBeLessThan(percent + 0.01);
    // Starting takes a little more than standing: within a twentieth of the grade.
    expect(found.passesPercent).toBeGreaterThan(0.95 * percent);
    expect((found.failsPercent ?? 0) - (found.passesPercent ?? 0)).toBeCloseTo(0.01, 9);
  }, 120_000);
});
