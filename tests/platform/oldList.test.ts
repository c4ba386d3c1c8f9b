import { describe, expect, it } from 'vitest';
import { oldList } from '../../src/platform/oldList.ts';

describe('what earlier versions kept', () => {
  it('is read railway by railway', () => {
    const railway = { name: 'Gill', trialId: 'up', text: '{}', at: 5 };
    expect(oldList(JSON.stringify([railway, { name: 'no text' }, null]))).toEqual([railway]);
  });

  it('is nothing when it cannot be read', () => {
    expect(oldList('{')).toEqual([]);
    expect(oldList('{"a":1}')).toEqual([]);
  });
});
