import { type Scene, vehicleOf } from '../../scene/index.ts';
import { type EasementKind, type EasementMeasure, type Layout, measureEasement } from '../../sim/study/easements.ts';

const kinds = ['none', 'lath', 'cubic', 'clothoid'] as const satisfies readonly EasementKind[];
/** Lengths of the study, mm. */
export const lengthsMm = [100, 200, 300, 450] as const;

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

const taskOf = (scene: Scene, layout: Layout) => ({
  ...given,
  layout,
  vehicle: coachOf(scene),
  angle: layouts.find(([name]) => name === layout)?.[1] ?? Math.PI,
});

/** Every row of a layout. */
export function easementRows(scene: Scene, layout: Layout): EasementMeasure[] {
  const task = taskOf(scene, layout);
  return kinds.flatMap((kind) =>
    (kind === 'none' ? [0] : lengthsMm).map((mm) => measureEasement(task, kind, mm / 1e3)),
  );
}

/** Clothoids of these lengths, mm, in a layout; none where the length is 0. */
export function clothoids(scene: Scene, layout: Layout, wantedMm: readonly number[]): EasementMeasure[] {
  const task = taskOf(scene, layout);
  return wantedMm.map((mm) => measureEasement(task, mm === 0 ? 'none' : 'clothoid', mm / 1e3));
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
