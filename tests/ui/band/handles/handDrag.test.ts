import { describe, expect, it } from 'vitest';
import type { SceneTrack } from '../../../../src/state/routeEdits/index.ts';
import { handEdit } from '../../../../src/ui/band/handles/handDrag.ts';
import type { SectionHandle } from '../../../../src/ui/band/handles/sectionHandles.ts';

const track: SceneTrack = {
  id: 'line',
  name: 'Line',
  start: { xMm: 0, yMm: 0, headingDeg: 0 },
  alignment: [{ kind: 'straight', lengthMm: 4000 }],
  profile: [
    { atMm: 0, heightMm: 0 },
    { atMm: 2000, heightMm: 40, verticalCurveLengthMm: 400 },
    { atMm: 4000, gradePercent: 0 },
  ],
};
const point = { kind: 'point', index: 1, atMm: 2000, heightMm: 40, betweenMm: [0, 4000] } as const;
const last = { kind: 'point', index: 2, atMm: 4000, heightMm: 40, betweenMm: [2000, 4000] } as const;

describe('what a hand in the section makes', () => {
  it('takes a point given by its height to whole millimetres, and anywhere without snapping', () => {
    const up = { alongMm: 0, upMm: 3.37 };
    expect(handEdit(track, point, { ...up, snaps: true })).toMatchObject({ index: 1, change: { heightMm: 43 } });
    expect(handEdit(track, point, { ...up, snaps: false })).toMatchObject({ change: { heightMm: 43.37 } });
  });

  it('takes a point given by its grade to whole twentieths of a per cent', () => {
    // 21 mm over 2 m is 1.05 per cent.
    expect(handEdit(track, last, { alongMm: 0, upMm: 21.4, snaps: true })).toMatchObject({
      change: { gradePercent: 1.05 },
    });
  });

  it('keeps a point between its neighbours', () => {
    expect(handEdit(track, point, { alongMm: 9000, upMm: 0, snaps: true })).toMatchObject({ change: { atMm: 3990 } });
    expect(handEdit(track, point, { alongMm: -9000, upMm: 0, snaps: true })).toMatchObject({ change: { atMm: 10 } });
  });

  it('lengthens a vertical curve to both sides of its middle', () => {
    const curve: SectionHandle = {
      kind: 'curve',
      index: 1,
      side: -1,
      atMm: 1800,
      heightMm: 36,
      middleMm: 2000,
      change: 0.02,
      lengthMm: 400,
      byRadius: false,
    };
    const out = { alongMm: -50, upMm: 0, snaps: true };
    expect(handEdit(track, curve, out)).toMatchObject({ change: { verticalCurveLengthMm: 500 } });
    // Radius = length / change of grade: 500 mm / 0.02.
    expect(handEdit(track, { ...curve, byRadius: true }, out)).toMatchObject({
      change: { verticalCurveRadiusMm: 25_000 },
    });
  });

  it('sets a support by tenths of a millimetre', () => {
    const support = { kind: 'support', index: 3, atMm: 900, offMm: 0.5 } as const;
    expect(handEdit(track, support, { alongMm: 0, upMm: 1.234, snaps: true })).toEqual({
      kind: 'support',
      index: 3,
      offMm: 1.7,
    });
  });
});
