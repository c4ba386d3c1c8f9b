import { describe, expect, it } from 'vitest';
import { chained } from '../../../src/scene/centreline/chained.ts';
import { drawnElements } from '../../../src/scene/centreline/drawnElements.ts';
import { readCsv } from '../../../src/scene/centreline/readCsv.ts';
import { readDxf } from '../../../src/scene/centreline/readDxf.ts';
import { readSvg } from '../../../src/scene/centreline/readSvg.ts';

const xy = (line: readonly { xMm: number; yMm: number }[]) =>
  line.map(({ xMm, yMm }) => [Math.round(xMm * 1e3) / 1e3, Math.round(yMm * 1e3) / 1e3]);

describe('a table of points', () => {
  it('is read with commas, semicolons, tabs and spaces, in mm unless it says otherwise', () => {
    expect(xy(readCsv('0,0\n10,5.5\n').lines[0])).toEqual([
      [0, 0],
      [10, 5.5],
    ]);
    expect(xy(readCsv('x (m);y (m)\r\n0;0\r\n0,01;1,5\r\n').lines[0])).toEqual([
      [0, 0],
      [10, 1500],
    ]);
    expect(xy(readCsv('0 0\n  10   5 ').lines[0])).toEqual([
      [0, 0],
      [10, 5],
    ]);
    expect(readCsv('x_in\ty_in\tz_in\n0\t0\t1\n2\t0\t1').lines[0][1]).toEqual({ xMm: 50.8, yMm: 0, zMm: 25.4 });
    expect(readCsv('0,0\n1,1').assumed).toEqual(['The table does not name its units: taken as mm.']);
  });

  it('tells the rows that are no points, by their line', () => {
    expect(readCsv('# by hand\nx,y\n0,0\nhere,5\n9,9\n3').problems).toEqual([
      { line: 4, found: '"here,5" is not two or three numbers' },
      { line: 6, found: '"3" is not two or three numbers' },
    ]);
  });
});

describe('a drawing in SVG', () => {
  const page = (inner: string) => `<svg width="100mm" height="100mm" viewBox="0 0 1000 1000">${inner}</svg>`;

  it('has its lines in mm with y to the north, absolute and relative', () => {
    const { lines } = readSvg(page('<path d="M0 0L100-50h50v50H0z m10,10 20,0"/>'));
    expect(xy(lines[0])).toEqual([
      [0, 0],
      [10, 5],
      [15, 5],
      [15, 0],
      [0, 0],
    ]);
    expect(xy(lines[1])).toEqual([
      [1, -1],
      [3, -1],
    ]);
  });

  it('heeds the transforms of a path and its groups, and passes over what is not drawn', () => {
    const { lines } = readSvg(
      page(
        '<defs><path d="M0 0h9"/></defs><g transform="translate(100,200) rotate(90)"><path transform="scale(2)" d="M0 0H50"/></g>',
      ),
    );
    expect(lines).toHaveLength(1);
    expect(xy(lines[0])).toEqual([
      [10, -20],
      [10, -30],
    ]);
  });

  it('keeps circular arcs exactly, as they are seen', () => {
    // A quarter of 600 mm that climbs the page to the left hand: 90 degrees in all.
    const [line] = readSvg(page('<path d="M0 0h1500a6000 6000 0 0 0 6000-6000"/>')).lines;
    const drawn = drawnElements(line);
    expect(drawn?.elements.map(({ kind }) => kind)).toEqual(['straight', 'arc']);
    expect(drawn?.elements[1].startCurvature).toBeCloseTo(1 / 0.6, 9);
    expect(drawn?.elements[1].length).toBeCloseTo(0.942478, 5);
  });

  it('takes the large arc and the other way round where the flags say so', () => {
    const turned = (flags: string) =>
      drawnElements(readSvg(page(`<path d="M0 0 A1000 1000 0 ${flags} 1000 1000"/>`)).lines[0])?.elements[0];
    // Chord √2·R: a quarter, or three quarters; with y down a set sweep flag turns to the right.
    expect(turned('0 1')?.length).toBeCloseTo(0.15708, 5);
    expect(turned('1 1')?.length).toBeCloseTo(0.471239, 5);
    expect(turned('0 1')?.startCurvature).toBeCloseTo(-10, 9);
    expect(turned('10')?.startCurvature).toBeCloseTo(10, 9);
  });

  it('draws curves by chords a hundredth of a millimetre near', () => {
    const [line] = readSvg(page('<path d="M0 0C0 552.285 447.715 1000 1000 1000"/>')).lines;
    // The usual cubic for a quarter of a circle is 0.027 % off it at most.
    for (const { xMm, yMm } of line) expect(Math.hypot(xMm - 100, yMm)).toBeCloseTo(100, 1);
    const [parabola] = readSvg(page('<path d="M0 0Q500 1000 1000 0T2000 0"/>')).lines;
    expect(Math.min(...parabola.map(({ yMm }) => yMm))).toBeCloseTo(-50, 1);
    expect(Math.max(...parabola.map(({ yMm }) => yMm))).toBeCloseTo(50, 1);
  });

  it('ends a broken path where it breaks, and says so', () => {
    const { lines, problems } = readSvg(`<svg>\n<path d="M0 0L9 9 L x"/></svg>`);
    expect(lines[0]).toHaveLength(2);
    expect(problems).toEqual([{ line: 2, found: 'a letter L without its 2 numbers' }]);
  });

  it('refuses what is none, and groups without end', () => {
    expect(() => readSvg('{"a": 1}')).toThrow('no svg element');
    expect(() => readSvg(`<svg>${'<g>'.repeat(1000)}`)).toThrow('More than 64 groups');
    expect(() => readSvg(page(`<path d="M0 0${'h1'.repeat(250_000)}"/>`))).toThrow('thin the file out');
  });
});

