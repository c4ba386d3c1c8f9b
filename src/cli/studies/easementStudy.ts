import { type Scene, vehicleOf } from '../../scene/index.ts';
import { type EasementKind, type EasementMeasure, type Layout, measureEasement } from '../../sim/study/easements.ts';

const kinds = ['none', 'lath', 'cubic', 'clothoid'] as const satisfies readonly EasementKind[];
const lengthsMm = [100, 200, 300, 450];

/** Both layouts of the study: an S of two bends of 45° with nothing between, and the end of half a turn. */
const layouts = [
  ['s-bend', Math.PI / 4],
  ['curve-exit', Math.PI],
] as const satisfies readonly (readonly [Layout, number])[];

/** What the study is made with: five coaches of the scene, stretched, on 600 mm; 0.3 m/s for the jerk. */
const given = { count: 5, radius: 0.6, speed: 0.3 } as const;

const coachOf = (scene: Scene) => {
  const coach = scene.stock.find(({ id }) => id === 'coach');
  if (coach === undefined) throw new RangeError('The scene of the study has no coach.');
  return vehicleOf(scene, coach);
};

/** Every row of a layout. */
export function easementRows(scene: Scene, layout: Layout): EasementMeasure[] {
  const vehicle = coachOf(scene);
  const angle = layouts.find(([name]) => name === layout)?.[1] ?? Math.PI;
  return kinds.flatMap((kind) =>
    (kind === 'none' ? [0] : lengthsMm).map((mm) =>
      measureEasement({ ...given, layout, vehicle, angle }, kind, mm / 1e3),
    ),
  );
}

const table = (rows: readonly EasementMeasure[]): string =>
  [
    '| easement | mm | buffers aside, mm | coupler swing, deg | jerk at 0.3 m/s, m/s³ | shift, mm | straight ends sooner by, mm |',
    '|---|---|---|---|---|---|---|',
    ...rows.map(
      ({ kind, length, buffers, swing, jerk, shift, ahead }) =>
        `| ${kind} | ${(length * 1e3).toFixed(0)} | ${(buffers * 1e3).toFixed(2)} | ${((swing * 180) / Math.PI).toFixed(1)} | ${jerk.toFixed(3)} | ${(shift * 1e3).toFixed(2)} | ${(ahead * 1e3).toFixed(1)} |`,
    ),
  ].join('\n');

/** The page with the tables between its marks made anew. */
export const withEasementTables = (page: string, scene: Scene): string =>
  layouts.reduce((text, [layout]) => {
    const [from, to] = [`<!-- ${layout} -->\n`, `\n<!-- end of ${layout} -->`];
    const [a, b] = [text.indexOf(from), text.indexOf(to)];
    if (a < 0 || b < a) throw new RangeError(`The page has no marks for ${layout}.`);
    return text.slice(0, a + from.length) + table(easementRows(scene, layout)) + text.slice(b);
  }, page);

/** Size of the picture and its field, px. */
const field = { width: 640, height: 360, left: 60, right: 130, top: 24, bottom: 48 } as const;
const mostMm = 14;
const inks = { line: '#1d5f8a', head: '#b4541a' } as const;

/** The picture of the study: how far buffers stand aside by length of easement, in the S and at the end of a curve, against a head of 6 mm. */
export function easementPicture(scene: Scene): string {
  const x = (mm: number): string => (field.left + (mm / 500) * (field.width - field.left - field.right)).toFixed(1);
  const y = (mm: number): string =>
    (field.height - field.bottom - (mm / mostMm) * (field.height - field.top - field.bottom)).toFixed(1);
  const text = (at: string, up: string, words: string, more = ''): string =>
    `<text x="${at}" y="${up}" ${more}>${words}</text>`;
  const right = x(500);
  const lines = layouts.flatMap(([layout], which) => {
    const rows = easementRows(scene, layout).filter(({ kind }) => kind === 'none' || kind === 'clothoid');
    const points = rows.map((one) => `${x(one.length * 1e3)},${y(one.buffers * 1e3)}`);
    const dashed = which === 1 ? ' stroke-dasharray="6 4"' : '';
    const first = rows[0].buffers * 1e3;
    return [
      `<polyline points="${points.join(' ')}" fill="none" stroke="${inks.line}" stroke-width="2"${dashed}/>`,
      text(x(12), y(first + 0.4), which === 0 ? 'S-bend' : 'end of a curve'),
    ];
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${field.width} ${field.height}" font-family="sans-serif" font-size="13">`,
    `<title>Buffers aside by length of easement</title><rect width="100%" height="100%" fill="#fff"/>`,
    ...[0, 2, 4, 6, 8, 10, 12, 14].flatMap((mm) => [
      `<line x1="${x(0)}" x2="${right}" y1="${y(mm)}" y2="${y(mm)}" stroke="#ddd"/>`,
      text(x(-20), y(mm - 0.2), String(mm), 'text-anchor="end"'),
    ]),
    ...[0, ...lengthsMm].map((mm) => text(x(mm), y(-1), String(mm), 'text-anchor="middle"')),
    `<line x1="${x(0)}" x2="${right}" y1="${y(6)}" y2="${y(6)}" stroke="${inks.head}" stroke-width="2"/>`,
    text(right, y(6), ' width of a head, 6 mm', `fill="${inks.head}"`),
    ...lines,
    text(x(250), y(-1.8), 'length of the clothoid, mm', 'text-anchor="middle"'),
    text(x(0), String(field.top - 8), 'heads aside, mm'),
    '</svg>',
    '',
  ].join('\n');
}
