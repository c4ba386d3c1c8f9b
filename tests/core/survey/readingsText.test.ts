import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseReadings } from '../../../src/core/survey/index.ts';

const told = (text: string): string[] => parseReadings(text).problems.map(({ line, message }) => `${line}: ${message}`);

describe('a table of readings', () => {
  it('may mix grades on both faces, heights and gaps, in any order of columns', () => {
    const { readings, instruments, problems } = parseReadings(
      [
        'base = 300 mm',
        'level step = 0.1 %',
        'support;height mm;grade %;turned %',
        '3;73,5;2,2;2,4',
        '4;;2,3;',
        '# a remark',
        '',
      ].join('\n'),
    );
    expect(problems).toEqual([]);
    expect(readings).toMatchObject([
      { kind: 'grade', name: 'line 4', at: { support: 2 }, base: 0.3, face: 1, unit: 'percent' },
      { kind: 'grade', name: 'line 4 turned', at: { support: 2 }, face: -1 },
      { kind: 'height', name: 'line 4', at: { support: 2 }, line: null },
      { kind: 'grade', name: 'line 5', at: { support: 3 } },
    ]);
    expect(readings.map((one) => ('grade' in one ? one.grade : 'height' in one ? one.height : 0))).toEqual([
      expect.closeTo(0.022, 12),
      expect.closeTo(0.024, 12),
      expect.closeTo(0.0735, 12),
      expect.closeTo(0.023, 12),
    ]);
    expect(instruments.find(({ id }) => id === 'level')?.step).toBeCloseTo(0.001, 12);
  });

  it.each([
    ['tabs', 'chainage mm\tdrop mm\tline\n1200\t53.5\tA'],
    ['commas', 'chainage (mm),drop (mm),line\n1200,53.5,A'],
    ['quotes', '"chainage (mm)","drop (mm)","line"\r\n"1200","53.5","A"'],
    ['bars', '| chainage mm | drop mm | line |\n| 1200 | 53.5 | A |'.replaceAll(/^\| | \|$/gm, '')],
  ])('is read with %s; a drop below a laser line is a height the other way', (_, text) => {
    expect(parseReadings(text)).toMatchObject({
      problems: [],
      readings: [
        { kind: 'height', at: { chainage: expect.closeTo(1.2, 12) }, height: expect.closeTo(-0.0535, 12), line: 'A' },
      ],
    });
  });

  it('without a header is support and reading, told apart by the unit', () => {
    const { readings } = parseReadings('base = 12in\n1  2.2%\n2  1.26°\n3  73.5 mm');
    expect(readings).toMatchObject([
      { kind: 'grade', unit: 'percent', base: expect.closeTo(0.3048, 12) },
      { kind: 'grade', unit: 'degree' },
      { kind: 'height', height: expect.closeTo(0.0735, 12) },
    ]);
  });

  it('takes spacers from the support below, or from one that is named, with the board between', () => {
    const { readings } = parseReadings('board = 9 mm\nsupport;from;spacer mm\n10;1;71\n11;;2,5');
    expect(readings).toMatchObject([
      {
        kind: 'rise',
        from: { support: 0 },
        to: { support: 9 },
        rise: expect.closeTo(0.071, 12),
        board: expect.closeTo(0.009, 12),
      },
      { kind: 'rise', from: { support: 9 }, to: { support: 10 } },
    ]);
  });
});

describe('what cannot be read is told by line, in words, and the rest is read', () => {
  it.each([
    [
      'support;grade %\n1;2.2',
      '2: A grade or a gap needs the length it was taken over. Add a column base, or a line base = 300 mm.',
    ],
    ['support;grade;base\n1;2.2;300 mm', '2: “2.2”: 2.2 alone could be per cent, degrees or “1 in 2.2”; write which'],
    ['support;height mm\nx;3', '2: “x” is no support. Supports are counted 1, 2, 3, … along the track.'],
    ['support;height mm\n4;', '2: Nothing is read here'],
    ['height mm;note\n4;a', '2: It names no place: give a support or a chainage.'],
    [
      'support,height mm\n1,73,5',
      '2: It has 3 cells and the header names 2. Where numbers have a decimal comma, part cells by semicolons.',
    ],
    ['foo;bar\n1;2', '1: “foo | bar” names no columns. Use support, chainage'],
    ['level colour = red\nsupport;height mm\n1;3', '1: “level colour” is not a setting. Write base'],
    [
      'support;kind;reading\n1;colour;3',
      '2: “colour” is no kind of reading. Write grade, height, drop, spacer, gap or cross.',
    ],
    ['support;spacer mm\n1;70', '2: Below support 1 there is none'],
    ['', '0: There are no readings.'],
  ])('%j', (text, message) => {
    expect(told(text)).toEqual([expect.stringContaining(message)]);
  });

  it('one bad line among good ones loses nothing else', () => {
    const { readings, problems } = parseReadings('support;height mm\n1;10\n2;ten\n3;12');
    expect(readings).toHaveLength(2);
    expect(problems.map(({ line }) => line)).toEqual([3]);
  });

  it('a text too long is refused as a whole', () => {
    expect(told('1;2\n'.repeat(200_000))[0]).toMatch(/^0: The text is 800000 characters long/);
  });
});

it('no text at all makes it throw', () => {
  const words = fc.constantFrom(
    'support',
    'grade',
    '%',
    'mm',
    ';',
    ',',
    '\t',
    '\n',
    '1',
    '2,5',
    '-',
    '=',
    'base',
    '°',
    '"',
    '#',
    'in',
  );
  fc.assert(
    fc.property(fc.array(words, { maxLength: 60 }), (parts) => {
      const { readings, problems } = parseReadings(parts.join(''));
      expect(readings.length + problems.length).toBeGreaterThan(0);
    }),
  );
  // Anchored: the smallest table that is one reading.
  expect(parseReadings('support;height mm\n1;3').readings).toHaveLength(1);
});

it('the table of the guide is one that is read', () => {
  const page = readFileSync(new URL('../../../docs/guide/measure-and-mend.md', import.meta.url), 'utf8');
  const table = /((?: {4}.*\n)+)/.exec(page)?.[1] ?? '';
  const { readings, problems } = parseReadings(table);
  expect(problems).toEqual([]);
  expect(readings.map(({ kind }) => kind)).toEqual(['grade', 'grade', 'grade', 'height']);
});
