import type { StudyHooks } from '../../core/study/index.ts';
import { type Scene, type SceneQuantity, sceneQuantities } from '../../scene/index.ts';
import {
  type Exactness,
  type Measure,
  mapScene,
  measureUnits,
  type Probe,
  type ProbeBy,
  passesBy,
  probeScene,
  sweepScene,
} from '../../sim/study/index.ts';
import { BadInput, type ExitCode, exitCodes } from '../exitCodes.ts';
import { fieldNumber, rangeOf } from '../fieldText.ts';
import { measureOf, measureText } from './measureFields.ts';
import { csvOf, outcomeColumns, outcomeFields } from './studyOutcome.ts';
import {
  callText,
  checkAddress,
  type Judging,
  judgingFields,
  type StudyOptions,
  studyJudging,
  studyTrials,
  wholeText,
} from './studyTrials.ts';
import type { SweepReport } from './sweepReport.ts';

export interface SweepOptions extends StudyOptions {
  /** One or two of `ADDRESS=FROM..TO`. */
  readonly vary: readonly string[];
  readonly points?: string | undefined;
  readonly edge?: string | undefined;
  /** Words of measures to be told of every value. */
  readonly measure?: readonly string[] | undefined;
}

export interface StudyOutput<R> {
  readonly report: R;
  readonly text: string;
  readonly csv: string;
  readonly exitCode: ExitCode;
}

/** Points of a sweep and of each side of a map when none are asked for. */
const usualPoints = { line: 9, map: 6 };
const mostPoints = 200;

/** Halvings of a map's cells on the border: the border is then known to an eighth of a cell. */
const mapRefinement = 3;

/** An edge is pinned down to this share of the range when nothing else is asked for. */
const usualEdge = 1 / 64;

/**
 * Sweeps one number of a scene, or maps two, and says where passing turns into failing. Exit code: passes when something does,
 * fails when nothing in the range passes. Throws BadInput for addresses and ranges that say nothing.
 */
