import type { StudyHooks } from '../../core/study/index.ts';
import { readAt, type Scene, variantScene } from '../../scene/index.ts';
import {
  type Candidate,
  type Compared,
  compareScenes,
  type Exactness,
  type Measure,
  type ProbeBy,
  probeScene,
  type RouteMeasure,
  vary,
} from '../../sim/study/index.ts';
import { BadInput, exitCodes } from '../exitCodes.ts';
import { assignment, fieldNumber } from '../fieldText.ts';
import { problemText } from '../readScene.ts';
import { finiteMm } from '../reportFields.ts';
import type { CompareReport, TrackFields } from './compareReport.ts';
import { measureOf, measureText } from './measureFields.ts';
import { csvOf, outcomeColumns, outcomeFields } from './studyOutcome.ts';
import { callText, judgingFields, type StudyOptions, studyJudging, studyTrials, wholeText } from './studyTrials.ts';
import type { StudyOutput } from './sweep.ts';

export interface CompareOptions extends StudyOptions {
  /** Each one a railway: `ADDRESS=VALUE`, several with ";" between, and a name with ":" before if wanted. */
  readonly with: readonly string[];
  /** Ids of the scene's own variants; all of them when neither these nor `with` are given. */
  readonly variant: readonly string[];
  /** Words of measures to be told of every railway. */
  readonly measure?: readonly string[] | undefined;
}

/**
 * Sets the scene beside variants of it: what each comes to in its trials, and what its tracks take. Exit code: passes when all of
 * them pass. Throws BadInput for variants that lead nowhere and when there is nothing to compare.
 */
export async function compare(
  scene: Scene,
  options: CompareOptions,
  hooks: StudyHooks = {},
  probe: ProbeBy = probeScene,
): Promise<StudyOutput<CompareReport>> {
  const named = options.with.length + options.variant.length > 0;
  const ids = named ? options.variant : (scene.variants ?? []).map(({ id }) => id);
  const candidates: Candidate[] = [
    { name: 'as it is', scene },
    ...ids.map((id) => ownVariant(scene, id)),
    ...options.with.map((text) => spokenVariant(scene, text)),
  ];
  if (candidates.length === 1) {
    throw new BadInput('There is nothing to compare with: the scene has no variants; give --with ADDRESS=VALUE.');
  }
  const trials = studyTrials(scene, options.trial, ['']);
  const judging = studyJudging(options);
  const told = (options.measure ?? []).map(measureOf);
  const exactness: Exactness = options.quick === true ? 'steady' : 'run';
  const rows = await compareScenes(candidates, trials, exactness, probe, hooks);
  const railways = rows.map((row) => ({
    name: row.name,
    ...outcomeFields(row.probe, judging),
    tracks: [...row.tracks].map(([id, measure]) => trackFields(id, measure)),
  }));
  const report: CompareReport = {
    report: 'gradewright-compare',
    version: 1,
    scene: scene.name,
    trials,
    ...judgingFields(judging),
    exactness,
    whole: rows.length === candidates.length,
    railways,
  };
  const several = trials.length > 1;
  return {
    report,
    text: `${scene.name}\n${rows.map((row, k) => rowText(row, railways[k], callText(row.probe, judging, several), told)).join('\n')}\n${wholeText(rows.length === candidates.length)}`,
    csv: csvOf(
      ['name', ...trackColumns.map(columnOf), ...outcomeColumns],
      railways.flatMap(({ tracks, ...rest }) =>
        tracks.length === 0 ? [rest] : tracks.map((one) => ({ ...ofTrack(one), ...rest })),
      ),
    ),
    exitCode:
      rows.length === candidates.length && railways.every(({ passes }) => passes) ? exitCodes.passes : exitCodes.fails,
  };
}

function ownVariant(scene: Scene, id: string): Candidate {
  const made = variantScene(scene, id);
  if (!made.ok) throw new BadInput(made.problems.map(problemText).join('\n'));
  const name = scene.variants?.find((one) => one.id === id)?.name ?? id;
  return { name, scene: made.scene };
}

function spokenVariant(scene: Scene, text: string): Candidate {
  const [, name, spoken] = /^(?:([^=]*):)?(.*)$/s.exec(text) ?? [];
  const settings = spoken
    .split(';')
    .filter((part) => part.trim() !== '')
    .map((part) => {
      const { at, value } = assignment('with', part);
      const old = readAt(scene, at);
      return {
        at,
        to: typeof old === 'string' || typeof old === 'boolean' ? JSON.parse(wordOf(value)) : fieldNumber(at, value),
      };
    });
  const made = vary(scene, settings);
  if (!made.ok) throw new BadInput(`--with "${text}": ${made.reason}`);
  return { name: name?.trim() || spoken.trim(), scene: made.scene };
}

/** A word as JSON has it: true and false as they are, anything else in quotes. */
const wordOf = (value: string): string => (value === 'true' || value === 'false' ? value : JSON.stringify(value));

const trackFields = (track: string, measure: RouteMeasure): TrackFields => ({
  track,
  lengthMm: measure.length * 1e3,
  riseMm: measure.rise * 1e3,
  steepestPercent: measure.steepest * 100,
  tightestRadiusMm: finiteMm(measure.tightest),
  sharpestVerticalRadiusMm: finiteMm(measure.sharpest),
  acrossMm: measure.across * 1e3,
  alongMm: measure.along * 1e3,
});

const trackColumns = [
  'track',
  'lengthMm',
  'riseMm',
  'steepestPercent',
  'tightestRadiusMm',
  'sharpestVerticalRadiusMm',
  'acrossMm',
  'alongMm',
] as const satisfies readonly (keyof TrackFields)[];

/** Measures of all tracks together stand beside those of each: the columns of one track say so. */
const columnOf = (field: keyof TrackFields): string =>
  field === 'track' ? field : `track${field[0].toUpperCase()}${field.slice(1)}`;

const ofTrack = (fields: TrackFields): object =>
  Object.fromEntries(trackColumns.map((field) => [columnOf(field), fields[field] ?? undefined]));

function rowText(
  { name, probe }: Compared,
  { passes, tracks }: CompareReport['railways'][number],
  call: string,
  told: readonly Measure[],
): string {
  const takes = tracks.map(
    (one) =>
      `         ${one.track}: ${(one.lengthMm / 1e3).toFixed(2)} m long, rises ${one.riseMm.toFixed(0)} mm, ` +
      `at most ${one.steepestPercent.toFixed(2)} %, ` +
      `${one.tightestRadiusMm === null ? 'straight' : `tightest ${one.tightestRadiusMm.toFixed(0)} mm`}, ` +
      `takes ${one.acrossMm.toFixed(0)} x ${one.alongMm.toFixed(0)} mm`,
  );
  return [
    `  ${passes ? 'passes' : 'fails '} ${name}: ${call}`,
    ...takes,
    ...told.map((one) => `         ${measureText(one, probe)}`),
  ].join('\n');
}
