import { describe, expect, it } from 'vitest';
import { assessRun, type RiskId, riskById } from '../../../../src/core/risks/index.ts';
import type { Coupling, Vehicle } from '../../../../src/core/stock/types.ts';
import { makeTrack, straight, type Track } from '../../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../../stock/samples.ts';
import { madeUpTrial, passing } from '../samples.ts';

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
/** The least margin over a run whose frames stand 47 mm apart, and over the same frames each by itself. */
function leastOf(risk: RiskId, track: Track, vehicles: readonly Vehicle[]) {
  const moments = passing(0.6137, 1.5, 0.047, { extension: 0 });
  const whole = assessRun(madeUpTrial(track, vehicles, moments), [riskById(risk)])[0].worst;
  const single = moments.map(
    (moment) => assessRun(madeUpTrial(track, vehicles, [moment]), [riskById(risk)])[0].worst?.margin,
  );
  return { whole, frames: Math.min(...single.map((margin) => margin ?? Number.POSITIVE_INFINITY)) };
}

/** Six-coupled: 60 mm of rigid wheelbase. */
const engine = (axles = 3): Vehicle =>
  sampleVehicle({ pivotSpacing: 0.06, overhang: 0.025, bogies: false }, { kind: 'locomotive', axles });

describe('what lies between two frames', () => {
  // Statics of a stiff frame on a line with one break, the peak where an axle stands on it.
  it.each([
    ['a dip', 3, 0.02, 0.0003],
    ['a hump', 3, -0.02, 0.0006],
    // An inner axle of four on the break of a dip: 20 x 40 / 60 mm x 2 %.
    ['a dip, on four axles', 4, 0.02, 0.00026667],
  ])('is judged too: axles at %s (%i axles)', (_, axles, grade, lift) => {
    const { whole, frames } = leastOf('axle-lift', broken(grade), [engine(axles)]);
    expect(whole?.value).toBeCloseTo(lift, 7);
    expect(frames).toBeGreaterThan((whole?.margin ?? 0) + 0.000003);
  });

  it('for the underside: an overhang of 50 mm on a dip of 4 % loses 2 mm, the middle of 160 mm over a hump 1.6 mm', () => {
    const coach = sampleVehicle({ pivotSpacing: 0.16, overhang: 0.03, rearOverhang: 0.05 });
    const dip = leastOf('grounding', broken(0.04), [coach]);
    // The coach leans by up to 4 % and is 0.08 % shorter along the track.
    expect(Math.abs((dip.whole?.value ?? 0) - 0.002)).toBeLessThan(0.000002);
    expect(dip.frames).toBeGreaterThan((dip.whole?.margin ?? 0) + 0.0001);
    const hump = leastOf('grounding', broken(-0.04), [coach]);
    expect(Math.abs((hump.whole?.value ?? 0) - 0.0016)).toBeLessThan(0.000001);
    expect(hump.frames).toBeGreaterThan((hump.whole?.margin ?? 0) + 0.00001);
  });

  it('for stiff bars: two vans as one beam, its gears 122 and 22 mm out, hang by 144 x 100 / 244 mm x 2 % with a gear on the break', () => {
    const coupling: Partial<Coupling> = { kind: 'rigid-bar', freeTilt: 0 };
    const van = sampleVehicle({ pivotSpacing: 0.1, overhang: 0.02, coupling });
    const { whole, frames } = leastOf('bar-lift', broken(0.02), [van, van]);
    // Lifts are in proportion to levers taken at rail level: 0.15 %.
    expect(Math.abs((whole?.value ?? 0) / 0.00118033 - 1)).toBeLessThan(0.0015);
    expect(frames).toBeGreaterThan((whole?.margin ?? 0) + 0.00005);
  });

  it('for a frame that twists: cant up and down again over 60 mm each twists a frame of 60 mm most with an axle on its top', () => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(2)],
      profile: { points: [{ chainage: 0, height: 0 }] },
      cant: {
        points: [0.94, 1, 1.06].map((chainage) => ({ chainage, cant: chainage === 1 ? 0.09 : 0 })),
        lever: 0,
      },
    });
    const { whole, frames } = leastOf('axle-lift', track, [engine(2)]);
    // 0.09 x 17.5 mm between the rail heads, less 0.5 mm that the frame takes up.
    expect(whole?.value).toBeCloseTo(0.001075, 6);
    expect(frames).toBeGreaterThan((whole?.margin ?? 0) + 0.0001);
  });

  it('is the same whichever way the train goes, and nothing is added where no corner is passed', () => {
    const there = assessRun(madeUpTrial(broken(-0.02), [engine()], passing(0.6137, 1.5, 0.047)), [
      riskById('axle-lift'),
    ])[0];
    const back = assessRun(madeUpTrial(broken(-0.02), [engine()], passing(0.6137, 1.5, 0.047).reverse()), [
      riskById('axle-lift'),
    ])[0];
    expect(back.worst?.value).toBeCloseTo(there.worst?.value ?? Number.NaN, 9);
    expect(there.margins[3]).toBeCloseTo(0.0009, 12);
  });
});

