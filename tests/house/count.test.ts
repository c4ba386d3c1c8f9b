import { describe, expect, it } from 'vitest';
import { countTests } from './count.ts';

const file = (name: string, status: string, statuses: readonly string[], message = '') => ({
  name,
  status,
  message,
  assertionResults: statuses.map((one) => ({ status: one })),
});

describe('the count at the end of all tests', () => {
  it('counts what passed and what failed', () => {
    const testResults = [file('a', 'passed', ['passed', 'passed']), file('b', 'failed', ['passed', 'failed'])];
    expect(countTests({ testResults }, 1)).toEqual({ passed: 3, failed: 1, notes: [] });
  });

  it.each(['skipped', 'pending', 'todo', 'disabled'])('counts a test that is %s as failed', (status) => {
    const counted = countTests({ testResults: [file('a', 'passed', ['passed', status])] }, 0);
    expect(counted).toMatchObject({ passed: 1, failed: 1 });
    expect(counted.notes[0]).toContain('left out');
  });

  it('counts a file that could not be loaded', () => {
    const testResults = [file('a', 'passed', ['passed']), file('b', 'failed', [], 'Cannot find ./gone.ts\n  at b')];
    expect(countTests({ testResults }, 1)).toEqual({ passed: 1, failed: 1, notes: ['b: Cannot find ./gone.ts'] });
  });

  it('never passes for nothing', () => {
    expect(countTests(undefined, 0)).toMatchObject({ passed: 0, failed: 1 });
    expect(countTests({}, 0)).toMatchObject({ passed: 0, failed: 1 });
    expect(countTests({ testResults: [] }, 0)).toMatchObject({ passed: 0, failed: 1 });
    expect(countTests({ testResults: [file('a', 'passed', [])] }, 0)).toMatchObject({ passed: 0, failed: 1 });
  });

  it('believes a bad ending over good tests', () => {
    expect(countTests({ testResults: [file('a', 'passed', ['passed'])] }, 1)).toMatchObject({ passed: 1, failed: 1 });
  });
});
