import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { RiskId } from '../../../src/core/risks/types.ts';
import { riskScene } from '../../scene/sample.ts';
import { patience, type Solved, solve } from '../../sim/solved.ts';
import { along, angle, type Bend, pairAt } from './bodies.ts';
import { drawbars, pushed, stands } from './drawbars.ts';

/**
 * Every row of docs/mechanics/examples.md worked from the formulas printed in docs/mechanics/risks.md and the numbers of the scene, in plain arithmetic of
 * its own, and held against what is printed and against the finding.
 */
const page = readFileSync(new URL('../../../docs/mechanics/examples.md', import.meta.url), 'utf8');
const printed = new Map(
  [...page.matchAll(/^\| ([a-z-]+) \| ?([\d.]*) \| ([\d.]+) \|/gm)].map(([, risk, value, limit]) => [
    risk,
    { value, limit },
  ]),
);
const g = 9.80665;

const degrees = (rad: number): number => (rad * 180) / Math.PI;

function mostTurned(): number {
  const bends = [
    { length: 900, curvature: 0 },
    { length: 770, curvature: 1 / 490 },
  ];
  let most = 0;
  for (let s = 880; s < 1500; s += 1) {
    const { leading, trailing, from, to } = pairAt(bends, s, 186, 114.5, 2 * 18.5 + 0.8);
    const line = angle([from[0] - to[0], from[1] - to[1]]);
    for (const body of [leading, trailing]) most = Math.max(most, Math.abs(line - angle(body.ahead)));
  }
  return degrees(most);
}

function mostAside(): number {
  const turn = (14 * Math.PI * 1200) / 180;
  const bends = [
    { length: 1100, curvature: 0 },
    { length: turn, curvature: 1 / 1200 },
    { length: 30, curvature: 0 },
    { length: turn, curvature: -1 / 1200 },
    { length: 900, curvature: 0 },
  ];
  let most = 0;
  // Pivots of the default pocket, 8.5 mm behind the ends of the body; heads of buffers 6 mm beyond these.
  for (let s = 1150; s < 2000; s += 1) {
    const { leading, trailing } = pairAt(bends, s, 186, 114.5, 2 * 15 - 0.8);
    const [one, other] = [along(leading, 186, -129), along(trailing, 186, 129)];
    const across = (angle(leading.ahead) + angle(trailing.ahead)) / 2;
    const aside = -(one[0] - other[0]) * Math.sin(across) + (one[1] - other[1]) * Math.cos(across);
    most = Math.max(most, Math.abs(aside));
  }
  return most;
}

function stallNeed(): number {
  const steep = 0.046;
  const gradeAt = (s: number): number => steep * Math.min(1, Math.max(0, (s - 1200) / 400));
  const climb = (s: number, a: number): number =>
    [s + a / 2, s - a / 2].reduce((sum, at) => sum + Math.sin(Math.atan(gradeAt(at))) / 2, 0);
  const engine = 2456.6;
  const coaches = [0, 1, 2, 3].map((i) => engine - (183 + 20 + 0.8) - i * (246 + 20 + 0.8));
  const grade = g * (0.3 * climb(engine, 60) + coaches.reduce((sum, s) => sum + 0.15 * climb(s, 186), 0));
  return grade + 0.015 * 0.9 * g;
}

/** The last car of bars stands with its front bogie in the dip and its rear one on the slope: the bar's stop at its own end lifts the bogie until the tilt there is 1°. */
function barLifts(): number {
  const slope = Math.atan(0.032);
  // Pins 3 mm behind the end of a body of 246 on 186, 9.93 mm up a body that leans forward; bars of two reaches.
  const [beyond, up, bar, a] = [(246 - 186) / 2 - 3, 9.93, 2 * 14, 186];
  const lower = beyond * Math.sin(slope) + up * (1 - Math.cos(slope));
  const wanted = lower / bar + Math.sin(slope);
  return (wanted - Math.PI / 180) / ((1 + beyond / a) / bar + 1 / a);
}

