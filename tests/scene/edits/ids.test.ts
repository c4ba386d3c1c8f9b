import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freeId, newId } from '../../../src/scene/index.ts';

const others = [{ id: 'gill-line' }, { id: 'gill-line-2' }, { id: 'loop' }];

describe('short names', () => {
  it('are the letters of a name, with a number where another has them', () => {
    expect(newId(others, 'Loop line')).toBe('loop-line');
    expect(newId(others, ' The  "Gill" (upper)! ')).toBe('the-gill-upper');
    expect(newId(others, 'Gill line')).toBe('gill-line-3');
    expect(freeId(['a', undefined], 'b')).toBe('b');
    expect(freeId(['a', 'a-3'], 'a')).toBe('a-2');
  });

  it('fall back where a name has no letters, or means the whole of a track', () => {
    expect(newId(others, '…')).toBe('line');
    expect(newId(others, 'Track')).toBe('line');
    expect(newId([{ id: 'survey' }], '', 'survey')).toBe('survey-2');
  });

  it('are such as the format takes, and nobody else has, whatever the name', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 150 }), (name) => {
        const id = newId(others, name);
        expect(id).toMatch(/^[a-z0-9][a-z0-9-]{0,59}$/);
        expect(others.map((one) => one.id)).not.toContain(id);
      }),
    );
    // Cut off within a name, between two words: no hyphen is left at its end.
    expect(newId([], `${'a'.repeat(49)} b`)).toBe('a'.repeat(49));
  });
});
