import { describe, expect, it } from 'vitest';
import {
  coarsePitches,
  type Instrument,
  type Reading,
  type SurveyInput,
  usualLimits,
  workSurvey,
} from '../../../src/core/survey/index.ts';
import { makeTrack, straight, type Track, trackPoint } from '../../../src/core/track/index.ts';
import { mend } from '../../../src/sim/survey/index.ts';

const laser: Instrument = { id: 'line', deviation: 0.0003, step: 0.0005, zero: 0 };
const level: Instrument = { id: 'level', deviation: 0.0005, step: 0.001, zero: 0 };

const height = (support: number, value: number): Reading => ({
  kind: 'height',
  name: `height ${support + 1}`,
  instrument: 'line',
  at: { support },
  height: Math.round(value / 0.0005) * 0.0005,
  line: null,
});

const m8 = { kind: 'nut', thread: 'M8', pitch: coarsePitches.M8 } as const;

const taskFor = (input: SurveyInput) => ({
  objective: 'fewest' as const,
  limits: usualLimits(input),
  adjuster: m8,
  locked: [],
  pairs: [],
});

describe('a ramp of 2.2 % on rods 275 mm apart with rod 6 out by 2.5 mm', () => {
  // Worked by hand from the infinite row of equal spans: grades of 3.42 % before the rod and 0.98 % after it (common practice, no source).
  const rods = Array.from({ length: 12 }, (_, i) => i * 0.275);
  const plan = {
    points: [
      { chainage: 0, height: 0 },
      { chainage: 1, height: 0.022 },
    ],
  };
  const start = { x: 0, y: 0, heading: 0 };
  const departures = rods.map((chainage, i) => ({ chainage, departure: i === 5 ? 0.0025 : 0 }));
  const built: Track = makeTrack({
    start,
    elements: [straight(3.025)],
    profile: { ...plan, strip: { supports: departures, hinges: [] } },
  });
  const z = (s: number): number => trackPoint(built, s).z;
  const grades = rods.slice(0, -1).map(
    (s, i): Reading => ({
      kind: 'grade',
      name: `grade ${i + 1}`,
      instrument: 'level',
      at: { support: i },
      anchor: 'start',
      base: 0.275,
      grade: Math.round((z(s + 0.275) - z(s)) / 0.275 / 0.001) * 0.001,
      unit: 'percent',
      face: 1,
    }),
  );
  const input: SurveyInput = {
    track: makeTrack({ start, elements: [straight(3.025)], profile: plan }),
    supports: rods,
    strip: { hinges: [] },
    instruments: [laser, level],
    readings: [...grades, ...[0, 3, 5, 8, 11].map((i) => height(i, z(rods[i])))],
    fixed: [],
    board: 0,
    setting: 0.0003,
  };

  it('is found by a level and five heights', () => {
    const { explanation } = workSurvey(input);
    expect(explanation.supports.map(({ support }) => support + 1)).toEqual([6]);
    // Steps of 0.1 % over 275 mm are 0.28 mm, of the rule 0.5 mm: each reading may be out by half a step, the mean of three less.
    expect(Math.abs(explanation.supports[0].departure - 0.0025)).toBeLessThan(0.00025);
  });

  it('has grades of 3.42 and 0.98 %, and two turns of an M8 nut mend it', async () => {
    const survey = workSurvey(input);
    const done = await mend(survey, taskFor(input));
    if (done.outcome !== 'mended') throw new Error(done.outcome);
    const worst = (limit: string): number => (done.before.find((one) => one.limit === limit)?.value ?? 0) * 100;
    // 0.2 mm of the rod are 0.1 % of grade.
    expect(Math.abs(worst('greatestGrade') - 3.42)).toBeLessThan(0.12);
    expect(Math.abs(worst('leastGrade') - 0.98)).toBeLessThan(0.12);
    expect(done.steps.map(({ support, turns }) => [support + 1, turns])).toHaveLength(1);
    expect(Math.abs((done.steps[0].turns ?? 0) + 2)).toBeLessThanOrEqual(0.25);
  });
});