/** What the drawbars of the long coach pull inward, by the forces that the run gives, less what speed throws out. */
function stringPull(solved: Solved): number {
  const { run } = solved;
  const steps = 300;
  // A clothoid of 300 mm as so many arcs.
  const eased = (up: boolean): Bend[] =>
    Array.from({ length: steps }, (_, i) => {
      const share = (i + 0.5) / steps;
      return { length: 300 / steps, curvature: (up ? share : 1 - share) / 450 };
    });
  const bends = [
    { length: 2400, curvature: 0 },
    ...eased(true),
    { length: (450 * Math.PI) / 2, curvature: 1 / 450 },
    ...eased(false),
    { length: 200, curvature: 0 },
  ];
  // Pins 3 mm behind the ends: engine of 120 on 60, coach of 246 on 196, wagon of 76 on 40.
  const shapes = [
    { a: 60, pin: 57 },
    { a: 196, pin: 120 },
    { a: 40, pin: 35 },
  ];
  const { drawn, trailed, joint, speed } = drawbars(solved, 'string-lining', bends, 0.03, 13.8, shapes);
  const inward = run.draftPeak[joint - 1] * Math.sin(drawn) - run.draftPeak[joint] * Math.sin(trailed);
  const thrown = (0.08 * speed ** 2) / 0.45;
  return inward - (thrown * 22) / 13.8;
}

/** A straight of 2200, 90° to the left on 450, a straight. */
const quarter: readonly Bend[] = [
  { length: 2200, curvature: 0 },
  { length: (450 * Math.PI) / 2, curvature: 1 / 450 },
  { length: 300, curvature: 0 },
];

interface Both {
  readonly value: number;
  readonly limit: number;
}

/** The one with least left. */
const worse = (all: readonly Both[]): Both => all.reduce((a, b) => (b.value / b.limit > a.value / a.limit ? b : a));

/** What presses an axle of the light wagon aside, and what tips it: it stands on the straight, and speed throws nothing out. */
function fold(solved: Solved): Both {
  // Bars of two reaches of 14; pins 3 mm behind the ends of coaches of 246 on 186, of a wagon of 76 on 40.
  const shapes = [
    { a: 186, pin: 120 },
    { a: 40, pin: 35 },
    { a: 186, pin: 120 },
  ];
  const bars = drawbars(solved, 'jack-knife', quarter, 0.025, 12, shapes);
  const loads = stands(bars, solved.run.buffPeak, 0.03, 0.025, 12, 40);
  return worse(
    ([1, -1] as const).flatMap((skew) =>
      pushed(bars, solved.run.buffPeak, shapes, skew).map((side, end) => ({
        value: Math.abs(side),
        limit: (loads[end] * 8.75) / 12,
      })),
    ),
  );
}

/** What presses the leading flange of a bogie of the light coach to the outer rail, half of the push on the bogie and what turns it round the curve, and what a quarter of what stands on the bogie bears. */
function climb(solved: Solved): Both {
  // Pivots of the default pocket, 8.5 mm behind the ends.
  const shapes = [
    { a: 40, pin: 29.5 },
    { a: 186, pin: 114.5 },
    { a: 40, pin: 29.5 },
  ];
  const bars = drawbars(solved, 'wheel-climb', quarter, 0.03, 9, shapes);
  const loads = stands(bars, solved.run.buffPeak, 0.058, 0.03, 9, 186);
  const thrown = ((0.058 / 2) * bars.speed ** 2) / 0.45;
  return worse(
    ([1, -1] as const).flatMap((skew) =>
      pushed(bars, solved.run.buffPeak, shapes, skew).map((left, end) => ({
        // To the right is outward here.
        value: loads[end] * 0.2 * ((0.72 * 16.5) / 34 + 0.47) + (thrown - left) / 2,
        limit: (loads[end] / 4) * nadal,
      })),
    ),
  );
}

const nadal = (Math.tan((70 * Math.PI) / 180) - 0.2) / (1 + 0.2 * Math.tan((70 * Math.PI) / 180));

interface Worked {
  readonly value?: (run: Solved) => number;
  readonly limit?: number;
  /** Both, where both follow from the run. */
  readonly worked?: (run: Solved) => Both;
  /** Unit of the page over that of the program. */
  readonly unit: number;
  /** How far the program's value and limit may lie below and above, and why. */
  readonly valueOff?: readonly [below: number, above: number];
  readonly limitOff?: readonly [below: number, above: number];
}

