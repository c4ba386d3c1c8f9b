import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { RiskId } from '../../../src/core/risks/types.ts';
import { riskScene } from '../../scene/sample.ts';
import { patience, type Solved, solve } from '../../sim/solved.ts';

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

type Point = readonly [x: number, y: number];
interface Bend {
  readonly length: number;
  readonly curvature: number;
}

/** A place on straights and arcs laid end to end from the origin along x, mm. */
function pointOn(bends: readonly Bend[], s: number): Point {
  let [x, y, heading, left] = [0, 0, 0, s];
  for (const [i, { length, curvature }] of bends.entries()) {
    const go = i + 1 === bends.length ? left : Math.min(left, length);
    if (curvature === 0) {
      x += go * Math.cos(heading);
      y += go * Math.sin(heading);
    } else {
      x += (Math.sin(heading + curvature * go) - Math.sin(heading)) / curvature;
      y += (Math.cos(heading) - Math.cos(heading + curvature * go)) / curvature;
    }
    heading += curvature * go;
    left -= go;
    if (left <= 0) break;
  }
  return [x, y];
}

const apart = ([a, b]: Point, [c, d]: Point): number => Math.hypot(a - c, b - d);

function bisect(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = (a + b) / 2;
    if (f(middle) > 0 === f(b) > 0) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

interface Body {
  readonly rear: Point;
  readonly ahead: Point;
}

const along = ({ rear, ahead }: Body, a: number, far: number): Point => [
  rear[0] + ahead[0] * (a / 2 + far),
  rear[1] + ahead[1] * (a / 2 + far),
];

/** A body of pivots `a` apart with its front pivot at s. */
function bodyAt(bends: readonly Bend[], s: number, a: number): Body {
  const front = pointOn(bends, s);
  const back = bisect((away) => apart(front, pointOn(bends, s - away)) - a, a * 0.9, a * 1.2);
  const rear = pointOn(bends, s - back);
  return { rear, ahead: [(front[0] - rear[0]) / a, (front[1] - rear[1]) / a] };
}

/** Two like bodies whose coupling pivots, `pin` from the middle of each, stand `between` apart; the front pivot of the leading one at s. */
function pairAt(bends: readonly Bend[], s: number, a: number, pin: number, between: number) {
  const leading = bodyAt(bends, s, a);
  const from = along(leading, a, -pin);
  const back = bisect(
    (away) => apart(from, along(bodyAt(bends, s - away, a), a, pin)) - between,
    2 * pin + between * 0.8,
    2 * pin + between * 1.3,
  );
  const trailing = bodyAt(bends, s - back, a);
  return { leading, trailing, from, to: along(trailing, a, pin) };
}

const degrees = (rad: number): number => (rad * 180) / Math.PI;
const angle = ([x, y]: Point): number => Math.atan2(y, x);

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

/** What the drawbars of the long coach pull inward, at the places and by the forces that the run gives, less what speed throws out. */
function stringPull({ run, worst }: Solved): number {
  const { frame, subject } = worst('string-lining');
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
  /** In plan, where a length along 3 % is less by half of 3 % squared: 0.08 mm of all that lies between two middles, of drawbars 28 long. */
  const level = Math.cos(Math.atan(0.03));
  /** Pins 13.8 mm up a body that leans back on the grade. */
  const lean = -13.8 * Math.sin(Math.atan(0.03));
  /** A body by the chainage midway between its pivots. */
  const body = (vehicle: number, a: number): Body => {
    const middle = run.chainage[frame * run.vehicles + vehicle] * 1000;
    const half = bisect((x) => apart(pointOn(bends, middle + x), pointOn(bends, middle - x)) - a, 0.45 * a, 0.6 * a);
    return bodyAt(bends, middle + half, a);
  };
  const coach = body(subject, 196 * level);
  // Pins 3 mm behind the ends: engine of 120 on 60, coach of 246 on 196, wagon of 76 on 40.
  const ahead = along(body(subject - 1, 60 * level), 60 * level, -57 * level + lean);
  const behind = along(body(subject + 1, 40 * level), 40 * level, 35 * level + lean);
  const [front, rear] = [along(coach, 196 * level, 120 * level + lean), along(coach, 196 * level, -120 * level + lean)];
  const drawn = angle([ahead[0] - front[0], ahead[1] - front[1]]) - angle(coach.ahead);
  const trailed = angle([rear[0] - behind[0], rear[1] - behind[1]]) - angle(coach.ahead);
  const joint = frame * (run.vehicles - 1) + subject;
  const inward = run.draftPeak[joint - 1] * Math.sin(drawn) - run.draftPeak[joint] * Math.sin(trailed);
  const thrown = (0.08 * run.speed[frame * run.vehicles + subject] ** 2) / 0.45;
  return inward - (thrown * 22) / 13.8;
}

const nadal = (Math.tan((70 * Math.PI) / 180) - 0.2) / (1 + 0.2 * Math.tan((70 * Math.PI) / 180));

interface Worked {
  /** As worked; left out where the page works no value. */
  readonly value?: (run: Solved) => number;
  readonly limit: number;
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
  'jack-knife': { limit: ((0.03 * g) / 2) * (8.75 / 12), unit: 1, limitOff: [0.04, 0.04] },
  'wheel-climb': { limit: ((0.058 * g) / 8) * nadal, unit: 1, limitOff: [0.04, 0.04] },
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
    const { value = '', limit = '' } = printed.get(risk) ?? {};
    const half = (text: string): number => 0.5 * 10 ** -(text.split('.')[1]?.length ?? 0) * (1 + 1e-9);
    expect(Math.abs(Number(limit) - row.limit)).toBeLessThanOrEqual(half(limit));
    const within = (told: number, worked: number, [below, above]: readonly [number, number]): void => {
      expect(told).toBeGreaterThanOrEqual(worked - below - rounding * worked);
      expect(told).toBeLessThanOrEqual(worked + above + rounding * worked);
    };
    const [below, above] = row.limitOff ?? [0, 0];
    const relative = risk === 'passing' ? 1 : row.limit;
    within(found.limit * row.unit, row.limit, [below * relative, above * relative]);
    if (row.value === undefined) {
      expect(value).toBe('');
      return;
    }
    const worked = row.value(run);
    expect(Math.abs(Number(value) - worked)).toBeLessThanOrEqual(half(value));
    within(found.value * row.unit, worked, row.valueOff ?? [0, 0]);
    expect(worked).toBeGreaterThan(row.limit);
  });
});