describe('heads over a break of 3 % between two frames', () => {
  // Bodies of 150 mm between running points whose heads stand 40 mm beyond them, 9.9 mm up, shanks of 10 mm on pivots 10 mm inside. Plane geometry: one body lies level, the
  // other on the slope; the pivots are 20 mm apart, which is a quadratic for the second one's place; heads are a shank along the line of pivots in plan, each at its height over its own rails.
  const [grade, height, shank, overhang] = [0.03, 0.0099, 0.01, 0.04];
  const lean = Math.atan(grade);
  /** Height between heads, square to the bisector, with the sloping body's pivot so far along the slope from the break and the level body's so far along the level. */
  const apart = (alongSlope: number, alongLevel: number): number => {
    const x = alongSlope * Math.cos(lean) - height * Math.sin(lean) - alongLevel;
    const z = alongSlope * Math.sin(lean) + height * Math.cos(lean) - height;
    return (z - shank * grade) * Math.cos(lean / 2) - (x - 2 * shank) * Math.sin(lean / 2);
  };
  /** With the level body's front running point on the break, and the sloping one's pivot where the pivots are two shanks apart. */
  const levelPointOnBreak = (): number => {
    const pivot = overhang - shank;
    const half = pivot * Math.cos(lean) + height * Math.sin(lean);
    const rest =
      pivot * pivot +
      2 * height * height * (1 - Math.cos(lean)) +
      2 * pivot * height * Math.sin(lean) -
      4 * shank * shank;
    return apart(half + Math.sqrt(half * half - rest), pivot);
  };
  /** With the sloping body's rear running point on it. */
  const slopingPointOnBreak = (): number => {
    const pivot = shank - overhang;
    const x = pivot * Math.cos(lean) - height * Math.sin(lean);
    const z = pivot * Math.sin(lean) + height * Math.cos(lean) - height;
    return apart(pivot, x - Math.sqrt(4 * shank * shank - z * z));
  };
  const coupling: Partial<Coupling> = {
    pivotInset: shank,
    reach: shank,
    headHeight: height,
    release: Number.POSITIVE_INFINITY,
  };
  const car = sampleVehicle({ pivotSpacing: 0.15, overhang, coupling });
  const greatest = Math.max(Math.abs(levelPointOnBreak()), Math.abs(slopingPointOnBreak()));

  it('stand apart by change of grade times overhang, but for the lean of bodies', () => {
    expect(Math.abs(greatest - grade * overhang)).toBeLessThan((height / 2) * grade * grade + 1e-6);
  });

  it.each([
    ['override', -0.05],
    ['parting', 0.05],
  ] as const)('are told so for %s, with frames 47 mm apart', (risk, force) => {
    const moments = passing(0.6137, 1.6, 0.047, { extension: 0, force });
    const { worst } = assessRun(madeUpTrial(broken(grade), [car, car], moments), [riskById(risk)])[0];
    const single = moments.map(
      (moment) => assessRun(madeUpTrial(broken(grade), [car, car], [moment]), [riskById(risk)])[0].worst?.value ?? 0,
    );
    expect(Math.abs((worst?.value ?? 0) - greatest)).toBeLessThan(1e-8);
    expect(Math.max(...single)).toBeLessThan(greatest - 0.00005);
    const track = worst?.parts.find(({ label }) => label === 'track-geometry')?.value;
    expect(track).toBeCloseTo(worst?.value ?? Number.NaN, 9);
  });
});
