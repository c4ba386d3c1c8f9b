import { z } from 'zod';
import { sectionRows } from '../core/track/index.ts';
import { formatLength, parseLength } from '../core/units/index.ts';
import { type Scene, trackLengthMm } from '../scene/index.ts';
import { compileScene } from '../sim/index.ts';
import { BadInput } from './exitCodes.ts';
import { unknownId } from './unknownId.ts';

const number = (about: string) => z.number().meta({ description: about });

const row = z.strictObject({
  chainageMm: number('Distance along the centreline in plan, mm.'),
  xMm: number('East, mm.'),
  yMm: number('North, mm.'),
  heightMm: number('Rail top, as built, mm.'),
  headingDeg: number('Counter-clockwise from east, degrees; grows turn by turn.'),
  curvaturePerM: number('One over the radius in metres; left is positive.'),
  gradePercent: number('Rise over plan distance, per cent; uphill with growing chainage is positive.'),
  verticalCurvaturePerM: number('Change of grade for each metre; a sag is positive.'),
});

/** The document that `gradewright section --json` writes. */
export const sectionReportSchema = z
  .strictObject({
    report: z.literal('gradewright-section'),
    version: z.literal(1),
    scene: z.string(),
    track: z.string().meta({ description: 'Id of the track.' }),
    lengthMm: number('Length in plan, mm.'),
    railLengthMm: number('Length along the rail, mm.'),
    rows: z.array(row),
  })
  .meta({ title: 'Long section of a track' });

export type SectionReport = z.infer<typeof sectionReportSchema>;
type Row = SectionReport['rows'][number];

/** Step between rows when none is asked for. */
const usualStep = '100 mm';

/** Longest step, m. */
const longestStep = 100;

/** Most rows that are written: more than a spreadsheet takes, about 20 MB. */
const mostRows = 200_000;

/** The long section of one track (the first when none is named). Throws BadInput for an unknown track or step. */
export function section(scene: Scene, trackId: string | undefined, every: string = usualStep): SectionReport {
  const file = trackId === undefined ? scene.tracks[0] : scene.tracks.find((one) => one.id === trackId);
  if (file === undefined) {
    throw unknownId('track', trackId ?? '', scene.tracks);
  }
  const step = parseLength(every, { most: longestStep });
  if (!step.ok) throw new BadInput(`--every ${step.message}`);
  if (step.value <= 0) {
    throw new BadInput(
      `--every ${every}: rows come a step apart, and a step is longer than 0. For example --every 10mm.`,
    );
  }
  const lengthMm = trackLengthMm(file);
  if (lengthMm / 1e3 / step.value > mostRows) {
    const least = formatLength(lengthMm / 1e3 / mostRows, { unit: 'mm', digits: 2 });
    throw new BadInput(
      `--every ${every} makes more than ${mostRows} rows of this track. From about ${least} on it goes.`,
    );
  }
  try {
    const track = compileScene(scene).tracks.get(file.id);
    if (track === undefined) throw new RangeError(`Track "${file.id}" was not compiled.`);
    return {
      report: 'gradewright-section',
      version: 1,
      scene: scene.name,
      track: file.id,
      lengthMm: track.length * 1e3,
      railLengthMm: track.railLength * 1e3,
      rows: sectionRows(track, step.value).map((point) => ({
        chainageMm: point.chainage * 1e3,
        xMm: point.x * 1e3,
        yMm: point.y * 1e3,
        heightMm: point.z * 1e3,
        headingDeg: (point.heading * 180) / Math.PI,
        curvaturePerM: point.curvature,
        gradePercent: point.grade * 100,
        verticalCurvaturePerM: point.verticalCurvature,
      })),
    };
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}

const columns = Object.keys(row.shape) as (keyof Row)[];

/** The rows as comma-separated values with a heading, in full precision. */
export const sectionCsv = ({ rows }: SectionReport): string =>
  `${[columns.join(','), ...rows.map((one) => columns.map((column) => String(one[column])).join(','))].join('\n')}\n`;

const decimals: Readonly<Record<keyof Row, number>> = {
  chainageMm: 1,
  xMm: 1,
  yMm: 1,
  heightMm: 2,
  headingDeg: 2,
  curvaturePerM: 4,
  gradePercent: 3,
  verticalCurvaturePerM: 5,
};

/** The rows as a table for the eye, rounded. */
export function sectionText(report: SectionReport): string {
  const cells = report.rows.map((one) => columns.map((column) => rounded(one[column], decimals[column])));
  const widths = columns.map((column, k) => Math.max(column.length, ...cells.map((line) => line[k].length)));
  const line = (parts: readonly string[]) => parts.map((part, k) => part.padStart(widths[k])).join('  ');
  return `${[`${report.scene}, track ${report.track}`, line(columns), ...cells.map(line)].join('\n')}\n`;
}

/** Fixed decimals, without a minus before nothing. */
const rounded = (value: number, digits: number): string => value.toFixed(digits).replace(/^-(?=[0.]+$)/, '');
