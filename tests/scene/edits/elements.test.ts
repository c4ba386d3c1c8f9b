import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trackPoint } from '../../../src/core/track/index.ts';
import {
  easeJoin,
  elementStartsMm,
  insertElement,
  parseScene,
  placedSupports,
  placeMm,
  removeElement,
  type Scene,
  setEasement,
  setElement,
  splitElement,
  trackLengthMm,
} from '../../../src/scene/index.ts';
import { compileScene } from '../../../src/sim/index.ts';
import { sample, sampleScene, sceneOf } from '../sample.ts';

const line = (scene: Scene) => scene.tracks[0];
const endOf = (scene: Scene) => {
  const track = compileScene(scene).tracks.get('line');
  if (track === undefined) throw new Error('no track');
  return trackPoint(track, track.length);
};

describe('an element that is set', () => {
  it('takes what lies beyond along and keeps shares on itself; relative places stay relative', () => {
    const scene = sceneOf({
      ...sample,
      tracks: [{ ...sample.tracks[0], stripJoints: [{ atMm: 1000 }, { atMm: 2500 }, { at: { startOf: 'tail' } }] }],
      lineside: [
        {
          kind: 'wall',
          name: 'Wall',
          track: 'line',
          fromMm: 4000,
          toMm: 4500,
          side: 'left',
          distanceMm: 30,
          heightMm: 20,
        },
      ],
    });
    const longer = setElement(scene, 'line', 0, { lengthMm: 2400 });
    const joints = line(longer).stripJoints ?? [];
    // Half-way along the lead stays half-way; what lies beyond goes 400 mm further on.
    expect(joints.map((joint) => placeMm(line(longer), joint))).toEqual([1200, 2900, 4400]);
    expect(joints[2]).toEqual({ at: { startOf: 'tail' } });
    expect(longer.lineside?.[0]).toMatchObject({ fromMm: 4400, toMm: 4900 });
    // Start on the lead: 900 of 2000 becomes 1080 of 2400; arrival on the tail goes along.
    expect(longer.trials[0]).toMatchObject({ startMm: 1080, finishMm: 6300 });
    expect(line(longer).profile[2]).toEqual({ at: { endOf: 'track' }, heightMm: 80 });
    expect(parseScene(longer).ok).toBe(true);
  });

  it('keeps the angle of a curve when its radius changes, however its size was given', () => {
    const wider = setElement(sampleScene(), 'line', 1, { radiusMm: 1200 });
    expect(line(wider).alignment[1]).toMatchObject({ radiusMm: 1200, lengthMm: 1200 });
    const turned = setElement(setElement(sampleScene(), 'line', 1, { angleDeg: 60 }), 'line', 1, { radiusMm: 900 });
    expect(line(turned).alignment[1]).toEqual({ kind: 'arc', id: 'first', radiusMm: 900, turn: 'left', angleDeg: 60 });
  });

  it('makes a transition that named the old curve name the new one', () => {
    const scene = sceneOf({
      ...sample,
      tracks: [
        {
          ...sample.tracks[0],
          alignment: [
            { kind: 'straight', lengthMm: 3000 },
            { kind: 'transition', lengthMm: 300, to: { radiusMm: 700, turn: 'left' } },
            { kind: 'arc', radiusMm: 700, turn: 'left', angleDeg: 90 },
            { kind: 'straight', lengthMm: 3000 },
          ],
        },
      ],
    });
    expect(line(setElement(scene, 'line', 2, { radiusMm: 640 })).alignment[1]).toMatchObject({
      to: { radiusMm: 640, turn: 'left' },
    });
  });

  it('refuses in words what cannot be', () => {
    const scene = sampleScene();
    expect(() => setElement(scene, 'line', 0, { radiusMm: 500 })).toThrow(/lead is a straight and has no radius/);
    expect(() => setElement(scene, 'line', 0, { lengthMm: -3 })).toThrow(/needs a length of more than 0/);
    expect(() => setElement(scene, 'line', 9, { lengthMm: 3 })).toThrow(/4 elements; there is no number 10/);
    expect(() => setElement(scene, 'other', 0, { lengthMm: 3 })).toThrow(/There is no track "other"; there are line/);
  });

  it('says when the train no longer has room, and brings starts and arrivals inside', () => {
    const scene = sampleScene();
    const short = [0, 1].reduce(
      (sofar, index) => setElement(sofar, 'line', index, { lengthMm: 400 }),
      removeElement(removeElement(scene, 'line', 1), 'line', 1),
    );
    // 120 + 2 * 246 mm of bodies and their couplings: about 650 mm.
    expect(trackLengthMm(line(short))).toBe(800);
    const trial = short.trials[0];
    expect(trial.startMm ?? 700).toBeGreaterThan(640);
    expect(trial.finishMm ?? 800).toBeLessThanOrEqual(800);
    expect(parseScene(short).ok).toBe(true);
    expect(() => setElement(short, 'line', 1, { lengthMm: 210 })).toThrow(
      /Train is \d+(\.\d)? mm long and has no room/,
    );
  });

  it('spreads a row of supports anew: they keep their numbers, those beyond the end are gone', () => {
    const scene = sceneOf({
      ...sample,
      tracks: [
        {
          ...sample.tracks[0],
          supports: {
            everyMm: 300,
            off: [
              { support: 3, byMm: 1.5 },
              { support: 20, byMm: 1 },
            ],
          },
        },
      ],
    });
    const shorter = setElement(scene, 'line', 3, { lengthMm: 1500 });
    expect(placedSupports(line(shorter))).toHaveLength(19);
    expect(line(shorter).supports).toEqual({ everyMm: 300, off: [{ support: 3, byMm: 1.5 }] });
  });

  it('leaves the order of all places as it was, whatever the lengths', () => {
    const joints = [100, 1999, 2000, 2001, 2900, 3000, 3999, 4000, 5900].map((atMm) => ({ atMm }));
    const scene = sceneOf({ ...sample, tracks: [{ ...sample.tracks[0], stripJoints: joints }] });
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 3 }),
        fc.double({ min: 700, max: 9000, noNaN: true }),
        (index, lengthMm) => {
          const track = line(setElement(scene, 'line', index, { lengthMm }));
          const places = (track.stripJoints ?? []).map((joint) => joint.atMm ?? 0);
          places.slice(1).forEach((place, k) => {
            expect(place).toBeGreaterThan(places[k]);
          });
        },
      ),
    );
  });
});

