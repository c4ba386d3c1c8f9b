import { usualInstruments } from '../../core/survey/index.ts';
import type { SceneInstrument, SceneReading, SceneSurvey } from '../../scene/index.ts';
import type { LevelKind, ReadingKind, Tool, Tools } from './types.ts';

export const readingKinds: readonly ReadingKind[] = ['grade', 'height', 'rise', 'gap', 'cross'];

/** Whether a kind of reading is taken with a level, and so is a grade. */
export const isByLevel = (kind: ReadingKind): kind is LevelKind => kind === 'grade' || kind === 'cross';

/** Length of a level or straightedge that nothing is said of, mm: a foot, near enough (common practice, no source). */
const usualBaseMm = 300;

const usualTool = (kind: ReadingKind): Tool => {
  const { step, deviation } = usualInstruments[kind];
  // Per cent for a level, mm for the rest.
  const unit = isByLevel(kind) ? 100 : 1000;
  return {
    unit: 'percent',
    step: tidy(step * unit),
    error: tidy(deviation * unit),
    baseMm: usualBaseMm,
    places: 'spans',
    line: '',
    further: 1,
    boardMm: 0,
  };
};

/** Instruments as nobody has said anything of them. */
export const usualTools = (): Tools => ({
  grade: usualTool('grade'),
  height: usualTool('height'),
  rise: usualTool('rise'),
  gap: usualTool('gap'),
  cross: usualTool('cross'),
});

/** Instruments as a survey says they are, set up as for its latest readings. */
export function toolsOf(survey: SceneSurvey): Tools {
  const tools: Record<ReadingKind, Tool> = { ...usualTools() };
  for (const kind of readingKinds) {
    const own = survey.instruments?.find(({ reads }) => reads === kind);
    const last = survey.readings.findLast(
      (reading) => reading.kind === kind && (reading.instrument === undefined || reading.instrument === own?.id),
    );
    tools[kind] = { ...tools[kind], ...(own && instrumentSays(own)), ...(last && readingSays(last)) };
  }
  return tools;
}

function instrumentSays(own: SceneInstrument): Partial<Tool> {
  if (!isByLevel(own.reads)) {
    return {
      ...(own.stepMm !== undefined && { step: own.stepMm }),
      ...(own.errorMm !== undefined && { error: own.errorMm }),
    };
  }
  const inDegrees = own.stepDeg !== undefined;
  const step = own.stepDeg ?? own.stepPercent;
  return {
    ...(inDegrees && { unit: 'degree' as const }),
    ...(step !== undefined && { step }),
    ...(own.errorPercent !== undefined && { error: own.errorPercent }),
  };
}

function readingSays(last: SceneReading): Partial<Tool> {
  switch (last.kind) {
    case 'grade':
      return {
        baseMm: last.baseMm,
        unit: last.gradeDeg === undefined ? 'percent' : 'degree',
        places: last.support === undefined ? 'spans' : 'supports',
      };
    case 'height':
      return { line: last.line ?? '' };
    case 'rise':
      return { further: Math.max(1, last.toSupport - last.fromSupport), boardMm: last.boardMm ?? 0 };
    case 'gap':
      return { baseMm: last.baseMm };
    case 'cross':
      return { unit: last.crossDeg === undefined ? 'percent' : 'degree' };
  }
}

/** The survey with an instrument saying what is said of it; readings of its kind that name none are taken with it. */
export function withInstrument(survey: SceneSurvey, kind: ReadingKind, tool: Tool): SceneSurvey {
  const all = survey.instruments ?? [];
  const at = all.findIndex(({ reads }) => reads === kind);
  const old = at < 0 ? { id: usualInstruments[kind].id, reads: kind } : all[at];
  const next = instrumentWith(old, tool);
  if (JSON.stringify(next) === JSON.stringify(all[at])) return survey;
  return { ...survey, instruments: at < 0 ? [...all, next] : all.with(at, next) };
}

function instrumentWith(old: SceneInstrument, { unit, step, error }: Tool): SceneInstrument {
  if (!isByLevel(old.reads)) return { ...old, errorMm: error, stepMm: step };
  const { stepDeg: _deg, stepPercent: _percent, ...rest } = old;
  return { ...rest, errorPercent: error, ...(unit === 'degree' ? { stepDeg: step } : { stepPercent: step }) };
}

/** Ten significant digits: what was typed, without the tail of a binary number. */
export function tidy(value: number): number {
  return Number(value.toPrecision(10));
}
