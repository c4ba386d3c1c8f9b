import { describe, expect, it } from 'vitest';
import { defaultForceModel, defaultRunOptions } from '../../src/core/dynamics/index.ts';
import { plannedHeight, trackPoint } from '../../src/core/track/index.ts';
import { compileScene, compileTrial } from '../../src/sim/index.ts';
import { bundledFiles, bundledScene, sample, sampleScene, sampleWith, sceneOf } from '../scene/sample.ts';

const trialOf = (change: object) =>
  compileTrial(compileScene(sceneOf(sampleWith('trials', [{ ...sample.trials[0], ...change }]))), 'up');

describe('compileScene', () => {
  const track = compileScene(sampleScene()).tracks.get('line')!;

  it('lays the alignment in metres', () => {
    expect(track.length).toBeCloseTo(6, 12);
    // A left curve and a right one of 1 rad each: east and north they add up to 2 sin 1 and 2 (1 - cos 1) metres.
    const end = trackPoint(track, 6);
    expect(end.x).toBeCloseTo(2 + 2 * Math.sin(1) + 2, 9);
    expect(end.y).toBeCloseTo(2 * (1 - Math.cos(1)), 9);
    expect(end.heading).toBeCloseTo(0, 12);
  });

  it('gives the heights, the vertical curve and the support that is off', () => {
    expect(plannedHeight(track, 6)).toBeCloseTo(0.08, 12);
    // Half of the 400 mm curve into 2 % rises by 2 % / 0.4 m * 0.2 m squared / 2 = 1 mm at its middle.
    expect(plannedHeight(track, 2)).toBeCloseTo(0.001, 9);
    expect(trackPoint(track, 0.6).z).toBeCloseTo(0.0015, 9);
  });

  it('puts a hinge where the strip has a joint', () => {
    // Support 3 stands at 600 mm and is high, so the strip leaves it on either side; at 1200 mm it may break.
    const before = trackPoint(track, 1.2 - 1e-6).grade;
    const after = trackPoint(track, 1.2 + 1e-6).grade;
    expect(Math.abs(after - before)).toBeGreaterThan(1e-5);
  });

  it('names the track that cannot be laid', () => {
    const scene = sampleScene();
    const broken = { ...scene, tracks: [{ ...scene.tracks[0], profile: [] }] };
    expect(() => compileScene(broken)).toThrow(/^Track "line": /);
  });

  it.each(bundledFiles)('compiles every track and trial of %s', (name) => {
    const compiled = compileScene(bundledScene(name));
    for (const track of compiled.tracks.values()) {
      for (const jump of track.jumps) {
        expect(jump.position).toBe(0);
        expect(jump.heading).toBe(0);
      }
    }
    for (const { id } of compiled.scene.trials) {
      const trial = compileTrial(compiled, id);
      expect(trial.train.vehicles.some((vehicle) => vehicle.drive !== null)).toBe(true);
      expect(trial.script.finish).toBeGreaterThan(trial.script.start);
      expect(trial.surroundings.tracks).toHaveLength(compiled.tracks.size);
    }
  });
});