describe('elements put in and taken out', () => {
  it('move what follows; a place at the join stays with what was before it', () => {
    const scene = sceneOf({
      ...sample,
      tracks: [{ ...sample.tracks[0], stripJoints: [{ atMm: 2000 }, { atMm: 2100 }] }],
    });
    const more = insertElement(scene, 'line', 1, { kind: 'straight', id: 'lead', lengthMm: 250 });
    expect(line(more).alignment.map(({ id }) => id)).toEqual(['lead', 'lead-2', 'first', 'second', 'tail']);
    expect(line(more).stripJoints).toEqual([{ atMm: 2000 }, { atMm: 2350 }]);
    const back = removeElement(more, 'line', 1);
    expect(line(back).alignment).toEqual(line(scene).alignment);
    expect(line(back).stripJoints).toEqual(line(scene).stripJoints);
  });

  it('turn places relative to what is gone into numbers, and drop what lay on it', () => {
    const scene = sceneOf({
      ...sample,
      tracks: [
        {
          ...sample.tracks[0],
          stripJoints: [{ at: { endOf: 'first', plusMm: -200 } }, { at: { endOf: 'first', plusMm: 500 } }],
        },
      ],
    });
    const without = removeElement(scene, 'line', 1);
    expect(line(without).stripJoints).toEqual([{ atMm: 2500 }]);
    expect(parseScene(without).ok).toBe(true);
  });

  it('stop at the last element, and at one in which another track begins', () => {
    const turnout = { hand: 'left', radiusMm: 900, gaugeMm: 16.5, crossing: { oneIn: 6 }, frontMm: 20, heelMm: 40 };
    const scene = sceneOf({
      ...sample,
      tracks: [
        sample.tracks[0],
        {
          id: 'loop',
          name: 'Loop',
          start: { branchOf: 'line', atMm: 4300, towards: 'end', turnout },
          alignment: [{ kind: 'straight', lengthMm: 500 }],
          profile: [{ at: { endOf: 'track' }, gradePercent: 0 }],
        },
      ],
    });
    expect(() => removeElement(scene, 'line', 3)).toThrow(/turnout of Loop lies in what is taken out of Line/);
    const moved = setElement(scene, 'line', 1, { lengthMm: 1100 });
    expect(moved.tracks[1].start).toMatchObject({ atMm: 4400 });
    const one = [1, 1, 1].reduce(
      (sofar, index) => removeElement(sofar, 'line', index),
      sceneOf({ ...sample, tracks: [{ ...sample.tracks[0] }] }),
    );
    expect(() => removeElement(one, 'line', 0)).toThrow(/one element only/);
  });
});

