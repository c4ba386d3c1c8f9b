import { describe, expect, it } from 'vitest';
import { distance, type Vec3 } from '../../../src/core/math/vec3.ts';
import { eyeOf, type Look, lookBetween } from '../../../src/stage/camera/look.ts';
import { CameraRig, type Sights } from '../../../src/stage/camera/rig.ts';
import { lookOfView, viewOfRig } from '../../../src/stage/camera/tourView.ts';
import { fields } from '../../../src/stage/camera/viewpoints.ts';

const start = lookBetween([3, 0, 1.5], [0, 0, 0.2], fields.walk);

const sights: Sights = {
  subject: () => [0.5, 0.1, 0.2],
  ride: () => null,
  eye: (azimuth) => lookBetween([2 * Math.cos(azimuth), 2 * Math.sin(azimuth), 0.7], [0, 0, 0.2], fields.eye),
  down: () => ({ target: [0, 0, 0] as Vec3, azimuth: -Math.PI / 2, elevation: Math.PI / 2, height: 2, field: 0.14 }),
  whole: () => 2,
};
const rigged = (reduced = false) => new CameraRig(start, sights, () => reduced);
const found = { first: () => start, atLens: () => null };

/** Twice the rounding to a millimetre, for each of three axes at most half a millimetre. */
const rounded = 0.002;

const same = (a: Look, b: Look): void => {
  expect(distance(eyeOf(a), eyeOf(b))).toBeLessThan(rounded);
  expect(distance(a.target, b.target)).toBeLessThan(rounded);
  expect(a.field).toBeCloseTo(b.field, 2);
};

describe('what the stage shows', () => {
  it('taken into a tour is come back to, wherever the person had turned it', () => {
    const rig = rigged();
    rig.turn(0.7, -0.1);
    rig.zoom(0.4);
    rig.pan(0.2, 0.1);
    rig.step(0);
    const view = viewOfRig(rig, start, null);
    expect(view.kind).toBe('place');
    same(lookOfView(view, found, start) as Look, rig.look);
  });

  it('at eye height keeps its angle of view', () => {
    const rig = rigged(true);
    rig.change('eye', 0);
    rig.step(0);
    const view = viewOfRig(rig, start, null);
    expect(view).toMatchObject({ kind: 'place', fieldDeg: 34 });
    same(lookOfView(view, found, start) as Look, rig.look);
  });

  it('is the whole railway as long as nobody has turned it', () => {
    const rig = rigged();
    expect(viewOfRig(rig, start, null)).toEqual({ kind: 'whole' });
    rig.turn(0.2, 0);
    rig.step(0);
    expect(viewOfRig(rig, start, null).kind).toBe('place');
  });

  it('follows the train from the same side and as near', () => {
    const rig = rigged(true);
    rig.change('follow', 0);
    rig.turn(7, 0.1);
    rig.step(0);
    const view = viewOfRig(rig, start, 3);
    expect(view).toMatchObject({ kind: 'follow', joint: 3 });
    const look = lookOfView(view, found, start) as Look;
    // Written to a tenth of a degree and a millimetre.
    expect(Math.cos(look.azimuth - rig.look.azimuth)).toBeGreaterThan(Math.cos(0.001));
    expect(Math.abs(look.elevation - rig.look.elevation)).toBeLessThan(0.001);
    expect(Math.abs(look.height - rig.look.height)).toBeLessThan(0.001);
  });
});

describe('a flight', () => {
  const near: Look = { ...start, target: [1.5, 1.5, 0.1], azimuth: 2, height: 0.3 };

  it('is one smooth way: it begins and ends at rest, and no frame leaps', () => {
    const rig = rigged();
    rig.fly('walk', near, 0);
    const eyes: Vec3[] = [];
    for (let ms = 0; ms < 1500; ms += 10) {
      expect(rig.step(ms)).toBe(true);
      eyes.push(eyeOf(rig.look));
    }
    expect(rig.step(1500)).toBe(false);
    expect(rig.look).toEqual(near);
    eyes.push(eyeOf(rig.look));
    const steps = eyes.slice(1).map((eye, i) => distance(eye, eyes[i]));
    const mean = steps.reduce((sum, step) => sum + step) / steps.length;
    expect(steps[0]).toBeLessThan(mean / 20);
    expect(steps.at(-1)).toBeLessThan(mean / 20);
    // A cubic ease moves three times its mean at most; turning, drawing back and coming near add to it.
    expect(Math.max(...steps)).toBeLessThan(6 * mean);
  });

  it('draws back on the way between two places far from each other', () => {
    const rig = rigged(true);
    rig.fly('walk', near, 0);
    rig.step(0);
    const far = new CameraRig(rig.look, sights, () => false);
    far.fly('walk', { ...near, target: [-1.5, -1, 0.1] }, 0);
    far.step(750);
    expect(far.look.height).toBeGreaterThan(3 * near.height);
  });

  it('is a cut for those who want no motion', () => {
    const rig = rigged(true);
    rig.fly('walk', near, 0);
    expect(rig.step(0)).toBe(false);
    expect(rig.look).toEqual(near);
  });

  it('is broken off by a hand', () => {
    const rig = rigged();
    rig.fly('walk', near, 0);
    rig.step(700);
    const here = rig.look;
    rig.turn(0, 0);
    expect(rig.step(800)).toBe(false);
    expect(rig.look).toEqual(here);
  });
});
