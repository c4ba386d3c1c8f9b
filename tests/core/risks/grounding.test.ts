import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import { turnVehicle, type Vehicle } from '../../../src/core/stock/index.ts';
import { helix, makeTrack, reverseTrack, straight, type Track } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle, variedElements, variedGrades } from '../stock/samples.ts';
import { madeUpTrial, passing } from './samples.ts';

const risk = riskById('grounding');
/** 160 mm between bogies, 30 mm beyond them in front and 50 mm behind, 4 mm over the rail. */
const coach = sampleVehicle({ pivotSpacing: 0.16, overhang: 0.03, rearOverhang: 0.05 });
/** Level for a metre, then a grade, with no curve between. */
const broken = (grade: number): Track =>
  sampleTrack(
    [straight(2)],
    [
      { chainage: 0, height: 0 },
      { chainage: 1, height: 0 },
      { chainage: 2, height: grade },
    ],
  );
const at = (track: Track, lead: number, vehicle: Vehicle = coach) =>
  assessRun(madeUpTrial(track, [vehicle], [{ lead }]), [risk])[0]?.worst;

describe('a coach on a strip that sags under its own weight', () => {
  it('has the rail rise under its overhang as the textbook beam does', () => {
    // Simple beam, y = -w·x·(L³ - 2L·x² + x³)/24EI with w/EI = 0.2 m⁻³, L = 0.8 m: 1.07 mm at the middle. Under a coach midway the running points
    // stand at 0.32 and 0.48 m and its longer end at 0.27 m, where 24EI·y/w is 0.1220 m⁴ x -1 and 0.1121 m⁴ x -1.
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(0.8)],
      profile: {
        points: [{ chainage: 0, height: 0 }],
        strip: {
          supports: [0, 0.8].map((chainage) => ({ chainage, departure: 0 })),
          hinges: [],
          sections: [{ from: 0, stiffness: 1, weight: 0.2 }],
        },
      },
    });
    expect(at(track, 0.4)?.value).toBeCloseTo(8.196e-5, 7);
  });
});

describe('a coach over a hump of 4 %', () => {
  it('comes down on it between its bogies: 4 % x 160 mm / 4 = 1.6 mm of 4 mm', () => {
    const worst = at(broken(-0.04), 1);
    // Both its own height and the underside's lean by 2 %, 0.02 % of 4 mm.
    expect(worst?.value).toBeCloseTo(0.0016, 6);
    expect(worst?.limit).toBeCloseTo(0.004, 5);
    expect(worst?.margin).toBeCloseTo(0.0024, 5);
    expect(worst?.governing).toBe('middle');
  });

  it('less where the hump is not midway: 40 mm from the rear bogie, 40 x 120 / 160 mm x 4 % = 1.2 mm', () => {
    // 160 mm along a lean of 4 % and less are shorter in plan by up to 4 % squared / 2, a micrometre of 1.2 mm.
    expect(Math.abs((at(broken(-0.04), 1.04)?.value ?? 0) - 0.0012)).toBeLessThan(0.000001);
  });

  it('grounds at 12 %', () => {
    // 12 % x 160 / 4 = 4.8 mm; on such a slope lengths along it and in plan differ by 0.4 %.
    expect(at(broken(-0.12), 1)?.margin).toBeLessThan(-0.0007);
  });
});

describe('a coach in a dip of 4 %', () => {
  it('with its front bogie at the break meets the rise with its front overhang: 4 % x 30 mm = 1.2 mm', () => {
    const worst = at(broken(0.04), 0.92);
    expect(worst?.value).toBeCloseTo(0.0012, 9);
    expect(worst?.governing).toBe('overhang');
  });

  it('with its rear bogie at the break meets the level behind with its rear overhang: 4 % x 50 mm = 2 mm', () => {
    const worst = at(broken(0.04), 1.08 - 0.00006);
    expect(worst?.value).toBeCloseTo(0.002, 5);
    expect(worst?.governing).toBe('overhang');
  });
});

