import { describe, expect, it } from 'vitest';
import type { Scene } from '../../../src/scene/index.ts';
import {
  type MeasureId,
  measureById,
  type Probe,
  passesBy,
  probeScene,
  sweepScene,
} from '../../../src/sim/study/index.ts';
import { sample, sceneOf } from '../../scene/sample.ts';

/** Measures of studies against closed forms of statics and plane geometry. */

const gravity = 9.80665;
const amountOf = (id: MeasureId, probe: Probe): number => measureById(id).value(probe) ?? Number.NaN;

/** A coach 246 mm long on pivots 186 mm apart; its bogies are so short that pivots stand on the middle of the track. */
const body = { length: 246, pivots: 186 };
const coach = {
  id: 'coach',
  name: 'Coach',
  kind: 'coach',
  massG: 120,
  lengthMm: body.length,
  widthMm: 40,
  bogies: { centresMm: body.pivots, wheelbaseMm: 2 },
  coupling: 'bar',
  rollingPercent: 1.5,
  rollingPercentPerMPerS: 0,
};

/** An engine that rolls for nothing and drives by all its weight, and four coaches, up an even straight grade (or down it). */
function ramp(gradePercent: number, setting = 1): Scene {
  const { buffers: _buffers, overBuffersMm: _over, ...engine } = { buffers: 0, overBuffersMm: 0, ...sample.stock[0] };
  return sceneOf({
    ...sample,
    tracks: [
      {
        id: 'line',
        name: 'Line',
        start: { xMm: 0, yMm: 0, headingDeg: 0 },
        alignment: [{ kind: 'straight', id: 'all', lengthMm: 9000 }],
        profile: [
          { atMm: 0, heightMm: 500 },
          { at: { endOf: 'track' }, gradePercent },
        ],
      },
    ],
    stock: [
      {
        ...engine,
        rollingPercent: 0,
        rollingPercentPerMPerS: 0,
        drive: { drivenMassG: 300, adhesion: 0.35, stallForceN: 5 },
      },
      coach,
    ],
    trains: [{ id: 'train', name: 'Train', vehicles: [{ stock: 'engine' }, { stock: 'coach', count: 4 }] }],
    trials: [{ ...sample.trials[0], startMm: 2200, finishMm: 8200, orders: [{ atS: 0, setting }] }],
  });
}

const probed = (scene: Scene, exactness: 'run' | 'steady' = 'steady') =>
  probeScene({ scene, settings: [], trialIds: ['up'], exactness });

describe('a train on an even grade', () => {
  it.each([0, 2, 4])(
    'pulls as much at its drawbar as all behind it resists: n m g (sin + r cos), at %f per cent',
    async (percent) => {
      const probe = await probed(ramp(percent));
      const angle = Math.atan(percent / 100);
      const behind = 4 * 0.12 * gravity * (Math.sin(angle) + 0.015 * Math.cos(angle));
      expect(amountOf('drawbar', probe)).toBeCloseTo(behind, 6);
      expect(amountOf('draft', probe)).toBeCloseTo(behind, 6);
      expect(amountOf('buff', probe)).toBe(0);
      // Work is force by way: of the whole train, over 6 m of plan along the slope, to the last station of a centimetre.
      const pull = behind + 0.3 * gravity * Math.sin(angle);
      const way = 6 / Math.cos(angle);
      expect(Math.abs(amountOf('work', probe) - pull * way)).toBeLessThan(pull * 0.011);
      // At one speed all along, way = speed by time.
      expect(Math.abs(amountOf('least-speed', probe) * amountOf('time', probe) - way)).toBeLessThan(0.011);
    },
  );

  it('takes in full the same work and what sets it in motion', async () => {
    const probe = await probed(ramp(2), 'run');
    const angle = Math.atan(0.02);
    const [mass, rolling] = [0.3 + 4 * 0.12, 0.015 * 4 * 0.12 * gravity * Math.cos(angle)];
    const uphill = (mass * gravity * Math.sin(angle) + rolling) * (6 / Math.cos(angle));
    // The speed it has is no less than the least and, climbing evenly, no more than a little above: the motor's rotor takes up to as much again.
    const moving = 0.5 * mass * amountOf('least-speed', probe) ** 2;
    expect(amountOf('work', probe)).toBeGreaterThan(uphill + moving);
    expect(amountOf('work', probe)).toBeLessThan(1.03 * uphill + 3 * moving);
  });

  it('has a speed at the foot when it runs down to it, and none where it sets out from it', async () => {
    expect(measureById('foot-speed').value(await probed(ramp(2)))).toBeNull();
    const down = await probed(ramp(-2, 0.4));
    const way = 6 / Math.cos(Math.atan(0.02));
    expect(Math.abs(amountOf('foot-speed', down) * amountOf('time', down) - way)).toBeLessThan(0.011);
  });

  it('takes for ever, and not as long as it was watched, where it does not arrive', async () => {
    const probe = await probed(ramp(40), 'run');
    expect(measureById('time').value(probe)).toBe(Number.POSITIVE_INFINITY);
    expect(passesBy('structure', [{ measure: 'time', bound: 'most', amount: 1e6 }])(probe)).toBe(false);
  });
});

