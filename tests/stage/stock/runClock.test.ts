import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnAt, frameAt } from '../../../src/stage/stock/runClock.ts';

const run = { frames: 4, interval: 0.02, time: Float64Array.from([0, 0.02, 0.04, 0.047]) };

describe('frameAt', () => {
  it.each([
    [-1, [0, 0]],
    [0, [0, 0]],
    [0.02, [1, 0]],
    [0.03, [1, 0.5]],
    [0.047, [3, 0]],
    [9, [3, 0]],
    [Number.NaN, [0, 0]],
  ])('at %d s', (time, [frame, share]) => {
    const at = frameAt(run, time);
    expect(at[0]).toBe(frame);
    expect(at[1]).toBeCloseTo(share, 9);
  });

  it('finds the way through a last frame that came early', () => {
    const [frame, share] = frameAt(run, 0.0435);
    expect(frame).toBe(2);
    expect(share).toBeCloseTo(0.5, 9);
  });

  it('never leaves the run', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true }), (time) => {
        const [frame, share] = frameAt(run, time);
        expect(frame).toBeGreaterThanOrEqual(0);
        expect(frame).toBeLessThan(run.frames);
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThan(1);
      }),
    );
  });
});

describe('columnAt', () => {
  it('takes its share between two frames', () => {
    const values = Float64Array.from([0, 10, 2, 20, 4, 40, 5, 50]);
    expect(columnAt(run, values, 2, 1, 0.03)).toBeCloseTo(30, 9);
    expect(columnAt(run, values, 2, 0, 1)).toBe(5);
  });
});