const mm = 1000;
const rows: Readonly<Partial<Record<RiskId, Worked>>> = {
  headroom: { value: () => 64, limit: 80 - 9 - 3 - 5, unit: mm },
  structure: { value: () => 40 / 2, limit: 19.5, unit: mm },
  parting: { value: () => 1.5, limit: 1.4, unit: mm },
  override: { value: () => 2.9, limit: 2.8, unit: mm },
  // The body's line is as long as it is in space, and frames miss the middle by up to 2 mm: 0.001 mm of rise.
  grounding: { value: () => (0.06 * 200) / 4 - (0.06 * 0.06 * 2500) / 8, limit: 1.8, unit: mm, valueOff: [0.001, 0] },
  // The frame is as long as it is in space: half of 1.9 % squared shorter in plan, twice over.
  'axle-lift': { value: () => (0.019 * 100) / 2, limit: 0.9, unit: mm, valueOff: [0.0001, 0] },
  // The bar gives by 0.0014 mm of its 28 under the 0.03 N that push it: 0.00005 mm of lift.
  'bar-lift': { value: barLifts, limit: 0.9, unit: mm, valueOff: [0.00006, 0.00006] },
  // Points of the track beside 5 mm apart err by 4.95²/8R, and what is swept is noted a step further: 0.0062 mm.
  passing: {
    value: () => 500 - (Math.sqrt(500 * 500 - 93 * 93) - 18),
    limit: 500 - Math.hypot(Math.sqrt(450 * 450 - 93 * 93) + 18, 123),
    unit: mm,
    valueOff: [0.0062, 0.0062],
    limitOff: [0.0062, 0.0062],
  },
  // Springs of 2 N/mm give by less than 0.05 mm, each of which turns a shank by 0.13° and moves heads by 0.11 mm; frames pass the worst place within some mm.
  'coupler-swing': { value: mostTurned, limit: 22, unit: degrees(1), valueOff: [0.01, 0] },
  'buffer-lock': { value: mostAside, limit: 6, unit: mm, valueOff: [0.01, 0] },
  // Springs drawn out by the pull set the last coach back by a millimetre on the curve: 0.1 mN.
  stall: { value: stallNeed, limit: 0.505, unit: 1, valueOff: [0.0003, 0.0003] },
  wheelspin: { value: () => 1.01 * 0.2 * 0.3 * g, limit: 0.2 * 0.3 * g, unit: 1 },
  overturning: {
    value: ({ run, worst }) => {
      const { frame } = worst('overturning');
      const speed = run.speed[frame * run.vehicles];
      return (0.18 * speed * speed) / 0.438;
    },
    limit: (0.18 * g * 8.75) / 40,
    unit: 1,
  },
  // On a grade, and with what the couplings lift and move from end to end.
  'string-lining': {
    value: stringPull,
    limit: (0.08 * g * 8.75) / 13.8,
    unit: 1,
    valueOff: [0.001, 0.001],
    limitOff: [0.04, 0.04],
  },
  // Left out: drawbars aslant climb less than the body they push, up to 3 % times 1 - cos 20° of a third of a newton by a lever of 1.4, 0.0008 N of 0.14.
  'jack-knife': { worked: fold, unit: 1, valueOff: [0.0001, 0.0001], limitOff: [0.006, 0.006] },
  'wheel-climb': { worked: climb, unit: 1, valueOff: [0.0002, 0.0002], limitOff: [0.006, 0.006] },
};

/** Arithmetic of two kinds agrees to this, relative. */
const rounding = 1e-6;

describe('the worked examples of the page', () => {
  it('are of every risk', () => {
    const names = [...printed.keys()].sort();
    expect(names).toEqual(Object.keys(rows).sort());
    expect(names).toHaveLength(16);
  });

  it.each(Object.entries(rows))('%s comes out as printed and as found', { timeout: patience }, async (name, row) => {
    const risk = name as RiskId;
    const run = await solve(riskScene(`${risk}.json`), 'fails');
    const found = run.worst(risk);
    const worked = row.worked?.(run) ?? { value: row.value?.(run) ?? Number.NaN, limit: row.limit ?? Number.NaN };
    const { value = '', limit = '' } = printed.get(risk) ?? {};
    const half = (text: string): number => 0.5 * 10 ** -(text.split('.')[1]?.length ?? 0) * (1 + 1e-9);
    expect(value).not.toBe('');
    expect(Math.abs(Number(value) - worked.value), String(worked.value)).toBeLessThanOrEqual(half(value));
    expect(Math.abs(Number(limit) - worked.limit), String(worked.limit)).toBeLessThanOrEqual(half(limit));
    const within = (told: number, by: number, [below, above]: readonly [number, number]): void => {
      expect(told).toBeGreaterThanOrEqual(by - below - rounding * by);
      expect(told).toBeLessThanOrEqual(by + above + rounding * by);
    };
    const [below, above] = row.limitOff ?? [0, 0];
    const relative = risk === 'passing' ? 1 : worked.limit;
    within(found.limit * row.unit, worked.limit, [below * relative, above * relative]);
    within(found.value * row.unit, worked.value, row.valueOff ?? [0, 0]);
    expect(worked.value).toBeGreaterThan(worked.limit);
  });
});
