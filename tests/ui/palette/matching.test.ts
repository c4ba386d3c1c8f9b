import { describe, expect, it } from 'vitest';
import { matchScore } from '../../../src/ui/palette/matching.ts';

describe('matching', () => {
  it('wants every word that was typed', () => {
    expect(matchScore('Support 14', 'supp 14')).toBeGreaterThan(0);
    expect(matchScore('Support 14', 'supp 15')).toBe(0);
    expect(matchScore('Support 14', '')).toBeGreaterThan(0);
  });

  it('puts beginnings of words before their middles, and short texts before long ones', () => {
    expect(matchScore('Play the trial', 'pl')).toBeGreaterThan(matchScore('Show in ample light', 'pl'));
    expect(matchScore('Support 3', 'support 3')).toBeGreaterThan(matchScore('Support 38', 'support 3'));
  });
});
