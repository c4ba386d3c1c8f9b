import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/core/findings/types.ts';
import { closestWords, passesWords, verdictWords } from '../../../src/ui/ledger/verdictWords.ts';

type Stood = Pick<Finding, 'verdict' | 'range'>;

const fails: Stood = { verdict: 'fails', range: null };
const near: Stood = { verdict: 'near', range: [0.0001, 0.0009] };
const passes: Stood = { verdict: 'passes', range: null };
/** As measured it fails; at the other end of its tolerances it passes. */
const undecided: Stood = { verdict: 'fails', range: [-0.0012, 0.0008] };

describe('the sum of the findings', () => {
  it('counts each standing and leaves out what there is none of', () => {
    expect(verdictWords([fails, near, passes, passes])).toBe('1 fails, 1 near, 2 pass');
    expect(verdictWords([fails, fails, passes])).toBe('2 fail, 1 passes');
    expect(verdictWords([undecided, near, passes])).toBe('1 undecided, 1 near, 1 passes');
    expect(verdictWords([passes, passes])).toBe('2 pass');
    expect(verdictWords([])).toBe('');
  });
});

describe('the sentence at the head', () => {
  it('is that of the gravest standing', () => {
    expect(passesWords([undecided, fails, passes])).toBe('This train does not pass.');
    expect(passesWords([near, undecided])).toBe('Undecided: this train may fail.');
    expect(passesWords([near, passes])).toBe('This train passes, but only just.');
    expect(passesWords([passes])).toBe('This train passes.');
  });

  it('is followed by what comes nearest, where the train passes', () => {
    expect(closestWords('Passes, but only just. Closest call: grip, 21 % left, engine at 8.81 m.')).toBe(
      'Closest call: grip, 21 % left, engine at 8.81 m.',
    );
    expect(closestWords('Passes.')).toBe('');
    expect(closestWords(null)).toBe('');
  });
});