/** One turn of a circle. */
function circle(radiusMm: number): Scene {
  return sceneOf({
    ...ramp(0),
    tracks: [
      {
        id: 'line',
        name: 'Line',
        start: { xMm: 0, yMm: 0, headingDeg: 0 },
        alignment: [{ kind: 'helix', id: 'bend', radiusMm, turn: 'left', turns: 1 }],
        profile: [{ atMm: 0, heightMm: 0 }],
      },
    ],
    trials: [{ ...sample.trials[0], startMm: 1500, finishMm: 2000 }],
  });
}

describe('throws in a curve', () => {
  // Plane geometry of a rigid body on two pivots, as in NEM 103 and any handbook of alignment: h² = R² - (a/2)².
  const middle = (radius: number) => Math.sqrt(radius ** 2 - (body.pivots / 2) ** 2);
  const endThrow = (radius: number) => Math.hypot(middle(radius), body.length / 2) - radius;
  const centreThrow = (radius: number) => radius - middle(radius);
  const quantity = { at: 'tracks/line/alignment/bend/radiusMm', from: 450, to: 900, points: 6, edgeWithin: 0.5 };
  // No structure stands here: limits alone decide.
  const spec = { trialIds: ['up'], gauge: 'structure', exactness: 'steady' } as const;

  it('fall with the radius as h and R say, at every value of a sweep', async () => {
    const line = await sweepScene(circle(600), quantity, spec, probeScene);
    expect(line.points).toHaveLength(6);
    for (const { at, outcome } of line.points) {
      // Their feet on the track are found to the second order of the throw's own turn: some ten thousandths of it.
      expect(amountOf('end-throw', outcome) * 1e3).toBeCloseTo(endThrow(at), 2);
      expect(amountOf('centre-throw', outcome) * 1e3).toBeCloseTo(centreThrow(at), 4);
    }
  });

  it('give the tightest radius that keeps a limit, by halving', async () => {
    const limits = [{ measure: 'end-throw', bound: 'most', amount: 5e-3 }] as const;
    const { edges } = await sweepScene(circle(600), quantity, { ...spec, limits }, probeScene);
    expect(edges).toHaveLength(1);
    const [{ passes, fails }] = edges;
    expect(endThrow(passes)).toBeLessThan(5 + 2e-3);
    expect(endThrow(fails)).toBeGreaterThan(5 - 2e-3);
    expect(passes - fails).toBeLessThanOrEqual(0.5);
  });
});

describe('a helix against its turns', () => {
  const helix = sceneOf({
    ...ramp(0),
    tracks: [
      {
        id: 'line',
        name: 'Line',
        start: { xMm: 0, yMm: 0, headingDeg: 0 },
        alignment: [{ kind: 'helix', id: 'h', radiusMm: 600, turn: 'left', turns: 2 }],
        profile: [
          { atMm: 0, heightMm: 0 },
          { at: { endOf: 'track' }, gradePercent: 2 },
        ],
      },
    ],
    trials: [{ ...sample.trials[0], startMm: 1500, finishMm: 2000 }],
  });
  const turns = { at: 'tracks/line/alignment/h/turns', from: 1, to: 4, points: 4, edgeWithin: 0.01 };
  const spec = { trialIds: ['up'], gauge: 'structure', exactness: 'steady' } as const;

  it('is 2πR long for each, rises by its grade, and rules by 32/R more', async () => {
    const { points } = await sweepScene(helix, turns, spec, probeScene);
    for (const { at, outcome } of points) {
      const length = 2 * Math.PI * 0.6 * at;
      expect(amountOf('length', outcome)).toBeCloseTo(length, 9);
      expect(amountOf('rise', outcome)).toBeCloseTo(0.02 * length, 9);
      // 32 over the radius in inches, per cent: the rule of the trade in H0 (common practice, no source).
      expect(amountOf('ruling', outcome) * 100).toBeCloseTo(2 + 32 / (600 / 25.4), 6);
      expect(amountOf('tightest', outcome)).toBeCloseTo(0.6, 9);
      expect(amountOf('room-depth', outcome)).toBeCloseTo(1.2, 3);
      // NEM 122 (2007): 70 mm of formation in H0.
      expect(amountOf('deck', outcome)).toBeCloseTo(length * 0.07, 9);
    }
  });

  it('keeps a length of strip up to as many turns as go into it', async () => {
    const limits = [{ measure: 'length', bound: 'most', amount: 10 }] as const;
    const { edges } = await sweepScene(helix, turns, { ...spec, limits }, probeScene);
    const [{ passes, fails }] = edges;
    expect(passes).toBeLessThanOrEqual(10 / (1.2 * Math.PI));
    expect(fails).toBeGreaterThan(10 / (1.2 * Math.PI));
    expect(fails - passes).toBeLessThanOrEqual(0.01);
  });
});
