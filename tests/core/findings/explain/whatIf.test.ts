import { describe, expect, it } from 'vitest';
import { supportErrors, withSupportMoved } from '../../../../src/core/findings/explain/supports.ts';
import { marginIf } from '../../../../src/core/findings/explain/whatIf.ts';
import { situationAt, trialOf } from '../../../../src/core/findings/situation.ts';
import { assessRun } from '../../../../src/core/risks/index.ts';
import type { RiskContext, Worst } from '../../../../src/core/risks/types.ts';
import { makeTrack, reverseTrack } from '../../../../src/core/track/index.ts';
import { along, ramp, van } from '../samples.ts';

const thin = van({ facingHeight: 0.0005, headHeightTolerance: 0 });
const worstOf = (context: RiskContext): Worst => {
  const found = assessRun(context).find(({ risk }) => risk === 'override')?.worst;
  if (found == null) throw new Error('nothing to say');
  return found;
};

describe('what would be', () => {
  it.each([false, true])(
    'with a support moved is what the moved track gives to the same run (reversed: %s)',
    (reversed) => {
      const high = ramp({ 10: 0.0025 });
      const context = along(high, [thin, thin], { force: -0.1 }, { reversed, step: 0.02 });
      const worst = worstOf(context);
      const situation = situationAt(trialOf(context), 'override', worst.frame, worst.subject);
      const profile = withSupportMoved(high.spec.profile, 10, -0.001);
      const changed = makeTrack({ ...high.spec, profile });
      const again: RiskContext = {
        ...context,
        path: { track: reversed ? reverseTrack(changed) : changed, reversed },
      };
      // Looking at every other of the frames about it can miss the new least by a little, never the other way.
      const exact = worstOf(again).margin;
      const expected = marginIf(situation!, { profile }, 0.25) ?? Number.NaN;
      expect(expected).toBeGreaterThan(worst.margin + 0.0001);
      expect(expected - exact).toBeGreaterThan(-1e-9);
      expect(expected - exact).toBeLessThan(2e-5);
    },
  );

  it('is unknown where such a track cannot be built', () => {
    const track = ramp({ 10: 0.0025 });
    const context = along(track, [thin, thin], { force: -0.1 }, { step: 0.05 });
    const worst = worstOf(context);
    const situation = situationAt(trialOf(context), 'override', worst.frame, worst.subject)!;
    const points = [
      { chainage: 0, height: 0 },
      { chainage: 1, height: 0.1, curve: { length: 4 } },
      { chainage: 6, height: 0 },
    ];
    expect(marginIf(situation, { profile: { points } }, 0.25)).toBeNull();
  });

  it('is without limit where the risk then says nothing', () => {
    const context = along(ramp({ 10: 0.0025 }), [thin, thin], { force: -0.1 }, { step: 0.05 });
    const worst = worstOf(context);
    const situation = situationAt(trialOf(context), 'override', worst.frame, worst.subject)!;
    const bar = van({ facingHeight: Number.POSITIVE_INFINITY });
    expect(marginIf(situation, { vehicles: [bar, bar] }, 0.25)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('supports out of line', () => {
  it('are measured from the line through their neighbours, the furthest out first', () => {
    // 2 mm, 5 mm, 4 mm in a row from 0: 5 mm stands 2 mm above the middle of 2 and 4.
    const errors = supportErrors(ramp({ 4: 0.002, 5: 0.005, 6: 0.004 }), (chainage) => Math.abs(chainage - 1.5) < 0.1);
    expect(errors).toEqual([{ support: 5, number: 5, chainage: 1.5, departure: expect.closeTo(0.002, 9) }]);
  });

  it('at an end are measured from the plan', () => {
    const errors = supportErrors(ramp({ 0: 0.003, 1: 0.003 }), (chainage) => chainage < 0.1);
    expect(errors).toEqual([{ support: 0, number: 0, chainage: 0, departure: 0.003 }]);
  });
});
