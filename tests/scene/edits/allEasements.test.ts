import { describe, expect, it } from 'vitest';
import { trackPoint } from '../../../src/core/track/index.ts';
import { easementPlaces, parseScene, type Scene, setAllEasements } from '../../../src/scene/index.ts';
import { compileScene } from '../../../src/sim/index.ts';
import { bundledScene } from '../sample.ts';

const throat = bundledScene('10-rushbeck-throat.json');
const track = (scene: Scene, id: string) => {
  const found = scene.tracks.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no track ${id}`);
  return found;
};
const laid = (scene: Scene, id: string) => {
  const checked = parseScene(scene);
  if (!checked.ok) throw new Error(JSON.stringify(checked.problems));
  const made = compileScene(checked.scene).tracks.get(id);
  if (made === undefined) throw new Error(`no track ${id}`);
  return made;
};
const end = (scene: Scene, id: string) => {
  const made = laid(scene, id);
  return trackPoint(made, made.length);
};

describe('all easements of a track', () => {
  it('of an S with touching easements become what the scene has with that length', () => {
    // The scene lays the same two bends of 45 degrees on 300 and on 450 mm; its angles are rounded to 1e-5 degrees.
    const made = track(setAllEasements(throat, 'eased-300', 450), 'eased-300').alignment;
    const own = track(throat, 'eased-450').alignment;
    expect(made.map(({ kind }) => kind)).toEqual(own.map(({ kind }) => kind));
    made.forEach((one, k) => {
      const other = own[k];
      if (one.kind === 'transition' && other.kind === 'transition') expect(one.lengthMm).toBe(other.lengthMm);
      if (one.kind === 'arc' && other.kind === 'arc') expect(one.angleDeg).toBeCloseTo(other.angleDeg ?? Number.NaN, 4);
    });
  });

  it('keep every bend its angle: the far end still points where it did', () => {
    for (const lengthMm of [20, 137, 300, 460]) {
      // 1e-6 rad: angles of the file are written to 1e-4 degrees.
      expect(end(setAllEasements(throat, 'eased-300', lengthMm), 'eased-300').heading).toBeCloseTo(
        end(throat, 'eased-300').heading,
        5,
      );
    }
  });

  it('are laid where there were none; where one hand goes over into the other, two in one', () => {
    const made = track(setAllEasements(throat, 'bare', 200), 'bare');
    expect(made.alignment.map(({ kind }) => kind)).toEqual([
      'straight',
      'transition',
      'arc',
      'transition',
      'arc',
      'transition',
      'straight',
    ]);
    expect(easementPlaces(made).map(({ lengthMm, easements }) => [lengthMm, easements])).toEqual([
      [200, 1],
      [200, 2],
      [200, 1],
    ]);
    // The same line as the scene's own with two easements of 200 mm in the middle: both keep the turn of each bend.
    const again = setAllEasements(setAllEasements(throat, 'bare', 200), 'bare', 100);
    expect(easementPlaces(track(again, 'bare')).map(({ lengthMm }) => lengthMm)).toEqual([100, 100, 100]);
    expect(end(again, 'bare').heading).toBeCloseTo(end(throat, 'bare').heading, 5);
  });

  it('are refused where an element has no room, by its name', () => {
    // Bends of 45 degrees at 600 mm are 471 mm long: that is all the easement each can take, half at either end.
    expect(() => setAllEasements(throat, 'eased-300', 480)).toThrow(/no room/);
    expect(() => setAllEasements(throat, 'eased-300', 0)).toThrow(RangeError);
    expect(() => setAllEasements(bundledScene('09-foxglove-ramp.json'), 'ramp', 100)).toThrow(/Nothing bends/);
  });
});
