import type { Instrument } from '../../core/survey/types.ts';
import type { Scene, SceneInstrument, SceneReading, SceneSurvey } from '../../scene/index.ts';
import { isByLevel, tidy } from './tools.ts';
import type { ReadingKind } from './types.ts';

/** The scene with one of its surveys made another. Throws RangeError when it is not there. */
export function withSurvey(scene: Scene, id: string, make: (survey: SceneSurvey) => SceneSurvey): Scene {
  const surveys = scene.surveys ?? [];
  const at = surveys.findIndex((survey) => survey.id === id);
  if (at < 0) throw new RangeError('That survey is not there any more.');
  return { ...scene, surveys: surveys.with(at, make(surveys[at])) };
}

export function withoutSurvey(scene: Scene, id: string): Scene {
  const { surveys = [], ...rest } = scene;
  const left = surveys.filter((survey) => survey.id !== id);
  return left.length === 0 ? rest : { ...rest, surveys: left };
}

/** The scene without one reading of a survey; the survey goes with its last. */
export function withoutReading(scene: Scene, id: string, index: number): Scene {
  const survey = scene.surveys?.find((one) => one.id === id);
  if (survey?.readings.length === 1) return withoutSurvey(scene, id);
  return withSurvey(scene, id, (one) => ({ ...one, readings: one.readings.toSpliced(index, 1) }));
}

/** A survey with readings from a table, and with what the table says of its instruments. */
export function withTable(
  survey: SceneSurvey,
  readings: readonly SceneReading[],
  instruments: readonly Instrument[],
): SceneSurvey {
  const kinds = new Map<string, ReadingKind>([
    ['level', 'grade'],
    ['line', 'height'],
    ['spacer', 'rise'],
    ['straightedge', 'gap'],
    ['cross-level', 'cross'],
  ]);
  const told = instruments.flatMap((one): SceneInstrument[] => {
    const reads = kinds.get(one.id);
    return reads === undefined ? [] : [{ id: one.id, reads, ...errorsOf(one, reads) }];
  });
  const own = survey.instruments ?? [];
  // What the survey itself says of an instrument stands.
  const added = told.filter(({ reads }) => !own.some((one) => one.reads === reads));
  const all = [...own, ...added];
  return { ...survey, readings: [...survey.readings, ...readings], ...(all.length > 0 && { instruments: all }) };
}

function errorsOf({ deviation, step, zero }: Instrument, reads: ReadingKind): Partial<SceneInstrument> {
  if (isByLevel(reads)) {
    return { errorPercent: tidy(deviation * 100), stepPercent: tidy(step * 100), zeroPercent: tidy(zero * 100) };
  }
  return { errorMm: tidy(deviation * 1000), stepMm: tidy(step * 1000) };
}