export async function sweep(
  scene: Scene,
  options: SweepOptions,
  hooks: StudyHooks = {},
  probe: ProbeBy = probeScene,
): Promise<StudyOutput<SweepReport>> {
  const ranges = options.vary.map((one) => rangeOf('vary', one));
  if (ranges.length < 1 || ranges.length > 2) throw new BadInput('Give --vary once for a curve, twice for a map.');
  for (const { at } of ranges) checkAddress(scene, at);
  const trialIds = studyTrials(
    scene,
    options.trial,
    ranges.map(({ at }) => at),
  );
  const judging = studyJudging(options);
  const told = (options.measure ?? []).map(measureOf);
  const exactness: Exactness = options.quick === true ? 'steady' : 'run';
  const spec = { trialIds, ...judging, exactness };
  const points = pointsOf(options.points, ranges.length === 1 ? usualPoints.line : usualPoints.map);
  const head = {
    report: 'gradewright-sweep',
    version: 1,
    scene: scene.name,
    trials: trialIds,
    ...judgingFields(judging),
    exactness,
    quantities: ranges,
  } as const;
  try {
    const [first, second] = ranges;
    if (second === undefined) {
      const span = Math.abs(first.to - first.from);
      const edgeWithin = options.edge === undefined ? span * usualEdge : fieldNumber(first.at, options.edge);
      const whole = sceneQuantities(scene).find(({ at }) => at === first.at)?.whole === true;
      const line = await sweepScene(scene, { ...first, points, edgeWithin, whole }, spec, probe, hooks);
      const rows = line.points.map(({ at, outcome }) => ({ values: [at], outcome }));
      const report = {
        ...head,
        whole: line.whole,
        points: pointRows(rows, judging),
        edges: line.edges.map((edge) => ({ ...edge })),
      };
      return output(report, rows, judging, told, edgeText(report.edges, rows, judging));
    }
    const area = await mapScene(scene, { ...first, points }, { ...second, points }, mapRefinement, spec, probe, hooks);
    const rows = area.outcomes.flatMap((outcome, k) => {
      const values = [area.across[k % points], area.up[Math.floor(k / points)]];
      return outcome === null ? [] : [{ values, outcome }];
    });
    const [outline, brink] = [area.outline, area.brink].map((pieces) =>
      pieces.map((piece) => piece.map((place) => [...place])),
    );
    const report = { ...head, whole: area.whole, points: pointRows(rows, judging), outline, brink };
    const contours = told.length === 1 ? measureMap(told[0], rows) : '';
    return output(report, rows, judging, told, `${mapText(rows, judging)}${contours}`);
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}

interface Row {
  readonly values: number[];
  readonly outcome: Probe;
}

const pointRows = (rows: readonly Row[], judging: Judging): SweepReport['points'] =>
  rows.map(({ values, outcome }) => ({ values, ...outcomeFields(outcome, judging) }));

function pointsOf(text: string | undefined, usual: number): number {
  const points = text === undefined ? usual : Number(text);
  if (Number.isInteger(points) && points >= 2 && points <= mostPoints) return points;
  throw new BadInput(`--points is a whole number from 2 to ${mostPoints}, not "${text}".`);
}

function output(
  report: SweepReport,
  rows: readonly Row[],
  judging: Judging,
  told: readonly Measure[],
  conclusion: string,
): StudyOutput<SweepReport> {
  const passes = passesBy(judging.gauge, judging.limits);
  const several = report.trials.length > 1;
  const cells = rows.map(({ values, outcome }) => [
    ...values.map(short),
    passes(outcome) ? 'passes' : 'fails',
    ...told.map((measure) => measureText(measure, outcome)),
    callText(outcome, judging, several),
  ]);
  const widths = Array.from({ length: report.quantities.length + 1 + told.length }, (_, k) =>
    Math.max(0, ...cells.map((row) => row[k]?.length ?? 0)),
  );
  const lines = cells.map(
    (row) => `  ${row.map((cell, k) => (k < widths.length ? cell.padEnd(widths[k]) : cell)).join('  ')}`,
  );
  const names = report.quantities.map(({ at, from, to }) => `${at} from ${short(from)} to ${short(to)}`).join(', ');
  const quick = report.exactness === 'steady' ? ' Quasi-static pass only: run-ins are left out.' : '';
  return {
    report,
    text: `${report.scene}: ${names}\n${lines.map((line) => line.trimEnd()).join('\n')}\n${conclusion}${quick}\n${wholeText(report.whole)}`,
    csv: csvOf(
      [...report.quantities.map(({ at }) => at), ...outcomeColumns],
      report.points.map(({ values, ...rest }) => ({
        ...Object.fromEntries(report.quantities.map(({ at }, k) => [at, values[k]])),
        ...rest,
      })),
    ),
    exitCode: rows.some(({ outcome }) => passes(outcome)) ? exitCodes.passes : exitCodes.fails,
  };
}

function edgeText(edges: NonNullable<SweepReport['edges']>, rows: readonly Row[], { gauge, limits }: Judging): string {
  if (rows.length === 0) return 'Nothing was run.';
  if (edges.length === 0)
    return `Everything in the range ${passesBy(gauge, limits)(rows[0].outcome) ? 'passes' : 'fails'}.`;
  return edges
    .map(({ passes, fails }) =>
      passes < fails
        ? `Passes up to ${short(passes)}, fails from ${short(fails)}.`
        : `Fails up to ${short(fails)}, passes from ${short(passes)}.`,
    )
    .join(' ');
}

/** The map as rows of marks, the greatest second value on top as on a drawing; a blank where it was stopped before. */
function mapText(rows: readonly Row[], { gauge, limits }: Judging): string {
  if (rows.length === 0) return 'Nothing was run.';
  const passes = passesBy(gauge, limits);
  const valuesOf = (k: number): number[] => [...new Set(rows.map(({ values }) => values[k]))].sort((a, b) => a - b);
  const [across, up] = [valuesOf(0), valuesOf(1)];
  const marks = new Map(rows.map(({ values, outcome }) => [values.join(), passes(outcome) ? 'o' : '.']));
  const lines = up.map(
    (high) => `${short(high).padStart(10)}  ${across.map((x) => marks.get([x, high].join()) ?? ' ').join(' ')}`,
  );
  return `o passes, . fails; across from ${short(across[0])} to ${short(across[across.length - 1])}, up by the second number:\n${lines.reverse().join('\n')}`;
}

/** The same map with what a measure comes to, in the unit that is said. */
function measureMap(measure: Measure, rows: readonly Row[]): string {
  const { shown, si } = measureUnits[measure.unit];
  const valuesOf = (k: number): number[] => [...new Set(rows.map(({ values }) => values[k]))].sort((a, b) => a - b);
  const [across, up] = [valuesOf(0), valuesOf(1)];
  const cells = new Map(
    rows.map(({ values, outcome }) => {
      const value = measure.value(outcome);
      return [values.join(), value === null || !Number.isFinite(value) ? '-' : short(value / si)];
    }),
  );
  const width = Math.max(...[...cells.values()].map((cell) => cell.length));
  const lines = up.map(
    (high) =>
      `${short(high).padStart(10)}  ${across.map((x) => (cells.get([x, high].join()) ?? '').padStart(width)).join(' ')}`,
  );
  return `\n${measure.title}, ${shown}:\n${lines.reverse().join('\n')}`;
}

/** Four significant digits, without an exponent. */
const short = (value: number): string => String(Number(value.toPrecision(4)));

/** Every number of a scene that can be swept, one a line: address, value, meaning. */
export function quantityList(scene: Scene): string {
  const quantities = sceneQuantities(scene);
  const width = Math.max(...quantities.map(({ at }) => at.length));
  return quantities.map((one) => `${one.at.padEnd(width)}  ${short(one.value).padStart(8)}  ${about(one)}\n`).join('');
}

const about = ({ of, about: meaning }: SceneQuantity): string =>
  of.length === 0 ? meaning : `${of.join(', ')}: ${meaning}`;
