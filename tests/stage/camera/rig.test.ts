import { describe, expect, it } from 'vitest';
import { distance, type Vec3 } from '../../../src/core/math/vec3.ts';
import { eyeOf, type Look, lookBetween } from '../../../src/stage/camera/look.ts';
import { CameraRig, type Sights, turnHead } from '../../../src/stage/camera/rig.ts';

const start = lookBetween([3, 0, 1.5], [0, 0, 0.2], 0.42);
const cab = lookBetween([0, 0, 0.3], [1, 0, 0.3], 0.8);

class Things implements Sights {
  train: Vec3 = [0.5, 0.1, 0.2];
  subject = () => this.train;
  ride = (): Look | null => cab;
  eye = (azimuth: number) => lookBetween([2 * Math.cos(azimuth), 2 * Math.sin(azimuth), 0.7], [0, 0, 0.2], 0.6);
  down = () => ({ target: [0, 0, 0] as Vec3, azimuth: -Math.PI / 2, elevation: Math.PI / 2, height: 2, field: 0.14 });
  whole = () => 2;
}

function rigged(reduced = false): { rig: CameraRig; things: Things } {
  const things = new Things();
  return { rig: new CameraRig(start, things, () => reduced), things };
}

describe('CameraRig', () => {
  it('takes 600 ms from one camera to another', () => {
    const { rig } = rigged();
    rig.change('down', 1000);
    expect(rig.step(1000)).toBe(true);
    expect(distance(eyeOf(rig.look), eyeOf(start))).toBeLessThan(1e-9);
    expect(rig.step(1300)).toBe(true);
    expect(rig.step(1599)).toBe(true);
    expect(rig.step(1600)).toBe(false);
    expect(rig.look.elevation).toBe(Math.PI / 2);
  });

  it('cuts for those who want no motion', () => {
    const { rig } = rigged(true);
    rig.change('ride', 0);
    expect(rig.step(0)).toBe(false);
    expect(distance(eyeOf(rig.look), eyeOf(cab))).toBeLessThan(1e-9);
  });

  it('stops where it is when a hand takes hold of it', () => {
    const { rig } = rigged();
    rig.goTo({ ...start, target: [2, 2, 0] }, 0);
    rig.step(300);
    const half = rig.look;
    rig.turn(0, 0);
    expect(rig.step(400)).toBe(false);
    expect(rig.look).toEqual(half);
    expect(rig.touched).toBe(true);
  });

  it('keeps a moving train in the middle when it follows', () => {
    const { rig, things } = rigged();
    rig.change('follow', 0);
    rig.step(5000);
    things.train = [1.5, 0.4, 0.1];
    rig.step(5001);
    expect(rig.look.target).toEqual([1.5, 0.4, 0.1]);
  });

  it('turns about its target and stops short of the zenith', () => {
    const { rig } = rigged();
    rig.turn(0.3, 0);
    rig.step(0);
    expect(rig.look.azimuth).toBeCloseTo(start.azimuth + 0.3, 12);
    expect(rig.look.target).toEqual(start.target);
    rig.turn(0, 9);
    rig.step(0);
    expect(rig.look.elevation).toBeLessThan(Math.PI / 2);
  });

  it('zooms by shares and not beyond its bounds', () => {
    const { rig } = rigged();
    rig.zoom(0.5);
    rig.step(0);
    expect(rig.look.height).toBeCloseTo(start.height / 2, 12);
    for (let i = 0; i < 50; i++) rig.zoom(2);
    rig.step(0);
    expect(rig.look.height).toBeLessThanOrEqual(5);
  });

  it('pans by shares of the picture: half its height up moves the target half its height up on the screen', () => {
    const { rig } = rigged();
    rig.pan(0, 0.5);
    rig.step(0);
    expect(distance(rig.look.target, start.target)).toBeCloseTo(start.height / 2, 9);
    expect(rig.look.target[2]).toBeGreaterThan(start.target[2]);
  });

  it('does not leave the cab when the head is turned', () => {
    const { rig } = rigged(true);
    rig.change('ride', 0);
    rig.turn(0.7, 0.2);
    rig.step(0);
    expect(distance(eyeOf(rig.look), eyeOf(cab))).toBeLessThan(1e-9);
    expect(rig.look.azimuth).toBeCloseTo(cab.azimuth + 0.7, 12);
  });

  it('comes back from the plan to a walk, not to the zenith', () => {
    const { rig } = rigged(true);
    rig.change('down', 0);
    rig.step(0);
    rig.change('walk', 1);
    rig.step(1);
    expect(rig.look.elevation).toBeCloseTo(start.elevation, 12);
  });
});

describe('turnHead', () => {
  it('narrows the angle of view without moving the eye', () => {
    const near = turnHead(cab, 0, 0, 0.5);
    expect(near.field).toBeCloseTo(0.4, 12);
    expect(distance(eyeOf(near), eyeOf(cab))).toBeLessThan(1e-12);
  });
});
