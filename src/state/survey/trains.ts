import { proportion } from '../../core/study/index.ts';
import type { Survey } from '../../core/survey/types.ts';
import type { Scene } from '../../scene/index.ts';
import { type Exactness, type Probe, type ProbePool, passesBy } from '../../sim/study/index.ts';
import { asBuiltScene, type DrawnLine, drawnLines, leansOf } from '../../sim/survey/index.ts';
import type { Trains, TrainsOutcome } from './types.ts';

/** Lines drawn from what the readings leave open: twenty that all pass still leave up to one in six failing. */
export const drawCount = 20;

/** The same lines every time: before and after the work, today and tomorrow. */
const seed = 1;

export interface TrainsTask {
  readonly scene: Scene;
  readonly trackId: string;
  readonly trial: { readonly id: string; readonly name: string };
  readonly survey: Survey;
  /** Departures after the work, m; null where there is none. */
  readonly mended: ArrayLike<number> | null;
  readonly exactness: Exactness;
}

const nothing: TrainsOutcome = { probe: null, draws: 0, passed: 0, share: null };

/** Runs the trial on the line as estimated and as mended, then on drawn lines; tells all that is known each time it grows. */
export async function runTrains(
  task: TrainsTask,
  pool: ProbePool,
  signal: AbortSignal,
  tell: (trains: Trains) => void,
): Promise<void> {
  const { scene, trackId, trial, survey, mended, exactness } = task;
  const estimated = survey.explanation.departures;
  const drawn = drawnLines(survey, drawCount, seed);
  const leans = leansOf(survey);
  const after = mended === null ? null : { ...nothing };
  let trains: Trains = { trialName: trial.name, before: nothing, after, progress: 0 };
  const all = (mended === null ? 1 : 2) * (1 + drawCount);
  let done = 0;
  tell(trains);

  const run = async (
    when: 'before' | 'after',
    departures: ArrayLike<number>,
    across: DrawnLine['leans'],
    draw: boolean,
  ): Promise<void> => {
    const line = asBuiltScene(scene, trackId, departures, across?.[when] ?? null);
    const probe = await pool.probe({ scene: line, settings: [], trialIds: [trial.id], exactness }, { signal });
    if (signal.aborted) return;
    done++;
    const was = trains[when] ?? nothing;
    const now = draw ? withDraw(was, probe) : { ...was, probe };
    trains = { ...trains, [when]: now, progress: done < all ? done / all : null };
    tell(trains);
  };

  const changes = mended === null ? null : estimated.map((departure, i) => mended[i] - departure);
  const lanes = [run('before', estimated, leans, false)];
  if (mended !== null) lanes.push(run('after', mended, leans, false));
  for (const { departures, leans: across } of drawn) {
    lanes.push(run('before', departures, across, true));
    if (changes !== null)
      lanes.push(
        run(
          'after',
          departures.map((departure, i) => departure + changes[i]),
          across,
          true,
        ),
      );
  }
  await Promise.all(lanes);
}

function withDraw({ probe, draws, passed }: TrainsOutcome, drawn: Probe): TrainsOutcome {
  const hits = passed + (passesBy('all')(drawn) ? 1 : 0);
  return { probe, draws: draws + 1, passed: hits, share: proportion(hits, draws + 1) };
}
