import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseScene } from '../../src/scene/index.ts';
import { jsonFault } from '../../src/scene/jsonText.ts';
import { sample } from './sample.ts';

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

describe('the place at which text stops being JSON', () => {
  it.each([
    ['{"a":1,}', 1, 8, 'a comma before the closing }'],
    ['[1,]', 1, 4, 'a comma before the closing ]'],
    ['{"a" 1}', 1, 6, 'a : is missing'],
    ['{a:1}', 1, 2, 'the name of a field in "double quotes"'],
    ['{"a":1\n "b":2}', 2, 2, 'a comma or } is missing'],
    ['{"a":01}', 1, 6, '01 is not a number'],
    ['{"a":NaN}', 1, 6, 'NaN is no value'],
    ['{"a":"x\n"}', 1, 6, 'goes on over the end of the line'],
    ['{"a":"\\q"}', 1, 7, 'a backslash that begins nothing'],
    ['{\n\n  "a": [1, 2', 3, 8, 'this [ has no closing ]'],
    ['{"a":1} x', 1, 9, 'more text follows'],
    ['', 1, 1, 'the file is empty'],
    ['\n\n', 3, 1, 'the file is empty'],
  ])('%j: line %i, column %i', (text, line, column, what) => {
    const fault = jsonFault(text);
    expect([fault?.line, fault?.column]).toEqual([line, column]);
    expect(fault?.what).toContain(what);
    // The caret stands under the letter at which it stops.
    expect(fault?.excerpt[fault.caret.length - 1]).toBe(text.split('\n')[line - 1][column - 1]);
  });

  it('is there exactly when the engine says so too, for JSON with any letters lost, doubled or put in', () => {
    const text = JSON.stringify(sample);
    fc.assert(
      fc.property(
        fc.nat(text.length - 1),
        fc.nat(3),
        fc.string({ maxLength: 3, unit: fc.constantFrom(...'{}[],:"\\01.-e \nnultr'.split('')) }),
        (at, lost, put) => {
          const changed = text.slice(0, at) + put + text.slice(at + lost);
          expect(jsonFault(changed) === null).toBe(isJson(changed));
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('keeps what it repeats of a long line short, without letters that a terminal obeys', () => {
    const fault = jsonFault(`{"a": "${'x'.repeat(1000)}", \u001b[2J${'y'.repeat(1000)}`);
    expect(fault?.excerpt.length).toBeLessThan(80);
    expect(fault?.excerpt).not.toContain('\u001b');
    expect(fault?.excerpt[fault.caret.length - 1]).toBe(' ');
  });

  it('is told by parseScene with the line and a caret, and not found in JSON that nests without end', () => {
    const text = JSON.stringify(sample, null, 2).replace('"OO",', '"OO"');
    const parsed = parseScene(text);
    expect(parsed.ok ? [] : parsed.problems).toEqual([
      {
        path: 'line 7, column 5',
        found: 'a comma or } is missing: there is "\\""',
        allowed: 'a scene file in JSON',
        example: '{ "gradewright": 1, "name": "Wren Gill", … }',
        excerpt: ['    "gaugeMm": 16.5', '    ^'],
      },
    ]);
    expect(jsonFault(`${'['.repeat(1_000_000)}x`)).toBeNull();
  });
});
