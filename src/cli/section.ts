import { z } from 'zod';
import { cos, sin } from '../core/math/index.ts';
import { mostCant } from '../core/stock/index.ts';
import { type CantRun, type LaidCant, laidCant, railCentres, sectionRows } from '../core/track/index.ts';
import { formatLength, parseLength } from '../core/units/index.ts';
import { type Scene, trackLengthMm } from '../scene/index.ts';
import { foulingPoints } from '../sim/advice/index.ts';
import { type CompiledScene, compileScene } from '../sim/index.ts';
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
  cantMm: number(
    'Right rail above left one at the middles of their heads, mm: positive on a left-hand curve that leans inward.',
  ),
  twistMmPerM: number('Change of cantMm for each metre of chainage.'),
});

const run = z.strictObject({
  fromMm: number('Chainage, mm.'),
  toMm: number('Chainage, mm.'),
  twistMmPerM: row.shape.twistMmPerM,
});

const cant = z
  .strictObject({
    gaugeMm: number('Between the rails, mm.'),
    mostMm: number('Greatest cant either way, found between rows too, with the sign of cantMm.'),
    mostAtMm: number('Where, chainage, mm.'),
    allowedMm: number('What NEM 114 (2007) allows on this gauge, mm.'),
    steepest: run
      .optional()
      .meta({ description: 'The run-in that twists most; left out where the cant never changes.' }),
    offEasement: z
      .array(run)
      .meta({ description: 'Run-ins on straights and within arcs; the norm has them along easements.' }),
  })
  .meta({ description: 'Held against NEM 114 (2007); left out where the track is level across everywhere.' });

const place = (about: string) => z.number().optional().meta({ description: about });

const turnout = z
  .strictObject({
    main: z.string().meta({ description: 'Id of the track that it lies in.' }),
    branch: z.string().meta({ description: 'Id of the track that leaves by it.' }),
    clearFromMm: place(
      'From this chainage on, away from the turnout, what stands on this track is clear of the other by the norm; left out where nowhere on it.',
    ),
    hitUpToMm: place('Up to this chainage bodies touch; left out where the track ends before.'),
    spacingMm: number('What the norm gives parallel tracks, mm.'),
  })
  .meta({ description: 'A turnout in this track, or the one that it begins with.' });

