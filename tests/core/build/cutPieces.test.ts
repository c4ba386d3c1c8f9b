import { describe, expect, it } from 'vitest';
import { cutPieces, layOnSheets, type SheetOfWood } from '../../../src/core/build/index.ts';
import { arc, helix, makeTrack, straight, type TrackSpec, transition } from '../../../src/core/track/index.ts';

const sheet: SheetOfWood = { length: 2.44, width: 1.22, kerf: 0.003, longest: 0.6 };
const width = 0.07;

const lay = (elements: TrackSpec['elements'], points: TrackSpec['profile']['points'] = [{ chainage: 0, height: 0 }]) =>
  makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements, profile: { points } });

describe('the pieces of a strip', () => {
  it('are as few as the sheet allows and make up the whole track', () => {
    const track = lay([straight(5), arc(0.6, Math.PI), helix(0.5, -2.25)]);
    const pieces = cutPieces(track, width, sheet);
    // 5 m by 2.44 m: three. On 600 mm the outer edge, 635 mm, has a chord of 600 mm at 56.4°: four of 45°. On 500 mm 535 mm, 68.2°: 810° in twelve.
    expect(pieces.map(({ shape, count }) => [shape, count])).toEqual([
      ['straight', 3],
      ['sector', 4],
      ['sector', 12],
    ]);
    expect(pieces[0].blank).toEqual({ length: 5 / 3, width });
    expect(pieces[1].sector?.angle).toBeCloseTo(Math.PI / 4, 12);
    expect(pieces[2].sector?.angle).toBeCloseTo((4.5 * Math.PI) / 12, 12);
    expect(pieces[0].from).toBe(0);
    expect(pieces.at(-1)?.to).toBeCloseTo(track.length, 12);
    // The end of the track is no butt.
    expect(pieces.reduce((sum, { cuts }) => sum + cuts.length, 0)).toBe(3 + 4 + 12 - 1);
  });

  it('are longer on a grade by what the slope adds', () => {
    // 3-4-5: 4 m in plan are 5 m of board.
    const track = lay(
      [straight(4)],
      [
        { chainage: 0, height: 0 },
        { chainage: 4, height: 3 },
      ],
    );
    const [one] = cutPieces(track, width, { ...sheet, length: 6 });
    expect(one.blank.length).toBeCloseTo(5, 12);
  });

  it('tell butts that fall within a vertical curve', () => {
    const track = lay(
      [straight(2), straight(2)],
      [
        { chainage: 0, height: 0 },
        { chainage: 2.2, height: 0, curve: { length: 0.6 } },
        { chainage: 4, height: 0.045 },
      ],
    );
    expect(cutPieces(track, width, sheet).flatMap(({ cuts }) => cuts)).toEqual([{ chainage: 2, rounding: true }]);
  });

  it('of an easement are set out as a surveyor does, ordinate by ordinate', () => {
    // A clothoid 300 mm long to 600 mm: at its end x = L - L³/40R² and y = L²/6R - L⁴/336R³ (series of any surveying textbook), 298.13 and 24.85 mm,
    // heading L/2R = 0.25 rad. Its edges stand half a strip square to that.
    const [piece] = cutPieces(lay([transition(0.3, 0, 1 / 0.6)]), width, sheet);
    const [x, y] = [0.3 - 0.3 ** 3 / (40 * 0.36), 0.09 / 3.6 - 0.3 ** 4 / (336 * 0.6 ** 3)];
    const chord = Math.hypot(x, y);
    const ends = piece.ordinates?.[0] ?? [];
    const half = ends.length / 2;
    const [left, right] = [ends.slice(0, half), ends.slice(half)];
    // What the series leave out begins with L⁵/3456R⁴, 5e-6 m, and turns the chord by 1e-6 rad.
    // The chord turns by atan(y/x) from the first tangent: the start's edges stand aslant by that.
    const turned = Math.atan2(y, x);
    expect(left[0].along).toBeCloseTo((width / 2) * Math.sin(turned), 6);
    expect(left[0].left).toBeCloseTo((width / 2) * Math.cos(turned), 6);
    expect((left[half - 1].along + right[half - 1].along) / 2).toBeCloseTo(chord, 4);
    expect((left[half - 1].left + right[half - 1].left) / 2).toBeCloseTo(0, 12);
    expect(left[half - 1].left - right[half - 1].left).toBeCloseTo(width * Math.cos(0.25 - turned), 5);
  });

  it('do not come out of a sheet that is too small', () => {
    expect(() => cutPieces(lay([straight(1)]), 0.5, { ...sheet, width: 0.4 })).toThrow(/does not come out/);
  });
});

describe('pieces on sheets', () => {
  it('lie within the sheet and apart by the kerf, blanks but for alike sectors', () => {
    const track = lay([straight(5), arc(0.6, Math.PI), transition(0.4, 1 / 0.6, 0), straight(0.7), helix(0.5, 3)]);
    const pieces = cutPieces(track, width, sheet);
    const {
      pieces: laid,
      sheets,
      least,
    } = layOnSheets(
      pieces,
      pieces.map(({ from, to, count }) => (width * (to - from)) / count),
      sheet,
    );
    expect(laid).toHaveLength(pieces.reduce((sum, { count }) => sum + count, 0));
    expect(sheets).toBeGreaterThanOrEqual(least);
    for (const { of, x, y } of laid) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(x + pieces[of].blank.length).toBeLessThanOrEqual(sheet.length + 1e-12);
      expect(y + pieces[of].blank.width).toBeLessThanOrEqual(sheet.width + 1e-12);
    }
    for (const [i, a] of laid.entries()) {
      for (const b of laid.slice(i + 1)) {
        if (a.sheet !== b.sheet) continue;
        const [p, q] = [pieces[a.of], pieces[b.of]];
        const away = (u: number, long: number, v: number, other: number) => Math.max(v - (u + long), u - (v + other));
        const apart = Math.max(
          away(a.x, p.blank.length, b.x, q.blank.length),
          away(a.y, p.blank.width, b.y, q.blank.width),
        );
        if (a.of === b.of && a.x === b.x) expect(Math.abs(a.y - b.y)).toBeGreaterThan(p.pitch - 1e-12);
        else expect(apart).toBeGreaterThan(sheet.kerf - 1e-12);
      }
    }
  });

  it('take as many sheets as a carpenter counts', () => {
    // Strips 1.2 m long, 70 mm wide with 3 mm of saw: 16 across a sheet (16·73 - 3 = 1165), two columns: 32 a sheet. 33 take a second.
    const strips = (count: number) => ({
      ...cutPieces(lay([straight(1.2)]), width, sheet)[0],
      count,
    });
    expect(layOnSheets([strips(32)], [1.2 * width], sheet).sheets).toBe(1);
    expect(layOnSheets([strips(33)], [1.2 * width], sheet).sheets).toBe(2);
    // 36 of 0.084 m² are 3.02 m², more than the 2.98 m² of a sheet.
    expect(layOnSheets([strips(36)], [1.2 * width], sheet).least).toBe(2);
  });
});