describe('an element split', () => {
  it('leaves the line where it is, and places counted from its end too', () => {
    const scene = sceneOf({
      ...sample,
      tracks: [
        { ...sample.tracks[0], stripJoints: [{ at: { endOf: 'first', plusMm: -100 } }, { at: { startOf: 'first' } }] },
      ],
    });
    const split = splitElement(scene, 'line', 2400);
    expect(line(split).alignment.slice(1, 3)).toEqual([
      { kind: 'arc', id: 'first', radiusMm: 1000, turn: 'left', lengthMm: 400 },
      { kind: 'arc', id: 'first-2', radiusMm: 1000, turn: 'left', lengthMm: 600 },
    ]);
    expect((line(split).stripJoints ?? []).map((joint) => placeMm(line(split), joint))).toEqual([2900, 2000]);
    expect(() => splitElement(scene, 'line', 2000)).toThrow(/nothing of Line to split/);
  });

  it('ends where it ended, transitions too', () => {
    const eased = easeJoin(sampleScene(), 'line', 1, 400);
    const before = endOf(eased);
    fc.assert(
      fc.property(fc.double({ min: 5, max: 5990, noNaN: true }), (atMm) => {
        fc.pre(elementStartsMm(line(eased)).every((start) => Math.abs(start - atMm) > 2));
        const after = endOf(splitElement(eased, 'line', atMm));
        // Half a nanometre from rounding to file numbers, over 6 m.
        expect(Math.hypot(after.x - before.x, after.y - before.y)).toBeLessThan(1e-8);
      }),
      { numRuns: 40 },
    );
  });
});

describe('an easement at a join', () => {
  it('keeps the length of the track and its direction beyond; made longer, shorter and taken out again', () => {
    const scene = sampleScene();
    const eased = easeJoin(scene, 'line', 1, 300);
    expect(line(eased).alignment.map((element) => element.kind)).toEqual([
      'straight',
      'transition',
      'arc',
      'arc',
      'straight',
    ]);
    for (const made of [eased, setEasement(eased, 'line', 1, 420), setEasement(eased, 'line', 1, 0)]) {
      expect(trackLengthMm(line(made))).toBeCloseTo(6000, 6);
      expect(endOf(made).heading).toBeCloseTo(endOf(scene).heading, 9);
      expect(line(made).stripJoints).toEqual([{ atMm: 1200 }]);
    }
    expect(line(setEasement(eased, 'line', 1, 0)).alignment).toEqual(line(scene).alignment);
  });

  it('says what is in the way', () => {
    const scene = sampleScene();
    expect(() => easeJoin(scene, 'line', 1, 2100)).toThrow(/takes 1050 mm of first, which is shorter/);
    expect(() => easeJoin(easeJoin(scene, 'line', 1, 300), 'line', 1, 300)).toThrow(/an easement at this join already/);
    expect(() => easeJoin(splitElement(scene, 'line', 1000), 'line', 1, 300)).toThrow(/Nothing bends at this join/);
    expect(() => setEasement(scene, 'line', 0, 300)).toThrow(/lead is no easement/);
  });
});