/** The document that `gradewright section --json` writes. */
export const sectionReportSchema = z
  .strictObject({
    report: z.literal('gradewright-section'),
    version: z.literal(1),
    scene: z.string(),
    track: z.string().meta({ description: 'Id of the track.' }),
    lengthMm: number('Length in plan, mm.'),
    railLengthMm: number('Length along the rail, mm.'),
    cant: cant.optional(),
    turnouts: z.array(turnout).optional().meta({ description: 'Left out where the track has none.' }),
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
    const compiled = compileScene(scene);
    const track = compiled.tracks.get(file.id);
    if (track === undefined) throw new RangeError(`Track "${file.id}" was not compiled.`);
    const gauge = (file.cant ?? scene.scale).gaugeMm / 1e3;
    const laid = laidCant(track);
    const apart = railCentres(gauge);
    const turnouts = turnoutsOf(compiled, file.id);
    return {
      report: 'gradewright-section',
      version: 1,
      scene: scene.name,
      track: file.id,
      lengthMm: track.length * 1e3,
      railLengthMm: track.railLength * 1e3,
      ...(laid && { cant: cantReport(laid, gauge) }),
      ...(turnouts.length > 0 && { turnouts }),
      rows: sectionRows(track, step.value).map((point) => ({
        chainageMm: point.chainage * 1e3,
        xMm: point.x * 1e3,
        yMm: point.y * 1e3,
        heightMm: point.z * 1e3,
        headingDeg: (point.heading * 180) / Math.PI,
        curvaturePerM: point.curvature,
        gradePercent: point.grade * 100,
        verticalCurvaturePerM: point.verticalCurvature,
        cantMm: apart * sin(point.cant) * 1e3,
        twistMmPerM: apart * cos(point.cant) * point.twist * 1e3,
      })),
    };
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}

/** Where vehicles stand clear on one track of the turnouts in it. */
function turnoutsOf(compiled: CompiledScene, trackId: string): NonNullable<SectionReport['turnouts']> {
  return foulingPoints(compiled).flatMap(({ branch, stands, limit }) => {
    const own = stands.find((one) => one.trackId === trackId);
    if (own === undefined) return [];
    const { clear, hit } = own;
    return [
      {
        main: stands[0].trackId,
        branch,
        ...(clear !== null && { clearFromMm: clear * 1e3 }),
        ...(hit !== null && { hitUpToMm: hit * 1e3 }),
        spacingMm: limit * 1e3,
      },
    ];
  });
}

function cantReport({ most, steepest, offEasement }: LaidCant, gauge: number): NonNullable<SectionReport['cant']> {
  const apart = railCentres(gauge);
  const told = ({ from, to, twist }: CantRun) => ({
    fromMm: from * 1e3,
    toMm: to * 1e3,
    twistMmPerM: apart * twist * 1e3,
  });
  return {
    gaugeMm: gauge * 1e3,
    mostMm: apart * sin(most.cant) * 1e3,
    mostAtMm: most.chainage * 1e3,
    allowedMm: mostCant(gauge) * 1e3,
    ...(steepest && { steepest: told(steepest) }),
    offEasement: offEasement.map(told),
  };
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
  cantMm: 2,
  twistMmPerM: 2,
};

/** Cant that passes the norm's limit by less than this, mm, is rounding of its angle. */
const cantRoundingMm = 1e-6;

/** What the cant of the whole track comes to, in sentences. */
function cantText(report: SectionReport): string[] {
  const { cant } = report;
  if (cant === undefined) return [];
  const [most, allowed] = [rounded(Math.abs(cant.mostMm), 2), rounded(cant.allowedMm, 2)];
  const over = Math.abs(cant.mostMm) > cant.allowedMm + cantRoundingMm;
  const verdict = over
    ? `more than the ${allowed} mm of NEM 114 (2007), whose concern is tipping inward`
    : `within the ${allowed} mm of NEM 114 (2007)`;
  const lines = [`Cant at most ${most} mm, at ${rounded(cant.mostAtMm, 1)} mm: ${verdict}.`];
  if (cant.steepest !== undefined) {
    const { fromMm, toMm, twistMmPerM } = cant.steepest;
    const twist = rounded(Math.abs(twistMmPerM), 2);
    lines.push(`Twist at most ${twist} mm in a metre, from ${rounded(fromMm, 1)} to ${rounded(toMm, 1)} mm.`);
  }
  for (const { fromMm, toMm } of cant.offEasement) {
    const stretch = `${rounded(fromMm, 1)} to ${rounded(toMm, 1)} mm`;
    lines.push(`Cant runs in from ${stretch}, where the curvature stays; the norm has it run in along an easement.`);
  }
  return lines;
}

/** Where vehicles stand clear of the turnouts, in sentences. */
function turnoutText({ turnouts = [], track }: SectionReport): string[] {
  return turnouts.map(({ main, branch, clearFromMm, hitUpToMm, spacingMm }) => {
    const which = track === main ? `the turnout to ${branch}` : `its turnout in ${main}`;
    const touch = hitUpToMm === undefined ? 'bodies touch all along' : `bodies touch up to ${rounded(hitUpToMm, 0)} mm`;
    const norm = `${rounded(spacingMm, 0)} mm between parallel tracks`;
    return clearFromMm === undefined
      ? `Nothing stands clear of ${which} by the norm (${norm}); ${touch}.`
      : `Stands clear of ${which} from ${rounded(clearFromMm, 0)} mm, away from it (${norm}); ${touch}.`;
  });
}

/** The rows as a table for the eye, rounded. */
export function sectionText(report: SectionReport): string {
  const cells = report.rows.map((one) => columns.map((column) => rounded(one[column], decimals[column])));
  const widths = columns.map((column, k) => Math.max(column.length, ...cells.map((line) => line[k].length)));
  const line = (parts: readonly string[]) => parts.map((part, k) => part.padStart(widths[k])).join('  ');
  return `${[`${report.scene}, track ${report.track}`, ...cantText(report), ...turnoutText(report), line(columns), ...cells.map(line)].join('\n')}\n`;
}

/** Fixed decimals, without a minus before nothing. */
const rounded = (value: number, digits: number): string => value.toFixed(digits).replace(/^-(?=[0.]+$)/, '');
