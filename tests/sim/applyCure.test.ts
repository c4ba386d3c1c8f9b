import { describe, expect, it } from 'vitest';
import type { Cure } from '../../src/core/findings/types.ts';
import { trackPoint } from '../../src/core/track/index.ts';
import { parseScene, placedSupports, type Scene, trackLengthMm, trainPlaces } from '../../src/scene/index.ts';
import { applyCure, compileScene } from '../../src/sim/index.ts';
import { sample, sampleScene, sampleWith, sceneOf } from '../scene/sample.ts';

/** Applies a cure that has to apply, and checks that it left the old scene alone and made a sound one. */
function cured(scene: Scene, cure: Cure): Scene {
  const before = structuredClone(scene);
  const after = applyCure(scene, 'up', cure);
  expect(scene).toEqual(before);
  if (after === null) throw new Error(`${cure.kind} did not apply`);
  expect(parseScene(after).ok).toBe(true);
  return after;
}

const track = (scene: Scene) => scene.tracks[0];
const endOf = (scene: Scene) => {
  const compiled = compileScene(scene).tracks.get('line')!;
  return trackPoint(compiled, compiled.length);
};

describe('set-support', () => {
  it('takes the error of an even support out of the file', () => {
    const after = cured(sampleScene(), { kind: 'set-support', support: 2, by: -0.0015 });
    expect(track(after).supports).toEqual({ everyMm: 300, off: [] });
  });

  it('adds to what a support is off, and keeps the others', () => {
    const after = cured(sampleScene(), { kind: 'set-support', support: 4, by: 0.0004 });
    expect(
      placedSupports(track(after))
        .map((one) => one.offMm)
        .slice(0, 6),
    ).toEqual([0, 0, 1.5, 0, 0.4, 0]);
  });

  it('works on a list of supports', () => {
    const scene = sceneOf(sampleWith('tracks.0.supports', [{ atMm: 0 }, { atMm: 2000, offMm: 2.5 }, { atMm: 6000 }]));
    const lowered = cured(scene, { kind: 'set-support', support: 1, by: -0.0025 });
    expect(track(lowered).supports).toEqual([{ atMm: 0 }, { atMm: 2000 }, { atMm: 6000 }]);
    const raised = cured(scene, { kind: 'set-support', support: 2, by: 0.001 });
    expect(track(raised).supports).toEqual([{ atMm: 0 }, { atMm: 2000, offMm: 2.5 }, { atMm: 6000, offMm: 1 }]);
  });

  it('does not apply to a support that is not there', () => {
    expect(applyCure(sampleScene(), 'up', { kind: 'set-support', support: 40, by: 0.001 })).toBeNull();
    const { supports: _supports, stripJoints: _joints, ...bare } = sampleScene().tracks[0];
    const scene = { ...sampleScene(), tracks: [bare] };
    expect(applyCure(scene, 'up', { kind: 'set-support', support: 0, by: 0.001 })).toBeNull();
  });
});

describe('splice-joint', () => {
  it('takes the nearest joint within reach out', () => {
    const scene = sceneOf(sampleWith('tracks.0.stripJoints', [{ atMm: 1200 }, { atMm: 1800 }]));
    expect(track(cured(scene, { kind: 'splice-joint', chainage: 1.801 })).stripJoints).toEqual([{ atMm: 1200 }]);
  });

  it('does not apply where there is none', () => {
    expect(applyCure(sampleScene(), 'up', { kind: 'splice-joint', chainage: 1.3 })).toBeNull();
  });
});

describe('vertical-curve', () => {
  it('rounds off the nearest inner grade point, whatever it had', () => {
    const scene = sceneOf(sampleWith('tracks.0.profile.1', { atMm: 2000, heightMm: 0, verticalCurveRadiusMm: 5000 }));
    const after = cured(scene, { kind: 'vertical-curve', chainage: 2.1, length: 0.6 });
    expect(track(after).profile[1]).toEqual({ atMm: 2000, heightMm: 0, verticalCurveLengthMm: 600 });
  });

  it('does not apply far from a grade point, nor where there is no room', () => {
    expect(applyCure(sampleScene(), 'up', { kind: 'vertical-curve', chainage: 4, length: 0.6 })).toBeNull();
    expect(applyCure(sampleScene(), 'up', { kind: 'vertical-curve', chainage: 2, length: 4.1 })).toBeNull();
  });
});

