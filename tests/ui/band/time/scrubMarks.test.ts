import { describe, expect, test } from 'vitest';
import type { RunEvent } from '../../../../src/core/dynamics/types.ts';
import type { Finding } from '../../../../src/core/findings/types.ts';
import type { TrialResult } from '../../../../src/sim/types.ts';
import { happenings, placeMarks, type ScrubMark, scrubMarks } from '../../../../src/ui/band/time/scrubMarks.ts';

const event = (kind: RunEvent['kind'], time: number, value = 0): RunEvent => ({
  kind,
  time,
  value,
  chainage: 0,
  subject: 0,
});
const finding = (risk: Finding['risk'], verdict: Finding['verdict'], time: number, margin: number) =>
  ({ risk, verdict, time, margin }) as Finding;
const resultOf = (events: RunEvent[], findings: Finding[]) => ({ run: { events }, findings }) as unknown as TrialResult;
const show = { lengthUnit: 'mm', gradeForm: 'one-in' } as const;

describe('happenings', () => {
  test('a run-in heard joint by joint is one, told by its strongest', () => {
    const told = happenings([
      event('run-in', 5, -0.1),
      event('run-in', 5.6, -0.4),
      event('run-out', 5.7, 0.2),
      event('run-in', 6.2, -0.2),
      event('run-in', 9, -0.05),
    ]);
    expect(told.map(({ kind, time }) => [kind, time])).toEqual([
      ['run-in', 5.6],
      ['run-out', 5.7],
      ['run-in', 9],
    ]);
  });
});

describe('marks on the scrub', () => {
  test('failing findings are marked, near ones carry their margin, passing ones are not there', () => {
    const marks = scrubMarks(
      resultOf(
        [],
        [
          finding('override', 'fails', 38, -0.0004),
          finding('buffer-lock', 'near', 18, 0.0011),
          finding('headroom', 'passes', 44, 0.0115),
        ],
      ),
      show,
    );
    expect(marks.map(({ name, marked, time }) => [name, marked, time])).toEqual([
      ['overlap 1.1', false, 18],
      ['rides up', true, 38],
    ]);
  });

  test('setting off and arriving go without saying; a stall with its finding is said once', () => {
    const marks = scrubMarks(
      resultOf([event('moving', 0.3), event('stall', 8.4), event('arrived', 90)], [finding('stall', 'fails', 8, -0.2)]),
      show,
    );
    expect(marks.map(({ name }) => name)).toEqual(['stalls']);
    expect(marks[0].marked).toBe(true);
  });

  test('names keep clear of each other, the heaviest first; every mark keeps its place', () => {
    const mark = (time: number, name: string, weight: number): ScrubMark => ({
      time,
      name,
      weight,
      marked: false,
      finding: null,
    });
    const placed = placeMarks(
      [mark(10, 'aaaa', 1), mark(11, 'bbbb', 5), mark(40, 'cccc', 1)],
      (time) => time * 10,
      800,
      '',
      () => 40,
    );
    expect(placed.map(({ x, textX }) => [x, textX])).toEqual([
      [100, null],
      [110, 110],
      [400, 400],
    ]);
  });

  test('a name at an end stays readable', () => {
    const [placed] = placeMarks(
      [{ time: 0, name: 'run-in', weight: 1, marked: false, finding: null }],
      () => 0,
      800,
      '',
      () => 60,
    );
    expect(placed.x).toBe(0);
    expect(placed.textX).toBe(6);
  });
});
