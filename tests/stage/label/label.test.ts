import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crowdOf, leaderStart, placeLabel } from '../../../src/stage/label/placing.ts';
import { scaleBar } from '../../../src/stage/label/scaleBar.ts';
import { gradeWords, lengthWords, shortHeadline, titleWords, turnWords } from '../../../src/stage/label/words.ts';
import type { SessionState } from '../../../src/state/types.ts';
import { fallingHelix } from '../samples.ts';

const frame = { left: 12, top: 12, width: 700, height: 340 };
const size = { width: 130, height: 54 };
const bare = { boxes: [], leaders: [] };

describe('placeLabel', () => {
  it('stays inside the stage for every place in it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 12, max: 712 }), fc.integer({ min: 12, max: 352 }), (x, y) => {
        const spot = placeLabel({ x, y }, size, frame, bare, [], null);
        expect(spot.x - size.width / 2).toBeGreaterThanOrEqual(frame.left);
        expect(spot.x + size.width / 2).toBeLessThanOrEqual(frame.left + frame.width);
        expect(spot.y - size.height / 2).toBeGreaterThanOrEqual(frame.top);
        expect(spot.y + size.height / 2).toBeLessThanOrEqual(frame.top + frame.height);
      }),
    );
  });

  it('keeps off the title', () => {
    const title = { left: 10, top: 7, width: 320, height: 42 };
    const spot = placeLabel({ x: 160, y: 80 }, size, frame, { boxes: [title], leaders: [] }, [], null);
    const clear = spot.y - size.height / 2 >= 49 || spot.x - size.width / 2 >= 330;
    expect(clear).toBe(true);
  });

  it('leads no line through words that stand already, nor stands on a line that is drawn', () => {
    const anchor = { x: 300, y: 180 };
    const other = placeLabel(anchor, size, frame, bare, [], null);
    const box = { left: other.x - size.width / 2, top: other.y - size.height / 2, ...size };
    const from = leaderStart(anchor, box, size.height);
    const spot = placeLabel(anchor, size, frame, { boxes: [box], leaders: [{ from, to: anchor }] }, [], null);
    const own = { left: spot.x - size.width / 2, top: spot.y - size.height / 2, ...size };
    const start = leaderStart(anchor, own, size.height);
    /** Whether some point of a line, looked at finely, lies inside a box. */
    const runsThrough = (a: typeof from, inside: typeof box) =>
      Array.from({ length: 400 }, (_, i) => i / 400).some((share) => {
        const x = a.x + (anchor.x - a.x) * share - inside.left;
        const y = a.y + (anchor.y - a.y) * share - inside.top;
        return x > 1 && y > 1 && x < inside.width - 1 && y < inside.height - 1;
      });
    expect(runsThrough(start, box)).toBe(false);
    expect(runsThrough(from, own)).toBe(false);
  });

  it('keeps off the railway', () => {
    const anchor = { x: 360, y: 180 };
    const free = placeLabel(anchor, size, frame, bare, [], null);
    // A railway runs right through where the label would stand.
    const crowd = crowdOf([
      { x: free.x - 80, y: free.y },
      { x: free.x + 80, y: free.y },
    ]);
    const moved = placeLabel(anchor, size, frame, bare, crowd, null);
    expect(Math.hypot(moved.x - free.x, moved.y - free.y)).toBeGreaterThan(30);
  });

  it('keeps its place while that is still about as good', () => {
    const first = placeLabel({ x: 360, y: 180 }, size, frame, bare, [], null);
    const before = { x: first.x - 360, y: first.y - 180 };
    const next = placeLabel({ x: 364, y: 178 }, size, frame, bare, [], before);
    expect(next).toEqual({ x: 364 + before.x, y: 178 + before.y });
  });
});

describe('crowdOf', () => {
  it('marks a line at most its pitch apart and skips what is out of sight', () => {
    const marks = crowdOf([{ x: 0, y: 0 }, { x: 90, y: 0 }, null, { x: 0, y: 50 }]);
    const x = marks.filter((_, i) => i % 2 === 0);
    expect(x).toHaveLength(10);
    expect(Math.max(...x)).toBe(90);
  });
});

describe('scaleBar', () => {
  it.each([
    [200, 150, 'mm', 0.5],
    [240, 150, 'mm', 0.5],
    [700, 150, 'mm', 0.2],
    [5000, 150, 'mm', 0.02],
    [200, 150, 'in', 0.508],
  ] as const)('at %d px a metre with %d px of room in %s is %d m', (scale, room, unit, length) => {
    const bar = scaleBar(scale, room, unit);
    expect(bar.length).toBeCloseTo(length, 12);
    expect(bar.pixels).toBeCloseTo(length * scale, 9);
  });

  it('is true and fits its room at every scale', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.constantFrom('mm' as const, 'in' as const),
        (scale, unit) => {
          const { length, pixels } = scaleBar(scale, 150, unit);
          expect(pixels / length).toBeCloseTo(scale, 3);
          expect(pixels).toBeLessThanOrEqual(150.0001);
          expect(pixels).toBeGreaterThan(150 / 2.51);
        },
      ),
    );
  });
});

describe('words', () => {
  it.each([
    ['Joint 6 rides up at 7.42 m, at support 14.', 'Joint 6 rides up'],
    ['Buffers lock at joint 5 on the reverse curve at 3.92 m.', 'Buffers lock'],
    ['The train stalls on 1 in 40 at 5.1 m.', 'The train stalls'],
    ['Coach 3 strikes the deck above at 8.30 m.', 'Coach 3 strikes the deck above'],
  ])('"%s" is short "%s"', (headline, short) => {
    expect(shortHeadline(headline)).toBe(short);
  });

  it('shows lengths and grades in the person’s units', () => {
    expect(lengthWords(0.0019, { lengthUnit: 'mm' })).toBe('1.9\u2009mm');
    expect(lengthWords(0.0019, { lengthUnit: 'in' })).toBe('0.075\u2009in');
    expect(gradeWords(-0.0239, { gradeForm: 'percent' })).toBe('2.4\u2009%');
    expect(gradeWords(-0.025, { gradeForm: 'one-in' })).toBe('1 in 40');
  });

  it('counts the turns of a helix', () => {
    const trial = { path: { track: fallingHelix().track, reversed: false } } as NonNullable<SessionState['trial']>;
    expect(turnWords(trial, { lengthUnit: 'mm', gradeForm: 'percent' })).toBe('2 turns, R\u2009600\u2009mm');
  });

  it('says what is on the stage and at what moment', () => {
    const { track } = fallingHelix();
    const trial = { path: { track, reversed: false } } as NonNullable<SessionState['trial']>;
    const scene = { name: 'Sample' } as SessionState['scene'];
    const result = {} as SessionState['result'];
    expect(titleWords({ scene: null, trial: null, result: null, progress: null }, 0)).toBe('No railway is open');
    expect(titleWords({ scene, trial, result: null, progress: 0.2 }, 0)).toBe('As built, before the trial');
    expect(titleWords({ scene, trial, result, progress: null }, 38)).toBe('As built, with the trial at 38.0\u2009s');
  });
});
