import { describe, expect, it } from 'vitest';
import { curveDragBand, forceDefaults, run, steadyRun } from '../../../src/core/dynamics/index.ts';
import type { ForceModel } from '../../../src/core/dynamics/types.ts';
import { wormLocks } from '../../../src/core/stock/index.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import { arc, makeTrack, straight } from '../../../src/core/track/index.ts';
import { at, engine, level, trial, wagon } from '../../core/dynamics/trains.ts';

const g = 9.80665;
const inch = 0.0254;
const dry = (coulomb: number) => ({ rolling: { coulomb, perSpeed: 0, breakaway: 1 } });

/** A car on bogies of 30 mm. */
const onBogies = { rigidWheelbase: 0.03 };

/** What a train of an engine and what it trails asks in a long curve on a grade, by the quasi-static pass. */
function climb(
  front: Vehicle,
  trailing: readonly Vehicle[],
  grade: number,
  radius: number,
  forces: Partial<ForceModel> = {},
) {
  const track = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [Number.isFinite(radius) ? arc(radius, 9 / radius) : straight(9)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: 9, height: 9 * grade },
      ],
    },
  });
  const input = trial(track, [front, ...trailing], [at(0, 1)], { forces: { flangeFriction: 0, ...forces } });
  const steady = steadyRun(input, { every: 0.05, setting: 1 });
  // A metre before the end, where the whole train stands in the curve.
  const last = steady.frames - 20;
  return { drawbar: steady.force[last * trailing.length]!, gripUse: steady.gripUse[last]! };
}

/** Resistance of one vehicle as a share of its weight. */
function resistance(
  grade: number,
  coulomb: number,
  radius = Number.POSITIVE_INFINITY,
  forces: Partial<ForceModel> = {},
): number {
  const front = engine(0.4, { stallForce: 3, adhesion: 2 });
  return climb(front, [wagon(0.2, {}, { ...dry(coulomb), ...onBogies })], grade, radius, forces).drawbar / (0.2 * g);
}

/** Radius on which nominal curve drag of the wagon is this share of weight, m. */
const radiusOfDrag = (share: number) => curveDragBand(wagon(0.2, {}, onBogies), 1).nominal / share;

describe('a grade that a curve is worth, HO', () => {
  // "G + 28/R" and the older "G + 32/R", R in inches, per cent: cs.trains.com threads 287914 and 220453; common practice, measured
  // by one author on old wheels. Examples printed there: 3.56 % and 3.8 %. 2 + 32/18 is 3.778.
  it.each([
    [2, 18, forceDefaults.curveHighFactor.low, 3.56],
    [2, 18, forceDefaults.curveHighFactor.high, 3.778],
    [2.5, 24, forceDefaults.curveHighFactor.high, 3.83],
  ])('%f %% on %f in is worth the printed grade', (percent, radiusIn, curveHighFactor, printed) => {
    const forces = { curveHighFactor, curveDrag: 'high' as const };
    const share = resistance(percent / 100, 0, radiusIn * inch, forces);
    // Half of the last digit printed, and that a force is a sine and a grade a tangent: less than a thousandth of either.
    expect(Math.abs(share * 100 - printed)).toBeLessThan(0.005 + 0.001 * printed);
  });

  it('is near the full-size 0.04 % a degree on 22 in, which is 159.5 ft to scale or 35.9 degrees', () => {
    // forum.trains.com thread 126101; AREA 0.8 lb a short ton and degree, quoted on list.nwhs.org.
    const feet = (22 / 12) * 87.1;
    expect(feet).toBeCloseTo(159.5, 0);
    const { high } = curveDragBand(wagon(0.1), 22 * inch);
    expect(high * 100).toBeCloseTo(0.04 * 35.9, 1);
  });
});

/**
 * Greatest mass that so many like engines take up a grade, whole tons: a short ton is a gram here and a pound 1/2000 gf. `pounds` is what each
 * engine's motor gives, `tons` its mass, `rolling` the drag of the train in pounds a ton; engines roll as `own` says.
 */
function greatestTons(
  count: number,
  pounds: number,
  tons: number,
  grade: number,
  rolling: number,
  own: number,
): number {
  const gramForce = g / 1000;
  const front = engine(
    tons / 1000,
    { stallForce: (pounds / 2000) * gramForce, adhesion: 3 },
    {},
    { ...dry(own / 2000), ...onBogies },
  );
  const passes = (mass: number) => {
    const train = [...new Array<Vehicle>(count).fill(front), wagon(mass / 1000, {}, dry(rolling / 2000))];
    return steadyRun(trial(level(3, grade), train, [at(0, 1)]), { every: 0.2, setting: 1 }).outcome === 'arrived';
  };
  let [least, most] = [1, 4000];
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2);
    if (passes(middle)) least = middle;
    else most = middle;
  }
  return least;
}