describe('easement', () => {
  it('lies over the jump of curvature, keeps the length and the heading of the track, and leaves no jump', () => {
    const after = cured(sampleScene(), { kind: 'easement', chainage: 2.05, length: 0.3 });
    expect(track(after).alignment.slice(0, 3)).toEqual([
      { kind: 'straight', id: 'lead', lengthMm: 1850 },
      { kind: 'transition', lengthMm: 300 },
      { kind: 'arc', id: 'first', radiusMm: 1000, turn: 'left', lengthMm: 850 },
    ]);
    expect(trackLengthMm(track(after))).toBeCloseTo(6000, 9);
    expect(endOf(after).heading).toBeCloseTo(endOf(sampleScene()).heading, 12);
    // The shift of a clothoid, L^2/24R = 3.75 mm (NEM 113), moves what lies beyond; nothing moves by much more.
    expect(Math.abs(endOf(after).y - endOf(sampleScene()).y)).toBeLessThan(0.01);
  });

  it('eases a reverse curve through', () => {
    const after = cured(sampleScene(), { kind: 'easement', chainage: 3, length: 0.4 });
    const compiled = compileScene(after).tracks.get('line')!;
    expect(trackPoint(compiled, 2.8).curvature).toBeCloseTo(1, 9);
    expect(trackPoint(compiled, 3).curvature).toBeCloseTo(0, 9);
    expect(trackPoint(compiled, 3.2).curvature).toBeCloseTo(-1, 9);
    expect(endOf(after).heading).toBeCloseTo(0, 12);
  });

  it('makes a transition longer, and shortens angles and turns alike', () => {
    const scene = sceneOf(
      sampleWith('tracks.0.alignment', [
        { kind: 'helix', radiusMm: 500, turn: 'left', turns: 1 },
        { kind: 'transition', lengthMm: 200 },
        { kind: 'arc', radiusMm: 800, turn: 'left', angleDeg: 90 },
        { kind: 'straight', lengthMm: 2000 },
      ]),
    );
    const after = cured(scene, { kind: 'easement', chainage: 3.2, length: 0.3 });
    expect(track(after).alignment[1]).toEqual({ kind: 'transition', lengthMm: 300 });
    expect(trackLengthMm(track(after))).toBeCloseTo(trackLengthMm(track(scene)), 3);
    expect(endOf(after).heading).toBeCloseTo(endOf(scene).heading, 6);
  });

  it('does not apply without a change of curvature or without room', () => {
    expect(applyCure(sampleScene(), 'up', { kind: 'easement', chainage: 0.5, length: 0.3 })).toBeNull();
    expect(applyCure(sampleScene(), 'up', { kind: 'easement', chainage: 3, length: 2.5 })).toBeNull();
  });
});

describe('straight-between', () => {
  it('parts opposite curves and keeps length and heading', () => {
    const after = cured(sampleScene(), { kind: 'straight-between', chainage: 3.1, length: 0.26 });
    expect(track(after).alignment.slice(1, 4)).toEqual([
      { kind: 'arc', id: 'first', radiusMm: 1000, turn: 'left', lengthMm: 870 },
      { kind: 'straight', lengthMm: 260 },
      { kind: 'arc', id: 'second', radiusMm: 1000, turn: 'right', lengthMm: 870 },
    ]);
    expect(endOf(after).heading).toBeCloseTo(0, 12);
  });

  it('takes from unequal curves what turns the same angle', () => {
    const scene = sceneOf(sampleWith('tracks.0.alignment.2.radiusMm', 500));
    const after = cured(scene, { kind: 'straight-between', chainage: 3, length: 0.3 });
    expect(track(after).alignment[1]).toMatchObject({ lengthMm: 800 });
    expect(track(after).alignment[3]).toMatchObject({ lengthMm: 900 });
    expect(endOf(after).heading).toBeCloseTo(endOf(scene).heading, 12);
  });

  it('makes a straight that is there longer', () => {
    const once = cured(sampleScene(), { kind: 'straight-between', chainage: 3, length: 0.2 });
    const twice = cured(once, { kind: 'straight-between', chainage: 3, length: 0.4 });
    expect(track(twice)).toEqual(track(cured(sampleScene(), { kind: 'straight-between', chainage: 3, length: 0.4 })));
    expect(applyCure(twice, 'up', { kind: 'straight-between', chainage: 3, length: 0.4 })).toBeNull();
  });

  it('does not apply where no opposite curves meet', () => {
    expect(applyCure(sampleScene(), 'up', { kind: 'straight-between', chainage: 2, length: 0.3 })).toBeNull();
  });
});

describe('change-working', () => {
  it('puts the other end ahead, and back', () => {
    const after = cured(sampleScene(), { kind: 'change-working' });
    expect(after.trials[0].leading).toBe('last');
    expect(cured(after, { kind: 'change-working' })).toEqual(sampleScene());
  });
});