describe('a coach on a vertical curve of 4 m', () => {
  const curve = (way: number): Track =>
    sampleTrack(
      [straight(4)],
      [
        { chainage: 0, height: 0 },
        { chainage: 2, height: 0, curve: { radius: 4 } },
        { chainage: 4, height: 0.2 * way },
      ],
    );

  it('on a summit its middle lies lowest: 160² / 8 x 4000 = 0.8 mm', () => {
    const worst = at(curve(-1), 1.95);
    // Steps of 24 mm along the body miss the top by 12 mm at most, 12² / 2 x 4000 mm; the curve is gentler by 1.5 x 5 % squared.
    expect(Math.abs((worst?.value ?? 0) - 0.0008)).toBeLessThan(0.00002);
    expect(worst?.governing).toBe('middle');
  });

  it('in a sag the longer overhang: 50 x (160 + 50) / 2 x 4000 = 1.3125 mm', () => {
    const worst = at(curve(1), 1.95);
    expect(Math.abs((worst?.value ?? 0) - 0.0013125)).toBeLessThan(0.00001);
    expect(worst?.governing).toBe('overhang');
  });
});

describe('where nothing grounds', () => {
  it('the whole underside is left on the level before a break', () => {
    expect(at(broken(-0.04), 0.7)?.margin).toBeCloseTo(0.004, 12);
  });

  it('there is nothing to say on one grade, in a helix or straight', () => {
    const climb = [
      { chainage: 0, height: 0 },
      { chainage: 2, height: 0.05 },
    ];
    expect(at(sampleTrack([straight(2)], climb), 1)).toBeUndefined();
    expect(at(sampleTrack([helix(0.5, 1)], climb), 1)).toBeUndefined();
  });

  it('but where supports bend the strip there is', () => {
    const strip = { supports: [0, 0.3, 0.6, 0.9].map((chainage) => ({ chainage, departure: 0 })), hinges: [] };
    const bent = (off: number) =>
      makeTrack({
        start: { x: 0, y: 0, heading: 0 },
        elements: [straight(0.9)],
        profile: {
          points: [{ chainage: 0, height: 0 }],
          strip: { ...strip, supports: strip.supports.map((one, i) => (i === 1 ? { ...one, departure: off } : one)) },
        },
      });
    expect(at(bent(0), 0.4)).toBeUndefined();
    expect(at(bent(0.002), 0.3)?.value).toBeGreaterThan(0.0001);
  });
});

describe('underside over a varied route', () => {
  const route = (radius: number) => sampleTrack(variedElements(radius), variedGrades);

  it('is the mirror image’s, and full on the first straight', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.55, max: 1.2, noNaN: true }), (radius) => {
        const track = route(radius);
        const mirrored = makeTrack({
          ...track.spec,
          elements: track.spec.elements.map((element) => ({
            ...element,
            startCurvature: -element.startCurvature,
            endCurvature: -element.endCurvature,
          })),
        });
        const margins = (one: Track) =>
          assessRun(madeUpTrial(one, [coach], passing(0.3, track.length - 0.2, 0.04)), [risk])[0].margins;
        const other = margins(mirrored);
        margins(track).forEach((margin, i) => {
          expect(other[i]).toBeCloseTo(margin, 9);
          expect(margin).toBeLessThanOrEqual(0.004);
        });
        // 0.8 % to 0.55 m: up[2] is 3e-5 short of 1.
        expect(margins(track)[0]).toBeCloseTo(0.004, 6);
      }),
      { numRuns: 10 },
    );
  });

  it('is the same for the coach turned on the track turned', () => {
    const track = route(0.8);
    for (let lead = 0.5; lead < 3.5; lead += 0.13) {
      const there = at(track, lead)?.value ?? Number.NaN;
      const back = at(reverseTrack(track), track.length - lead, turnVehicle(coach))?.value ?? Number.NaN;
      expect(back).toBeCloseTo(there, 9);
    }
  });
});
