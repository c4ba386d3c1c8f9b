import { describe, expect, it } from 'vitest';
import { collectFindings } from '../../../src/core/findings/index.ts';
import { verdictOf } from '../../../src/core/findings/verdict.ts';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { Worst } from '../../../src/core/risks/types.ts';
import { helix, makeTrack } from '../../../src/core/track/index.ts';
import { along, engine, ramp, van } from './samples.ts';

const worst = (change: Partial<Worst>): Worst => ({
  frame: 0,
  subject: 0,
  chainage: 0,
  value: 0.001,
  limit: 0.003,
  margin: 0.002,
  range: null,
  parts: [],
  governing: 'facing',
  ...change,
});

describe('a verdict', () => {
  const override = riskById('override');

  it('fails below zero and not at it', () => {
    expect(verdictOf(override, worst({ margin: -1e-9 }))).toBe('fails');
    expect(verdictOf(override, worst({ margin: 0 }))).toBe('near');
  });

  it('is near under the risk’s own distance: 0.3 mm for heads', () => {
    expect(verdictOf(override, worst({ margin: 0.00029 }))).toBe('near');
    expect(verdictOf(override, worst({ margin: 0.00031 }))).toBe('passes');
  });

  it('is near under a quarter of the limit where that is less: stock with faces of 0.8 mm', () => {
    expect(verdictOf(override, worst({ margin: 0.00025, limit: 0.0008 }))).toBe('passes');
    expect(verdictOf(override, worst({ margin: 0.00019, limit: 0.0008 }))).toBe('near');
  });

  it('is near when tolerances could take all of it', () => {
    expect(verdictOf(override, worst({ margin: 0.0009, range: [-0.0001, 0.0019] }))).toBe('near');
  });
});

describe('findings', () => {
  // Heads 2.9 mm apart against faces of 3.0 mm, pushed by an engine that uses 95 % of its grip.
  const low = van({ headHeight: 0.007 });
  const context = along(
    ramp({}),
    [van(), low, engine()],
    { force: -0.1, railForce: 0.38, gripLimit: 0.4 },
    { from: 2, to: 3, propelled: true },
  );
  const found = collectFindings(assessRun(context), context);

  it('come in order of gravity, by margin over the risk’s plenty', () => {
    expect(found.map(({ risk, verdict }) => [risk, verdict])).toEqual([
      // 0.1 mm of 1.5 mm; 0.02/0.38 of 0.5; the swing is at rest.
      ['override', 'near'],
      ['wheelspin', 'near'],
      // Pushed with 0.1 N, flanges and weight hold with 0.98 and 0.99 of 0.7 in hand; the swing with 20 of 10 degrees.
      ['wheel-climb', 'passes'],
      ['jack-knife', 'passes'],
      ['coupler-swing', 'passes'],
    ]);
  });

  it('explain what fails or is near, and only name what passes', () => {
    expect(found[0].causes.length).toBeGreaterThan(0);
    expect(found[0].cures.length).toBeGreaterThan(0);
    expect(found[2].causes).toEqual([]);
    expect(found[2].cures).toEqual([]);
  });

  it('give time and frame of the least margin, and at most three cures', () => {
    for (const finding of found) {
      expect(finding.time).toBeCloseTo(finding.frame * 0.02, 12);
      expect(finding.cures.length).toBeLessThanOrEqual(3);
    }
  });

  it('are the same every time', () => {
    expect(collectFindings(assessRun(context), context)).toEqual(found);
  });
});

describe('headroom lost to a support', () => {
  // Helix of 600 mm with 60 mm a turn on a deck of 12 mm: 48 mm clear for a van of 45 mm. Support at every 300 mm.
  const spiral = (off: Readonly<Record<number, number>>) => {
    const turns = 3;
    const length = turns * 2 * Math.PI * 0.6;
    return makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [helix(0.6, turns)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: length, height: 0.06 * turns },
        ],
        strip: {
          supports: Array.from({ length: 38 }, (_, i) => ({ chainage: 0.3 * i, departure: off[i] ?? 0 })),
          hinges: [],
        },
      },
    });
  };
  const worstHeadroom = (off: Readonly<Record<number, number>>) => {
    const track = spiral(off);
    const surroundings = { tracks: [track], deckDepth: 0.012 };
    const context = along(track, [van()], {}, { from: 0.4, to: 4.5, step: 0.02, surroundings });
    return collectFindings(assessRun(context), context).filter(({ risk }) => risk === 'headroom')[0];
  };

  it('under the train is cured by lowering it', () => {
    const finding = worstHeadroom({ 5: 0.005 });
    expect(finding.verdict).toBe('fails');
    expect(finding.causes).toContainEqual({ kind: 'support-off', support: 5, departure: expect.closeTo(0.005, 9) });
    expect(finding.cures).toEqual([{ kind: 'set-support', support: 5, by: expect.closeTo(-0.005, 9) }]);
  });

  it('over the train, a turn further on, is cured by raising that one', () => {
    // One turn is 3.77 m: support 18 at 5.4 m lies over 1.63 m.
    const finding = worstHeadroom({ 18: -0.005 });
    expect(Math.abs(finding.chainage - 1.63)).toBeLessThan(0.2);
    expect(finding.cures).toEqual([{ kind: 'set-support', support: 18, by: expect.closeTo(0.005, 9) }]);
  });

  it('has no cure where the turns are simply too close', () => {
    expect(worstHeadroom({}).verdict).toBe('near');
    expect(worstHeadroom({}).cures).toEqual([]);
  });
});

describe('a ramp with seven bad supports', () => {
  it('makes four findings of a risk at the most', () => {
    const rough = Object.fromEntries(Array.from({ length: 7 }, (_, i) => [3 * i + 1, 0.006]));
    const thin = van({ facingHeight: 0.0006, headHeightTolerance: 0 });
    const context = along(ramp(rough), [thin, thin], { force: -0.1 });
    const found = collectFindings(assessRun(context), context).filter(({ risk }) => risk === 'override');
    expect(found.length).toBeLessThanOrEqual(4);
    expect(found.length).toBeGreaterThanOrEqual(1);
  });
});
