import { describe, expect, it } from 'vitest';
import { countTests } from './count.ts';
import { filesThatFailed, withSecondTry } from './secondTry.ts';

const file = (name: string, status: string, statuses: readonly string[]) => ({
  name,
  status,
  assertionResults: statuses.map((one, i) => ({ status: one, fullName: `${name} ${i}` })),
});

const first = {
  testResults: [
    file('a', 'passed', ['passed', 'passed']),
    file('b', 'failed', ['passed', 'failed']),
    file('c', 'failed', []),
  ],
};

describe('a second try of files that failed', () => {
  it('is for files with a failed test and for files that did not load, not for others', () => {
    expect(filesThatFailed(first)).toEqual(['b', 'c']);
    expect(filesThatFailed({ testResults: [file('a', 'passed', ['passed'])] })).toEqual([]);
    expect(filesThatFailed(undefined)).toEqual([]);
  });

  it('counts as it came out at last, and names what failed at first', () => {
    const second = { testResults: [file('b', 'passed', ['passed', 'passed']), file('c', 'passed', ['passed'])] };
    const { record, notes } = withSecondTry(first, second);
    expect(countTests(record, 0)).toEqual({ passed: 5, failed: 0, notes: [] });
    expect(notes).toHaveLength(2);
    expect(notes[0]).toContain('second try only: b\n');
    expect(notes[0]).toContain('b 1');
    expect(notes[1]).toContain('second try only: c');
  });

  it('lets a test that fails twice fail, and a file that was not tried again too', () => {
    const { record, notes } = withSecondTry(first, { testResults: [file('b', 'failed', ['failed', 'passed'])] });
    expect(countTests(record, 1)).toMatchObject({ passed: 3, failed: 2 });
    expect(notes).toEqual([]);
    expect(countTests(withSecondTry(first, undefined).record, 1)).toMatchObject({ passed: 3, failed: 2 });
  });
});