describe('three modules of 1220 mm that rise 75 mm, the leg at joint 1 set 3 mm high', () => {
  // Grade changes by 0.49 % at that joint: 3/1220 twice (common practice, no source).
  const joints = [0, 1.22, 2.44, 3.66];
  const start = { x: 0, y: 0, heading: 0 };
  const points = [
    { chainage: -1, height: 0 },
    { chainage: 0.305, height: 0, curve: { length: 0.61 } },
    { chainage: 3.355, height: 0.075, curve: { length: 0.61 } },
    { chainage: 5, height: 0.075 },
  ];
  const track = makeTrack({ start, elements: [straight(3.66)], profile: { points } });
  const input: SurveyInput = {
    track,
    supports: joints,
    strip: { hinges: [1.22, 2.44] },
    instruments: [laser],
    readings: joints.flatMap((s, i) => {
      const value = trackPoint(track, s).z + (i === 1 ? 0.003 : 0);
      return [height(i, value), height(i, value + 0.0002)];
    }),
    fixed: [],
    board: 0,
    setting: 0.0003,
  };

  it('shows an error that breaks no limit, so no shim is advised', async () => {
    const survey = workSurvey(input);
    expect(survey.explanation.supports.map(({ support }) => support + 1)).toEqual([2]);
    const done = await mend(survey, taskFor(input));
    expect(done).toMatchObject({ outcome: 'nothing-to-mend', reason: 'within-limits' });
  });

  it('breaks the grade by 0.49 % at the joint', async () => {
    const survey = workSurvey(input);
    const limits = { greatestKink: 0.0001 };
    const done = await mend(survey, { ...taskFor(input), limits, locked: [0, 1, 2, 3] });
    if (done.outcome !== 'impossible') throw new Error(done.outcome);
    const kink = done.checks.find(({ limit }) => limit === 'greatestKink')?.value ?? 0;
    // Planned heights of the joints bend too (the vertical curves lie between them): taken off. 0.25 mm of reading are 0.04 %.
    const z = (s: number): number => trackPoint(track, s).z;
    const planned = (z(2.44) - 2 * z(1.22) + z(0)) / 1.22;
    expect(Math.abs((kink + planned) * 100 - 0.49)).toBeLessThan(0.04 + Math.abs(planned) * 200);
  });
});

describe('a perfect ramp read to 1/16 in every 3 in', () => {
  // A builder's own method; one interval is then uncertain by up to 2.1 % of grade: 1/16 in over 3 in (worked by hand).
  const inch = 0.0254;
  const input = (grade: number, phase: number, step: number): SurveyInput => {
    const supports = Array.from({ length: 13 }, (_, i) => i * 12 * inch);
    const points = [
      { chainage: 0, height: 0 },
      { chainage: 1, height: grade },
    ];
    const readings = Array.from({ length: 49 }, (_, i): Reading => {
      const s = i * 3 * inch;
      return {
        kind: 'height',
        name: `line ${i + 1}`,
        instrument: 'ruler',
        at: { chainage: s },
        height: Math.round((s * grade + phase) / step) * step,
        line: 'string',
      };
    });
    return {
      track: makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements: [straight(48 * 3 * inch)], profile: { points } }),
      supports,
      strip: { hinges: [] },
      instruments: [{ id: 'ruler', deviation: 0.0001, step, zero: 0 }],
      readings,
      fixed: [],
      board: 0.012,
      setting: 0.0003,
    };
  };

  it('looks kinked by up to 2.1 % from reading to reading', () => {
    const { readings } = input(0.023, 0, inch / 16);
    const heights = readings.map((one) => (one.kind === 'height' ? one.height : 0));
    const kinks = heights.slice(1).map((value, i) => (value - heights[i]) / (3 * inch) - 0.023);
    expect(Math.max(...kinks.map(Math.abs)) * 100).toBeLessThanOrEqual(2.09);
    expect(Math.max(...kinks.map(Math.abs)) * 100).toBeGreaterThan(1.5);
  });

  it('is advised no shim, whatever the grade, the height of the string and whether read to 1/16 or to 1/8', () => {
    for (const step of [inch / 16, inch / 8]) {
      for (let k = 0; k < 40; k++) {
        // Grades from 1 to 4 %, among them those that rise almost a whole step from reading to reading, when rounding runs in long waves.
        const grade = 0.01 + 0.00077 * k;
        const { explanation } = workSurvey(input(grade, 0.00021 * k, step));
        expect([grade, explanation.supports, explanation.slips]).toEqual([grade, [], []]);
      }
    }
  });
});

it('coarse pitches are those of ISO 261: M6 1.0, M8 1.25, M10 1.5 mm', () => {
  // ISO 261:1998, general purpose metric screw threads, general plan, coarse series (from memory; printed in every thread table).
  expect(coarsePitches).toMatchObject({ M4: 0.0007, M5: 0.0008, M6: 0.001, M8: 0.00125, M10: 0.0015, M12: 0.00175 });
});