describe('fewer-vehicles', () => {
  const names = (scene: Scene) => trainPlaces(scene, scene.trains[0]).map((place) => place.vehicle.name);

  it('takes off the end away from the engine', () => {
    const source = sampleWith('trains.0.vehicles', [
      { stock: 'engine' },
      { stock: 'coach', count: 2 },
      { stock: 'van' },
    ]);
    const scene = sceneOf({
      ...(source as object),
      stock: [...sample.stock, { ...sample.stock[1], id: 'van', name: 'Van' }],
      trials: [{ ...sample.trials[0], startMm: 1200 }],
    });
    expect(names(cured(scene, { kind: 'fewer-vehicles', by: 1 }))).toEqual(['Engine', 'Coach', 'Coach']);
    expect(names(cured(scene, { kind: 'fewer-vehicles', by: 2 }))).toEqual(['Engine', 'Coach']);
    expect(applyCure(scene, 'up', { kind: 'fewer-vehicles', by: 3 })).toBeNull();
  });

  it('leaves no count of one behind', () => {
    const after = cured(sampleScene(), { kind: 'fewer-vehicles', by: 1 });
    expect(after.trains[0].vehicles).toEqual([{ stock: 'engine' }, { stock: 'coach' }]);
  });

  it('takes the leading ones of a propelled train, and orders keep their vehicle', () => {
    const source = sampleWith('trains.0.vehicles', [{ stock: 'coach', count: 3 }, { stock: 'engine' }]);
    const trials = [{ ...sample.trials[0], startMm: 1200, orders: [{ atS: 0, setting: 0.5, vehicle: 4 }] }];
    const after = cured(sceneOf({ ...(source as object), trials }), { kind: 'fewer-vehicles', by: 2 });
    expect(names(after)).toEqual(['Coach', 'Engine']);
    expect(after.trials[0].orders[0].vehicle).toBe(2);
  });
});

describe('match-heads', () => {
  it('levels both heads of the joint and writes only their vehicles out', () => {
    const source = sampleWith('trains.0.vehicles', [
      { stock: 'engine' },
      { stock: 'coach', count: 2, headHeightOffMm: { front: 0.6, rear: -1 } },
    ]);
    const after = cured(sceneOf(source), { kind: 'match-heads', joint: 1 });
    expect(after.trains[0].vehicles).toEqual([
      { stock: 'engine' },
      { stock: 'coach', headHeightOffMm: { front: 0.6, rear: 0 } },
      { stock: 'coach', headHeightOffMm: { front: 0, rear: -1 } },
    ]);
    expect(applyCure(after, 'up', { kind: 'match-heads', joint: 1 })).toBeNull();
  });

  it('counts joints from the leading end and makes up for what the kind of vehicle is off', () => {
    const source = sampleWith('stock.1.headHeightOffMm', { rear: -0.8 });
    const scene = sceneOf({ ...(source as object), trials: [{ ...sample.trials[0], leading: 'last' }] });
    const after = cured(scene, { kind: 'match-heads', joint: 0 });
    const places = trainPlaces(after, after.trains[0]);
    expect(places[1].vehicle.rear.coupling.headHeight).toBeCloseTo(places[2].vehicle.front.coupling.headHeight, 12);
    expect(places[2].vehicle.rear.coupling.headHeight).toBeLessThan(places[1].vehicle.rear.coupling.headHeight);
  });

  it('does not apply to heads that match, nor to a joint that is not there', () => {
    expect(applyCure(sampleScene(), 'up', { kind: 'match-heads', joint: 0 })).toBeNull();
    expect(applyCure(sampleScene(), 'up', { kind: 'match-heads', joint: 2 })).toBeNull();
  });
});

describe('add-engine-weight', () => {
  it('adds it to the engine and to its driven wheels', () => {
    const after = cured(sampleScene(), { kind: 'add-engine-weight', by: 0.04 });
    expect(after.stock[0]).toMatchObject({ massG: 340, drive: { drivenMassG: 340 } });
    expect(after.stock[1]).toEqual(sampleScene().stock[1]);
  });

  it('writes the standard mass out where the file named none', () => {
    const { massG: _mass, ...engine } = { ...sample.stock[0], drive: {} };
    const scene = sceneOf(sampleWith('stock.0', engine));
    // NEM 302: 0.40 g for each of 120 mm.
    expect(cured(scene, { kind: 'add-engine-weight', by: 0.01 }).stock[0].massG).toBeCloseTo(58, 9);
  });
});

describe('setting', () => {
  it('makes the highest setting this, the others in proportion', () => {
    const orders = [
      { atS: 0, setting: 0.5 },
      { atS: 9, setting: 0.25 },
    ];
    const after = cured(sceneOf(sampleWith('trials.0.orders', orders)), { kind: 'setting', to: 0.8 });
    expect(after.trials[0].orders.map((order) => order.setting)).toEqual([0.8, 0.4]);
  });

  it('does not apply to a train that is told to stand', () => {
    const scene = sceneOf(sampleWith('trials.0.orders', [{ atS: 0, setting: 0 }]));
    expect(applyCure(scene, 'up', { kind: 'setting', to: 0.8 })).toBeNull();
  });
});

it('no cure applies to a trial that is not there', () => {
  expect(applyCure(sampleScene(), 'down', { kind: 'change-working' })).toBeNull();
});
