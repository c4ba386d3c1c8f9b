import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/core/findings/types.ts';
import {
  blamedSupports,
  jointFails,
  jointFailsHow,
  markedSupports,
  namedFinding,
  nearFinding,
  otherChainage,
  ringedJoint,
} from '../../../src/stage/view/subjects.ts';
import type { SessionState } from '../../../src/state/types.ts';
import { fallingHelix } from '../samples.ts';

const finding = (change: Partial<Finding>): Finding =>
  ({
    risk: 'override',
    verdict: 'fails',
    time: 1,
    frame: 50,
    chainage: 1.5,
    subject: 2,
    value: 0.0019,
    limit: 0.0015,
    margin: -0.0004,
    range: null,
    parts: [],
    causes: [],
    cures: [],
    ...change,
  }) as Finding;

const state = (findings: Finding[], change: Partial<SessionState> = {}): SessionState =>
  ({
    chosenFinding: null,
    chosenJoint: null,
    surveyed: null,
    tour: { presenting: false, told: true },
    result: { findings },
    trial: {
      trackId: 'spiral',
      train: { vehicles: Array.from({ length: 5 }) },
      path: { track: fallingHelix().track, reversed: true },
    },
    ...change,
  }) as unknown as SessionState;

const fails = finding({ causes: [{ kind: 'support-off', support: 5, departure: 0.0025 }] });
const near = finding({
  risk: 'buffer-lock',
  verdict: 'near',
  subject: 1,
  causes: [{ kind: 'support-off', support: 9, departure: 0.001 }],
});
const passes = finding({ risk: 'headroom', verdict: 'passes', subject: 0 });

describe('before an audience', () => {
  const shown = (told: boolean) => state([fails, near], { tour: { presenting: true, told } as SessionState['tour'] });

  it('no finding is named in small letters', () => {
    expect(namedFinding(shown(true))).toBeNull();
    expect(nearFinding(shown(true))).toBeNull();
  });

  it('nothing gives a covered verdict away', () => {
    expect(markedSupports(shown(true))).toHaveLength(1);
    expect(markedSupports(shown(false))).toHaveLength(0);
    expect(jointFails(shown(true), 2)).toBe(true);
    expect(jointFails(shown(false), 2)).toBe(false);
  });
});

describe('what the stage names', () => {
  it('is the gravest that fails until the person chooses another', () => {
    const all = [fails, near, passes];
    expect(namedFinding(state(all))).toBe(0);
    expect(namedFinding(state(all, { chosenFinding: 1 }))).toBe(1);
    expect(namedFinding(state(all, { chosenFinding: 2 }))).toBe(0);
    expect(namedFinding(state([near, passes]))).toBeNull();
  });

  it('is beside it the gravest near one', () => {
    expect(nearFinding(state([fails, near, passes]))).toBe(1);
    expect(nearFinding(state([fails, near, passes], { chosenFinding: 1 }))).toBeNull();
  });
});

describe('the ring', () => {
  it('lies on the chosen joint, else on the joint of what is named', () => {
    expect(ringedJoint(state([fails, near]))).toBe(2);
    expect(ringedJoint(state([fails, near], { chosenJoint: 3 }))).toBe(3);
    expect(ringedJoint(state([passes]))).toBeNull();
  });

  it('is on no joint that the train does not have', () => {
    expect(ringedJoint(state([fails], { chosenJoint: 4 }))).toBeNull();
    expect(ringedJoint(state([finding({ subject: 7 })]))).toBeNull();
    expect(ringedJoint(state([finding({ risk: 'headroom', subject: 1 })]))).toBeNull();
  });
});

describe('what is marked', () => {
  it('is only what a failing finding names', () => {
    expect(blamedSupports(state([fails, near]))).toEqual([{ trackId: 'spiral', support: 5 }]);
    expect(jointFailsHow(state([fails, near]), 2)).toEqual({ up: true, aside: false });
    expect(jointFailsHow(state([fails, near]), 1)).toEqual({ up: false, aside: false });
    expect(jointFailsHow(state([finding({ risk: 'buffer-lock', subject: 1 })]), 1)).toEqual({ up: false, aside: true });
  });
});

describe('otherChainage', () => {
  it('turns track chainage to path chainage and back', () => {
    const { trial } = state([]);
    if (trial === null) throw new Error('the sample has a trial');
    const length = trial.path.track.length;
    expect(otherChainage(trial, 1.5)).toBeCloseTo(length - 1.5, 12);
    expect(otherChainage(trial, otherChainage(trial, 1.5))).toBeCloseTo(1.5, 12);
  });
});