describe('tonnage', () => {
  // US Army rail planning, TR0603 par. 2.11: an engine of 120 tons gives 36,000 lb less 20 lb a ton of itself, 0.80 of it for weather; rolling 7, grade
  // 1.5 % or 30, curve of 10 degrees 8 lb a ton: 597.3, printed 598 short tons; two engines twice that, 1196.
  const drawbar = (36_000 - 20 * 120) * 0.8;

  it('of a 120-ton engine by the rail planning example: 598 short tons', () => {
    // The train's own resistance comes from the model, 2000 lb to the ton.
    const share = resistance(0.015, 7 / 2000, radiusOfDrag(8 / 2000));
    const tons = drawbar / (share * 2000);
    expect(tons / 597.3).toBeCloseTo(1, 3);
    expect(Math.ceil(tons)).toBe(598);
  });

  it('of two such engines: 1196, which is twice the rounded 598', () => {
    // The engine's own climb of 30 lb a ton is not in the example, so its motor gives that on top.
    const pounds = drawbar + 30 * 120;
    // Whole tons that pass: a grade's sine is a ten-thousandth less than its tangent.
    expect(Math.abs(greatestTons(1, pounds, 120, 0.015, 15, 0) - 597.3)).toBeLessThan(1);
    expect(Math.abs(greatestTons(2, pounds, 120, 0.015, 15, 0) - 2 * 597.3)).toBeLessThan(1);
    expect(1196 - greatestTons(2, pounds, 120, 0.015, 15, 0)).toBeLessThan(3);
  });

  // "212 numerical illustration", chestofbooks.com: 28,200 lb against 22.6 lb a ton on 1 % and 34.8 on 1.6 %; printed whole.
  it.each([
    [0.01, 2.6, 1248],
    [0.016, 2.8, 811],
  ])('of the textbook engine on a grade of %f is %f, engine and all', (grade, rolling, printed) => {
    const tons = 28_200 / (resistance(grade, rolling / 2000) * 2000);
    expect(Math.abs(tons - printed)).toBeLessThan(1);
  });

  it('of the textbook engine on 1 %, less its own 166 tons, is 1082', () => {
    expect(Math.abs(greatestTons(1, 28_200, 166, 0.01, 2.6, 2.6) - 1082)).toBeLessThan(1.5);
  });
});

describe('the 00 rule of coaches', () => {
  // floor((F·N - W)/150), F = 19 gf, 1 in 50, three coaches reported (rmweb profile 11096; a garden railway's pull rig, December 2011). The
  // engine's mass is not given; 351 to 500 g gives three. The rule leaves rolling and curves out, and says so.
  const front = (rolling: number) =>
    engine(0.4, { drivenMass: 0.38, adhesion: 0.05, slidingAdhesion: 0.04, stallForce: 2 }, {}, dry(rolling));
  const outcome = (coaches: number, rolling: number) =>
    run(
      trial(
        level(7, 1 / 50),
        [front(rolling), ...new Array(coaches).fill(wagon(0.15, {}, dry(rolling)))],
        [at(0, 0.3, 20)],
        { script: { timeLimit: 40, finish: 2 } },
      ),
    ).outcome;

  it('holds where nothing rolls hard: three pass, four slip and slide back off the plank', () => {
    expect(Math.floor((19 * 50 - 400) / 150)).toBe(3);
    expect(outcome(3, 0)).toBe('arrived');
    expect(outcome(4, 0)).toBe('end-of-track');
  });

  it('promises too much as soon as they roll like models: at 1.5 % not even one goes up', () => {
    expect(outcome(1, 0.015)).toBe('stalled');
  });
});

describe('a helix of 505 mm, 1 in 39.7, an engine of 290 g that grips 34 gf and coaches of 150 g', () => {
  // Worked by hand: coaches = (34/(c + G + k) - 290)/150 with c = 1.5 %, k nothing, 0.5 %, or 32/R(in) = 1.61 %.
  it.each([
    ['without curve drag', { curveFactor: 0 }, 3.7],
    ['at the low edge', { curveDrag: 'low' as const }, 3.08],
    ['at the high edge', { curveDrag: 'high' as const }, 2.09],
  ])('takes %s as many as by hand', (_name, forces, coaches) => {
    const share = resistance(1 / 39.7, 0.015, 0.505, forces);
    expect((34 / share - 290) / 150).toBeCloseTo(coaches, 1);
  });
});

describe('the greatest trailing mass of an engine of 300 g at 0.2 up 2.5 %', () => {
  // By hand: (0.2·300 - 300·(0.025 + k))/(0.02 + 0.025 + k), the engine itself rolling freely.
  it.each([
    ['on the straight', Number.POSITIVE_INFINITY, 1.167],
    ['on 600 mm at 32/R', 0.6, 0.827],
  ])('%s', (_name, radius, trailing) => {
    const front = engine(0.3, { adhesion: 0.2, stallForce: 4 }, {}, dry(0));
    const gripUse = (mass: number) =>
      climb(front, [wagon(mass, {}, dry(0.02))], 0.025, radius, { curveDrag: 'high' }).gripUse;
    expect(gripUse(trailing - 0.002)).toBeLessThan(1);
    expect(gripUse(trailing + 0.002)).toBeGreaterThan(1);
  });
});

describe('a worm', () => {
  it('cannot be driven back below a lead of arctan μ: 3.4 to 5.7 degrees for 0.06 to 0.10', () => {
    // unseel.com, worm gears; piclist 2006: up to 5 degrees locks, 5 to 11 doubtful, above 11 drives back.
    const degree = Math.PI / 180;
    expect(wormLocks(3.4 * degree, 0.06)).toBe(true);
    expect(wormLocks(3.5 * degree, 0.06)).toBe(false);
    expect(wormLocks(5.7 * degree, 0.1)).toBe(true);
    expect(wormLocks(5.8 * degree, 0.1)).toBe(false);
    for (const friction of [0.06, 0.1]) expect(wormLocks(11 * degree, friction)).toBe(false);
  });
});
