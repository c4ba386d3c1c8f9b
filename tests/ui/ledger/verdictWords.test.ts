import { describe, expect, it } from 'vitest';
import type { Finding, Verdict } from '../../../src/core/findings/types.ts';
import { verdictWords } from '../../../src/ui/ledger/verdictWords.ts';

const all = (...verdicts: Verdict[]) => verdicts.map((verdict) => ({ verdict }) as Finding);

describe('the sum of the findings', () => {
  it('counts each verdict and leaves out what there is none of', () => {
    expect(verdictWords(all('fails', 'near', 'passes', 'passes'))).toBe('1 fails, 1 near, 2 pass');
    expect(verdictWords(all('fails', 'fails', 'passes'))).toBe('2 fail, 1 passes');
    expect(verdictWords(all('passes', 'passes'))).toBe('2 pass');
    expect(verdictWords([])).toBe('');
  });
});
