import { describe, expect, it } from 'vitest';
import { collectFindings } from '../../../src/core/findings/index.ts';
import type { Finding } from '../../../src/core/findings/types.ts';
import { assessRun } from '../../../src/core/risks/index.ts';
import type { RiskId } from '../../../src/core/risks/types.ts';
import { arc, straight } from '../../../src/core/track/index.ts';
import { sampleTrack } from '../stock/samples.ts';
import { along, engine, van } from './samples.ts';

/** A light van next to the engine and five heavy ones behind it, from the straight into a curve of 600 mm. */
const track = sampleTrack([straight(2), arc(0.6, 3)]);
const light = van({}, { name: 'Light van', mass: 0.03 });
const heavy = van({}, { mass: 0.3 });
const loaded = [light, heavy, heavy, heavy, heavy, heavy];
const pulled = [engine(), ...loaded];
const pushed = [...loaded].reverse().concat(engine());

function findingsOf(force: number, propelled: boolean): Finding[] {
  const context = along(track, propelled ? pushed : pulled, { force }, { from: 2.6, to: 4.6, step: 0.05, propelled });
  return collectFindings(assessRun(context), context);
}
const first = (risk: RiskId, force: number): Finding => {
  const found = findingsOf(force, force < 0).find((finding) => finding.risk === risk);
  if (found === undefined) throw new Error(`no finding of ${risk}`);
  return found;
};

describe('a light vehicle in front of heavy ones', () => {
  it('string-lines to the inside, for the curve and the pull of its couplings', () => {
    const finding = first('string-lining', 1);
    expect(finding.verdict).toBe('fails');
    expect(finding.subject).toBe(1);
    expect(finding.governing).toBe('inner-rail');
    expect(finding.causes).toEqual([
      { kind: 'curve', radius: expect.closeTo(0.6, 9) },
      { kind: 'draft', force: 1, sudden: false },
    ]);
  });

  it('is helped by fewer vehicles behind it, as many as bring the pull down, or by pushing', () => {
    const { value, limit, cures } = first('string-lining', 1);
    expect(cures.map(({ kind }) => kind).sort()).toEqual(['change-working', 'fewer-vehicles']);
    const by = cures.flatMap((cure) => (cure.kind === 'fewer-vehicles' ? [cure.by] : []))[0];
    // Five of 0.3 kg and, where the pull is that of the joint in front of it, its own 0.03 kg; four fifths of the limit at the most.
    const left = (dropped: number) => Math.max((1.5 - 0.3 * dropped) / 1.5, (1.53 - 0.3 * dropped) / 1.53);
    expect(value * left(by)).toBeLessThanOrEqual(0.81 * limit);
    expect(value * left(by - 1)).toBeGreaterThan(0.79 * limit);
  });

  it('jack-knifes to the outside when pushed as hard, and pulling is named', () => {
    const finding = first('jack-knife', -1);
    expect(finding.verdict).toBe('fails');
    expect(finding.subject).toBe(5);
    expect(finding.governing).toBe('outer-rail');
    expect(finding.causes.map(({ kind }) => kind)).toEqual(['curve', 'buff']);
    expect(finding.cures).toContainEqual({ kind: 'change-working' });
  });

  it.each([
    [1, 'inner-rail', 'draft'],
    [-1, 'outer-rail', 'buff'],
  ] as const)('climbs a rail with its flange under %f N', (force, rail, load) => {
    const finding = first('wheel-climb', force);
    expect(finding.verdict).toBe('fails');
    expect(finding.governing).toBe(rail);
    expect(finding.causes.map(({ kind }) => kind)).toEqual(['curve', load]);
    expect(finding.cures.map(({ kind }) => kind)).toContain('fewer-vehicles');
  });

  it('passes under a tenth of that, and is told without cures', () => {
    for (const risk of ['string-lining', 'wheel-climb'] as const) {
      const finding = first(risk, 0.05);
      expect([risk, finding.verdict, finding.cures]).toEqual([risk, 'passes', []]);
    }
  });
});

describe('a flange pressed by the curve alone', () => {
  it('is blamed on the curve and offered nothing', () => {
    const short = engine({ rigidWheelbase: 0.008 });
    const context = along(track, [short], {}, { from: 2.6, to: 3, step: 0.05 });
    const finding = collectFindings(assessRun(context), context).find(({ risk }) => risk === 'wheel-climb');
    // 4 × 0.2 × (0.72 × 16.5/8 + 0.47) = 1.564 of 1.644.
    expect(finding?.verdict).toBe('near');
    expect(finding?.causes).toEqual([{ kind: 'curve', radius: expect.closeTo(0.6, 9) }]);
    expect(finding?.cures).toEqual([]);
  });
});