describe('compileTrial', () => {
  it('lets vehicle 0 lead and every front face ahead', () => {
    const forward = trialOf({});
    expect(forward.train.vehicles.map((vehicle) => vehicle.name)).toEqual(['Engine', 'Coach', 'Coach']);
    const back = trialOf({ leading: 'last' });
    expect(back.train.vehicles.map((vehicle) => vehicle.name)).toEqual(['Coach', 'Coach', 'Engine']);
  });

  it('turns a vehicle that faces the other way, and all of them when the other end leads', () => {
    const source = sampleWith('trains.0.vehicles', [
      { stock: 'engine', turned: true, headHeightOffMm: { front: -1 } },
      { stock: 'coach' },
    ]);
    const compiled = compileScene(sceneOf(source));
    const [engine, coach] = compileTrial(compiled, 'up').train.vehicles;
    expect(engine.rear.coupling.headHeight).toBeCloseTo(coach.front.coupling.headHeight - 0.001, 12);
    expect(engine.front.coupling.headHeight).toBeCloseTo(coach.front.coupling.headHeight, 12);
    const other = sampleWith('trains.0.vehicles', [
      { stock: 'engine', headHeightOffMm: { front: -1 } },
      { stock: 'coach' },
    ]);
    const scene = sceneOf(other);
    const last = { ...scene, trials: [{ ...scene.trials[0], leading: 'last' as const }] };
    const vehicles = compileTrial(compileScene(last), 'up').train.vehicles;
    expect(vehicles[1].rear.coupling.headHeight).toBeCloseTo(vehicles[0].rear.coupling.headHeight - 0.001, 12);
  });

  it('runs along the track, or along the same track the other way', () => {
    const up = trialOf({});
    expect(up.path.reversed).toBe(false);
    expect([up.script.start, up.script.finish]).toEqual([0.9, 5.9]);
    const down = trialOf({ towards: 'start', startMm: 5000, finishMm: 100, orders: [{ atMm: 2000, setting: 0 }] });
    expect(down.path.reversed).toBe(true);
    expect(down.script.start).toBeCloseTo(1, 12);
    expect(down.script.finish).toBeCloseTo(5.9, 12);
    expect(down.script.orders[0].when).toEqual({ chainage: 4 });
    const end = trackPoint(down.path.track, down.script.start);
    expect(end.x).toBeCloseTo(trackPoint(up.path.track, 5).x, 9);
  });

  it('starts with the tail just on the track and arrives just before its end when the file leaves it open', () => {
    const { startMm: _start, finishMm: _finish, ...open } = sample.trials[0];
    const trial = compileTrial(compileScene(sceneOf(sampleWith('trials', [open]))), 'up');
    // 120 + 246 + 246 mm of bodies and two gaps of 20 mm.
    expect(trial.script.start).toBeCloseTo(0.652 + 0.01, 9);
    expect(trial.script.finish).toBeCloseTo(5.99, 12);
  });

  it('gives an order to the vehicle that the file counts from its first end', () => {
    const orders = [{ atS: 1, setting: 0.5, rampS: 3, vehicle: 1 }];
    expect(trialOf({ orders }).script.orders).toEqual([{ when: { time: 1 }, setting: 0.5, ramp: 3, vehicle: 0 }]);
    expect(trialOf({ orders, leading: 'last' }).script.orders[0].vehicle).toBe(2);
  });

  it('takes force constants and steps from the file, the rest from the defaults', () => {
    expect(trialOf({}).options).toEqual(defaultRunOptions);
    const own = trialOf({ forces: { curveFactor: 1.5 }, stepMs: 0.5, frameMs: 10 }).options;
    expect(own.forces).toEqual({ ...defaultForceModel, curveFactor: 1.5 });
    expect(own.step).toBeCloseTo(0.0005, 15);
    expect(own.frameInterval).toBeCloseTo(0.01, 15);
  });

  it('knows what hangs over the track', () => {
    expect(trialOf({}).surroundings.deckDepth).toBeCloseTo(0.017, 12);
    // How far the deck reaches is left to the standard formation unless the file says it.
    expect(trialOf({}).surroundings.deckHalfWidth).toBeUndefined();
    const wide = sceneOf(sampleWith('deck', { ...sample.deck, widthMm: 90 }));
    expect(compileTrial(compileScene(wide), 'up').surroundings.deckHalfWidth).toBeCloseTo(0.045, 12);
  });

  it('knows what stands beside the line, its corners counter-clockwise', () => {
    expect(trialOf({}).surroundings.structures).toBeUndefined();
    const outline = [
      { xMm: 0, yMm: 0 },
      { xMm: 0, yMm: 30 },
      { xMm: 60, yMm: 0 },
    ];
    const scene = sceneOf(sampleWith('structures', [{ name: 'Pier', outline, bottomMm: -20, topMm: 60 }]));
    expect(compileTrial(compileScene(scene), 'up').surroundings.structures).toEqual([
      {
        name: 'Pier',
        outline: [
          [0.06, 0],
          [0, 0.03],
          [0, 0],
        ],
        bottom: -0.02,
        top: 0.06,
      },
    ]);
  });

  it('knows who may stand on the tracks beside', () => {
    expect(trialOf({}).surroundings.passers).toBeUndefined();
    expect(trialOf({ passers: ['coach'] }).surroundings.passers?.map(({ name }) => name)).toEqual(['Coach']);
  });

  it('says which trials there are when asked for another', () => {
    expect(() => compileTrial(compileScene(sampleScene()), 'down')).toThrow('no trial "down"; it has "up"');
  });

  it.each([
    [[{ stock: 'engine' }, { stock: 'coach', count: 3 }], 'first', false],
    [[{ stock: 'engine' }, { stock: 'coach', count: 3 }], 'last', true],
    [[{ stock: 'coach' }, { stock: 'engine' }, { stock: 'coach', count: 2 }], 'first', false],
    [[{ stock: 'coach' }, { stock: 'engine' }, { stock: 'coach' }], 'first', false],
    [[{ stock: 'engine' }, { stock: 'coach' }, { stock: 'engine' }], 'first', false],
    [[{ stock: 'coach', count: 2 }, { stock: 'engine' }, { stock: 'coach' }], 'first', true],
    [[{ stock: 'engine' }], 'first', false],
  ])('%j with the %s end ahead: propelled %s', (vehicles, leading, propelled) => {
    const source = sampleWith('trains.0.vehicles', vehicles) as object;
    const scene = sceneOf({ ...source, trials: [{ ...sample.trials[0], leading, startMm: 2000 }] });
    expect(compileTrial(compileScene(scene), 'up').propelled).toBe(propelled);
  });
});
