import { describe, expect, it } from 'vitest';
import { defaultRunOptions, run, runEnsemble, startRun } from '../../../src/core/dynamics/index.ts';
import type { Run, RunInput } from '../../../src/core/dynamics/types.ts';
import { at, engine, level, trial, wagon } from './trains.ts';

/** Slack, wheels that slip, blows and a reversal, for 12.345 s: the end falls between two frames. */
const loose = (frameBytes: number): RunInput =>
  trial(
    level(14),
    [engine(0.3, { stallForce: 3 }), ...Array.from({ length: 5 }, () => wagon(0.08, { slack: 0.004 }))],
    [at(0, 0.9, 0), at(4, 0, 0.2), at(6, -0.8, 0)],
    { script: { start: 3, timeLimit: 12.345 }, options: { frameBytes } },
  );

/** Columns of a run's frames. */
const columns = (one: Run) =>
  Object.entries(one).flatMap(([name, value]) => (value instanceof Float64Array ? [{ name, value }] : []));

const bytes = (one: Run) => columns(one).reduce((sum, { value }) => sum + value.byteLength, 0);

/** What is left of a run when only every so many frames are kept, and the last: peaks are the greatest since the frame kept before. */
function thinned(whole: Run, every: number): Run {
  const last = whole.frames - 1;
  const keep = Array.from({ length: Math.ceil(last / every) }, (_, q) => q * every).concat(last);
  const pick = (name: string, value: Float64Array) => {
    const wide = value.length / whole.frames;
    const rows = keep.map((f, q) =>
      Array.from({ length: wide }, (_, i) => {
        const since = Array.from(
          { length: q === 0 ? 1 : f - keep[q - 1]! },
          (_, back) => value[(f - back) * wide + i]!,
        );
        if (name === 'draftPeak') return Math.max(...since);
        return name === 'buffPeak' ? Math.min(...since) : since[0]!;
      }),
    );
    return Float64Array.from(rows.flat());
  };
  return {
    ...whole,
    ...Object.fromEntries(columns(whole).map(({ name, value }) => [name, pick(name, value)])),
    frames: keep.length,
    interval: every * whole.interval,
  };
}

describe('a run whose frames would take more room than they may', () => {
  const whole = run(loose(defaultRunOptions.frameBytes));
  const width = bytes(whole) / whole.frames;

  it('is long and lively enough to tell', () => {
    expect(whole.interval).toBe(defaultRunOptions.frameInterval);
    expect(whole.frames).toBe(619);
    expect(whole.time.at(-1)).toBeCloseTo(12.345, 9);
    const kinds = new Set(whole.events.map(({ kind }) => kind));
    for (const kind of ['slip', 'run-in', 'run-out', 'standstill', 'moving'] as const) expect(kinds).toContain(kind);
  });

  it.each([
    [619, 1],
    [618, 2],
    [400, 2],
    [311, 2],
    [310, 2],
    [309, 4],
    [156, 4],
    [155, 8],
    [100, 8],
    [20, 64],
    [7, 128],
  ])(
    'with room for %i frames keeps every frame or every so many, %i, to the bit, and all else as it was',
    (room, every) => {
      const short = run(loose(room * width));
      expect(short).toEqual(thinned(whole, every));
      expect(bytes(short)).toBeLessThanOrEqual(room * width);
    },
  );

  it('keeps three frames at least, however little room it is given', () => {
    const short = run(loose(0));
    expect(short.frames).toBe(3);
    expect(short).toEqual(thinned(whole, short.interval / whole.interval));
  });

  it('is the same in small goes as in one, and in an ensemble', () => {
    const input = loose(50 * width);
    const once = run(input);
    expect(once.interval).toBeCloseTo(16 * 0.02, 12);
    const stepper = startRun(input);
    while (!stepper.advance(0.007));
    expect(stepper.finish()).toEqual(once);
    expect(runEnsemble([input, input])).toEqual([once, once]);
  });

  it('is bounded for hours: 20 vehicles for two hours keep their 2 MB', () => {
    const twenty = [engine(0.6), ...Array.from({ length: 19 }, () => wagon(0.05, { slack: 0.001 }))];
    const hours = run(
      trial(level(5), twenty, [], { script: { timeLimit: 7200 }, options: { step: 0.02, frameBytes: 2e6 } }),
    );
    expect(hours.time.at(-1)).toBeCloseTo(7200, 6);
    expect(bytes(hours)).toBeLessThanOrEqual(2e6);
    expect(bytes(hours)).toBeGreaterThan(0.9e6);
  });
});
