import type { OnSheet, Outline } from '../../core/build/index.ts';
import type { BuildPlan } from '../../sim/build/index.ts';
import { betweenSheets, letterHeight, namedOutlines, scaleCheck } from './namedOutlines.ts';

/** A group code of the format and its value. */
type Pair = readonly [code: number, value: string | number];

const mm = (metres: number): string => (metres * 1e3).toFixed(5);

/**
 * All sheets of a plan as a DXF drawing in mm, in the format's oldest form that everything reads (AC1009): pieces as lines and true arcs on the layer CUT, names on NAMES, sheets and the square of
 * 100 mm to check the scale by on SHEET. y grows upwards, so that the drawing is seen as on the screen.
 */
export function sheetsDxf(plan: BuildPlan): string {
  const { sheet, layout } = plan;
  /** From a sheet's own coordinates, y downwards, to the drawing's. */
  const placed = (number: number, [x, y]: OnSheet): OnSheet => [x, -y - number * (sheet.width + betweenSheets)];
  const rectangle = (number: number, length: number, width: number): Pair[] => {
    const corners: OnSheet[] = [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ];
    return corners.flatMap((from, i) =>
      line('SHEET', placed(number, from), placed(number, corners[(i + 1) % corners.length])),
    );
  };
  const entities = [
    ...Array.from({ length: layout.sheets }, (_, number) => rectangle(number, sheet.length, sheet.width)).flat(),
    ...rectangle(layout.sheets, scaleCheck, scaleCheck),
    ...namedOutlines(plan).flatMap(({ sheet: number, outline, middle, name }) => [
      ...sidesOf(outline, (at) => placed(number, at)),
      ...words(placed(number, middle), name),
    ]),
  ];
  const pairs: Pair[] = [
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...entities,
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ];
  return `${pairs.map(([code, value]) => `${code}\n${value}`).join('\n')}\n`;
}

function sidesOf({ from, sides }: Outline, place: (at: OnSheet) => OnSheet): Pair[] {
  let before = from;
  return sides.flatMap((side) => {
    const [a, b] = [place(before), place(side.to)];
    before = side.to;
    if (!('centre' in side)) return line('CUT', a, b);
    // What is clockwise as it is seen stays so; an arc of the format runs the other way, so that its ends change places.
    const [start, end] = side.clockwise ? [b, a] : [a, b];
    const centre = place(side.centre);
    const towards = ([x, y]: OnSheet): string =>
      ((((Math.atan2(y - centre[1], x - centre[0]) * 180) / Math.PI) % 360) + 360).toFixed(7);
    return [
      [0, 'ARC'],
      [8, 'CUT'],
      ...point(10, centre),
      [40, mm(side.radius)],
      [50, towards(start)],
      [51, towards(end)],
    ];
  });
}

const point = (code: number, [x, y]: OnSheet): Pair[] => [
  [code, mm(x)],
  [code + 10, mm(y)],
  [code + 20, '0.0'],
];

const line = (layer: string, a: OnSheet, b: OnSheet): Pair[] => [
  [0, 'LINE'],
  [8, layer],
  ...point(10, a),
  ...point(11, b),
];

const words = (at: OnSheet, text: string): Pair[] => [
  [0, 'TEXT'],
  [8, 'NAMES'],
  ...point(10, at),
  [40, mm(letterHeight)],
  [1, text],
];
