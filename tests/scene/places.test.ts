import { describe, expect, it } from 'vitest';
import {
  elementCurvatures,
  elementStartsMm,
  placedSupports,
  placeMm,
  profileHeights,
  type SceneTrack,
  stripJointsMm,
  trackLengthMm,
} from '../../src/scene/index.ts';
import { sampleScene } from './sample.ts';

const track = (change: Partial<SceneTrack>): SceneTrack => ({ ...sampleScene().tracks[0], ...change });

describe('lengths of elements', () => {
  it('follow from what the file gives: length, angle or turns', () => {
    const starts = elementStartsMm(
      track({
        alignment: [
          { kind: 'straight', lengthMm: 500 },
          { kind: 'arc', radiusMm: 1000, turn: 'left', angleDeg: 90 },
          { kind: 'helix', radiusMm: 600, turn: 'right', turns: 2 },
          { kind: 'transition', lengthMm: 300 },
        ],
      }),
    );
    // A quarter of a circle of 1 m is 1570.796 mm; two turns of 600 mm are 7539.822 mm.
    expect(starts.map((mm) => Math.round(mm * 1e3) / 1e3)).toEqual([0, 500, 2070.796, 9610.619, 9910.619]);
  });
});

describe('ends of a transition', () => {
  it('take the curvature of their neighbours where the file leaves them open', () => {
    const bent = track({
      alignment: [
        { kind: 'transition', lengthMm: 300 },
        { kind: 'arc', radiusMm: 500, turn: 'left', angleDeg: 30 },
        { kind: 'transition', lengthMm: 300 },
        { kind: 'helix', radiusMm: 400, turn: 'right', turns: 1 },
        { kind: 'transition', lengthMm: 300 },
      ],
    });
    expect(elementCurvatures(bent, 0)).toEqual([0, 2]);
    expect(elementCurvatures(bent, 2)).toEqual([2, -2.5]);
    expect(elementCurvatures(bent, 4)).toEqual([-2.5, 0]);
  });

  it('are what the file says where it says so', () => {
    const bent = track({
      alignment: [{ kind: 'transition', lengthMm: 300, from: 'straight', to: { radiusMm: 250, turn: 'right' } }],
    });
    expect(elementCurvatures(bent, 0)).toEqual([0, -4]);
  });

  it('meet straight where two transitions both leave it open', () => {
    const bent = track({
      alignment: [
        { kind: 'transition', lengthMm: 300 },
        { kind: 'transition', lengthMm: 300 },
      ],
    });
    expect(elementCurvatures(bent, 0)).toEqual([0, 0]);
  });
});

describe('places', () => {
  it.each([
    [{ atMm: 1234 }, 1234],
    [{ at: { startOf: 'track' } }, 0],
    [{ at: { endOf: 'track', plusMm: -10 } }, 5990],
    [{ at: { startOf: 'first', plusMm: 5 } }, 2005],
    [{ at: { endOf: 'first' } }, 3000],
    [{ at: { endOf: 'nowhere' } }, Number.NaN],
  ])('%j', (place, mm) => {
    expect(placeMm(sampleScene().tracks[0], place)).toBe(mm);
  });

  it('joints come in order', () => {
    const joints = [{ at: { endOf: 'first' } }, { atMm: 100 }];
    expect(stripJointsMm(track({ stripJoints: joints }))).toEqual([100, 3000]);
  });
});

describe('heights', () => {
  it('come from heights and from grades counted from the point before', () => {
    const points = profileHeights(
      track({
        profile: [
          { atMm: 0, heightMm: 100 },
          { atMm: 2000, gradePercent: -2.5 },
          { at: { endOf: 'track' }, gradePercent: 1 },
        ],
      }),
    );
    expect(points).toEqual([
      { atMm: 0, heightMm: 100 },
      { atMm: 2000, heightMm: 50 },
      { atMm: 6000, heightMm: 90 },
    ]);
  });
});

describe('supports', () => {
  it('at even distances are counted from 1', () => {
    const placed = placedSupports(
      track({ supports: { everyMm: 1000, firstMm: 500, off: [{ support: 2, byMm: -3 }] } }),
    );
    expect(placed.map((one) => one.atMm)).toEqual([500, 1500, 2500, 3500, 4500, 5500]);
    expect(placed[1].offMm).toBe(-3);
    expect(placed.filter((one) => one.offMm !== 0)).toHaveLength(1);
  });

  it('stand where a list puts them', () => {
    const placed = placedSupports(track({ supports: [{ atMm: 0 }, { at: { startOf: 'first' }, offMm: 2 }] }));
    expect(placed).toEqual([
      { atMm: 0, offMm: 0 },
      { atMm: 2000, offMm: 2 },
    ]);
  });

  it('are none where the file gives none', () => {
    const { supports: _supports, ...bare } = sampleScene().tracks[0];
    expect(placedSupports(bare)).toEqual([]);
    expect(trackLengthMm(bare)).toBe(6000);
  });
});