describe('a hostile file', () => {
  it('costs little, however it is made', () => {
    const long = 2_000_000;
    expect(readCsv(`${'1'.repeat(long)}x,1\n`).problems).toHaveLength(1);
    expect(readSvg(`<svg ${'a'.repeat(long)}/>`).lines).toEqual([]);
    expect(readSvg(`<svg><path d="M0 0 ${'1e999 '.repeat(1000)}"/></svg>`).lines).toEqual([]);
    expect(readSvg(`<svg><!-- ${'<g>'.repeat(1000)}`).lines).toEqual([]);
    expect(() => readDxf(`${'0\n'.repeat(100_000)}`)).toThrow('no section ENTITIES');
  }, 5_000);
});

describe('a drawing in DXF', () => {
  const drawing = (entities: string, header = '') =>
    `${header}0 SECTION 2 ENTITIES ${entities} 0 ENDSEC 0 EOF`.trim().split(/\s+/).join('\n');
  const metres = '0 SECTION 2 HEADER 9 $INSUNITS 70 6 0 ENDSEC ';

  it('chains lines and arcs that meet, whatever way they were drawn', () => {
    const { lines } = readDxf(
      drawing(
        '0 LINE 10 2.6 20 2.5 11 2.6 21 1.1 0 ARC 10 2 20 1.1 40 0.6 50 270 51 0 0 LINE 10 0.5 20 0.5 11 2 21 0.5',
        metres,
      ),
    );
    const [chain, ...others] = chained(lines);
    expect(others).toEqual([]);
    const elements = drawnElements(chain)?.elements ?? [];
    expect(elements.map(({ kind }) => kind)).toEqual(['straight', 'arc', 'straight']);
    // A quarter of 0.6 m between 1.4 m and 1.5 m.
    expect(elements.map(({ length }) => Math.round(length * 1e6) / 1e6)).toEqual([1.4, 0.942478, 1.5]);
    expect(Math.abs(elements[1].startCurvature)).toBeCloseTo(1 / 0.6, 9);
  });

  it('reads polylines, their bulges and their closing', () => {
    // A bulge of 1 is half a circle (tangent of 180/4 degrees).
    const [line] = readDxf(drawing('0 LWPOLYLINE 90 2 70 1 10 0 20 0 42 1 10 100 20 0')).lines;
    expect(xy(line)).toEqual([
      [0, 0],
      [100, 0],
      [0, 0],
    ]);
    expect(drawnElements(line.slice(0, 2))?.elements[0].length).toBeCloseTo((Math.PI * 50) / 1000, 9);
    const { lines } = readDxf(drawing('0 POLYLINE 66 1 0 VERTEX 10 0 20 0 30 5 0 VERTEX 10 9 20 0 30 0 0 SEQEND'));
    expect(lines[0]).toEqual([
      { xMm: 0, yMm: 0, zMm: 5 },
      { xMm: 9, yMm: 0, zMm: 0 },
    ]);
  });

  it('tells what it passes over, and refuses what is no such file', () => {
    expect(readDxf(drawing('0 CIRCLE 10 0 20 0 40 1')).problems[0].found).toContain('CIRCLE');
    expect(readDxf(drawing('0 LINE 10 0 20 0')).problems[0].found).toContain('without the numbers');
    expect(() => readDxf('hello\nthere\n')).toThrow('Line 1 should be a group code');
    expect(() => readDxf('0\nEOF\n')).toThrow('no section ENTITIES');
  });
});
