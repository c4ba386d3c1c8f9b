import type { StudyHooks } from '../../core/study/index.ts';
import type { Scene } from '../../scene/index.ts';
import { type ProbeBy, probeScene } from '../../sim/study/index.ts';
import { loadTable } from '../../sim/study/loads.ts';
import { BadInput, exitCodes } from '../exitCodes.ts';
import type { LoadsReport } from './loadsReport.ts';
import { csvOf, outcomeColumns, outcomeFields } from './studyOutcome.ts';
import { callText, type StudyOptions, studyGauge, studyTrials, wholeText } from './studyTrials.ts';
import type { StudyOutput } from './sweep.ts';

export interface LoadsOptions extends Omit<StudyOptions, 'quick'> {
  /** Ids of engines and of kinds of vehicle; all that have a drive and all that have none when left out. */
  readonly engine?: readonly string[] | undefined;
  readonly kind?: readonly string[] | undefined;
  readonly most?: string | undefined;
}

/** Most vehicles asked about when nothing else is said. */
const usualMost = 40;

/**
 * The greatest number of vehicles of each kind that each engine takes through each trial. `--risk` names the one risk that decides; all do
 * when it is left out. Exit code: passes when every engine takes at least one. Throws BadInput for ids that are not there.
 */
export async function loads(
  scene: Scene,
  options: LoadsOptions,
  hooks: StudyHooks = {},
  probe: ProbeBy = probeScene,
): Promise<StudyOutput<LoadsReport>> {
  const trials = studyTrials(scene, options.trial, ['']);
  const gauge = studyGauge(options.risk);
  const engines = options.engine ?? scene.stock.flatMap(({ id, drive }) => (drive === undefined ? [] : [id]));
  const kinds =
    options.kind ??
    scene.stock.flatMap(({ id, drive, kind }) => (drive === undefined && kind !== 'tender' ? [id] : []));
  const most = options.most === undefined ? usualMost : Number(options.most);
  if (!(Number.isInteger(most) && most >= 1 && most <= 110)) {
    throw new BadInput(`--most is a whole number from 1 to 110, not "${options.most}".`);
  }
  try {
    const found = await loadTable(scene, { trialIds: trials, engines, kinds, most, gauge }, probe, hooks);
    const rows = found.loads.map(({ trialId, engine, kind, passes, fails, mass, failing }) => ({
      trial: trialId,
      engine,
      kind,
      passes,
      fails,
      massG: mass * 1e3,
      failing: failing === null ? null : outcomeFields(failing, { gauge }),
    }));
    const lines = found.loads.map(
      ({ trialId, engine, kind, passes, mass, failing }) =>
        `  ${trialId}: ${engine} takes ${passes < 0 ? 'nothing, not even itself' : `${passes} x ${kind} (${(mass * 1e3).toFixed(0)} g)`}` +
        `${failing === null ? ', the most asked about' : `; one more: ${callText(failing, { gauge }, false)}`}`,
    );
    return {
      report: {
        report: 'gradewright-loads',
        version: 1,
        scene: scene.name,
        trials,
        gauge,
        exactness: 'run',
        whole: found.whole,
        loads: rows,
      },
      text: `${scene.name}\n${lines.join('\n')}\n${wholeText(found.whole)}`,
      csv: csvOf(
        ['trial', 'engine', 'kind', 'passes', 'fails', 'massG', ...outcomeColumns.slice(1)],
        rows.map(({ failing, ...row }) => ({ ...failing, ...row })),
      ),
      exitCode: rows.every(({ passes }) => passes >= 1) ? exitCodes.passes : exitCodes.fails,
    };
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}
