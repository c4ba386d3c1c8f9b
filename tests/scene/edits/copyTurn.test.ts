import { describe, expect, it } from 'vitest';
import { copyTurn } from '../../../src/scene/edits/copyTurn.ts';
import { placedSupports, profileHeights, type SceneTrack, trackLengthMm } from '../../../src/scene/index.ts';
import { sampleScene } from '../sample.ts';

/** A metre, two turns of 600 mm radius that climb at 2 %, a metre. */
const turnMm = 2 * Math.PI * 600;
const helixed = (supports: SceneTrack['supports']) => {
  const scene = sampleScene();
  const track: SceneTrack = {
    id: 'line',
    name: 'Line',
    start: { xMm: 0, yMm: 0, headingDeg: 0 },
    alignment: [
      { kind: 'straight', lengthMm: 1000 },
      { kind: 'helix', id: 'helix', radiusMm: 600, turn: 'left', turns: 2 },
      { kind: 'straight', lengthMm: 1000 },
    ],
    profile: [
      { atMm: 0, heightMm: 0 },
      { at: { startOf: 'helix' }, heightMm: 0, verticalCurveLengthMm: 400 },
      { at: { endOf: 'helix' }, heightMm: 0.02 * 2 * turnMm, verticalCurveLengthMm: 400 },
      { at: { endOf: 'track' }, gradePercent: 0 },
    ],
    ...(supports && { supports }),
  };
  return { ...scene, tracks: [track] };
};

describe('one more turn of a helix', () => {
  it('climbs like the last one and takes all that follows along', () => {
    const [line] = copyTurn(helixed({ everyMm: 300 }), 'line', 1).tracks;
    expect(line.alignment[1]).toMatchObject({ id: 'helix', turns: 3 });
    expect(trackLengthMm(line)).toBeCloseTo(2000 + 3 * turnMm, 6);
    const heights = profileHeights(line);
    // By hand: 2 % of 3769.9 mm is 75.4 mm a turn.
    expect(heights.map(({ heightMm }) => Math.round(heightMm * 10) / 10)).toEqual([0, 0, 226.2, 226.2]);
    expect((heights[2].heightMm - heights[1].heightMm) / (heights[2].atMm - heights[1].atMm)).toBeCloseTo(0.02, 9);
    expect(line.profile[2].verticalCurveLengthMm).toBe(400);
  });

  it('brings its own supports out of a list, as planned', () => {
    const cut = 1000 + 1.5 * turnMm;
    const [line] = copyTurn(
      helixed([{ atMm: 500 }, { atMm: cut - 400, offMm: 2 }, { atMm: cut + 400 }]),
      'line',
      1,
    ).tracks;
    const placed = placedSupports(line);
    expect(placed.map(({ offMm }) => offMm)).toEqual([0, 2, 0, 0]);
    expect(placed[2].atMm).toBeCloseTo(cut - 400 + turnMm, 6);
    expect(placed[3].atMm).toBeCloseTo(cut + 400 + turnMm, 6);
  });

  it('needs a helix of a whole turn', () => {
    expect(() => copyTurn(helixed(undefined), 'line', 0)).toThrow('is no helix');
  });
});
