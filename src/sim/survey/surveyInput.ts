import { tan } from '../../core/math/index.ts';
import {
  bendsStrip,
  coarsePitches,
  headroomPairs,
  type Thread,
  usualInstruments,
  usualLimits,
  usualSetting,
} from '../../core/survey/index.ts';
import type {
  Adjuster,
  CrossReading,
  Instrument,
  Limits,
  MendTask,
  Objective,
  Reading,
  SurveyInput,
} from '../../core/survey/types.ts';
import type { Track } from '../../core/track/types.ts';
import { placedSupports, type SceneInstrument, type SceneReading, type SceneSurvey } from '../../scene/index.ts';
import type { CompiledScene } from '../types.ts';

const mm = 1e-3;
const percent = 1e-2;
const degree = Math.PI / 180;

/** Half the width of a deck where the scene gives none, in gauges: 35 mm for 16.5 mm gauge (NEM 122, 2007: formation of H0 70 mm). */
const deckHalfWidthInGauges = 35 / 16.5;

/** Thread of the rods where a survey names none: the commonest for decks on rods (common practice, no source). */
const usualThread: Thread = 'M8';

/** Number of a support that is in no list of the builder's: the heel of a branch's turnout. */
const unlisted = -1;

/** A choice that leads to no survey: no such survey or track in the scene, or a track without supports. */
export class SurveyProblem extends Error {
  override readonly name = 'SurveyProblem';
}

/** Readings of a track with what they were taken with: from the scene's own survey, or from elsewhere. */
export type Taken = Pick<SurveyInput, 'readings' | 'instruments'> &
  Partial<Pick<SurveyInput, 'fixed' | 'setting'>> & { readonly crosses: readonly CrossReading[] };

/** What a survey of the scene holds, in SI. */
export function takenOf(survey: SceneSurvey): Taken {
  const own = (survey.instruments ?? []).map(instrumentOf);
  const usual = Object.values(usualInstruments).filter(({ id }) => !own.some((one) => one.id === id));
  const idFor = (reading: SceneReading): string =>
    reading.instrument ??
    survey.instruments?.find(({ reads }) => reads === reading.kind)?.id ??
    usualInstruments[reading.kind].id;
  return {
    readings: survey.readings.flatMap((reading, index) =>
      reading.kind === 'cross' ? [] : [readingOf(reading, `reading ${index + 1}`, idFor(reading))],
    ),
    crosses: survey.readings.flatMap((reading, index) =>
      reading.kind === 'cross' ? [crossOf(reading, `reading ${index + 1}`, idFor(reading))] : [],
    ),
    instruments: [...own, ...usual],
    fixed: (survey.fixed ?? []).map((number) => number - 1),
    ...(survey.settingMm === undefined ? {} : { setting: survey.settingMm * mm }),
  };
}

function instrumentOf(file: SceneInstrument): Instrument {
  const usual = usualInstruments[file.reads];
  const { id } = file;
  if (file.reads === 'grade' || file.reads === 'cross') {
    const step =
      file.stepDeg === undefined ? (file.stepPercent ?? usual.step / percent) * percent : tan(file.stepDeg * degree);
    const deviation = file.errorPercent === undefined ? usual.deviation : file.errorPercent * percent;
    return { id, deviation, step, zero: file.zeroPercent === undefined ? usual.zero : file.zeroPercent * percent };
  }
  const inMm = (value: number | undefined, otherwise: number): number => (value === undefined ? otherwise : value * mm);
  return {
    id,
    deviation: inMm(file.errorMm, usual.deviation),
    step: inMm(file.stepMm, usual.step),
    zero: inMm(file.zeroMm, usual.zero),
  };
}

type SceneCross = Extract<SceneReading, { readonly kind: 'cross' }>;

const placeOf = (file: Exclude<SceneReading, { readonly kind: 'rise' }>) =>
  file.support === undefined ? { chainage: (file.atMm ?? 0) * mm } : { support: file.support - 1 };

function crossOf(file: SceneCross, name: string, instrument: string): CrossReading {
  const inDegrees = file.crossPercent === undefined;
  const slope = inDegrees ? tan((file.crossDeg ?? 0) * degree) : (file.crossPercent ?? 0) * percent;
  return { name, instrument, at: placeOf(file), slope, unit: inDegrees ? 'degree' : 'percent' };
}

function readingOf(file: Exclude<SceneReading, SceneCross>, name: string, instrument: string): Reading {
  if (file.kind === 'rise') {
    const [from, to] = [file.fromSupport, file.toSupport].map((number) => ({ support: number - 1 }));
    return { kind: 'rise', name, instrument, from, to, rise: file.riseMm * mm, board: (file.boardMm ?? 0) * mm };
  }
  const common = { name, instrument, at: placeOf(file) };
  if (file.kind === 'height') return { kind: 'height', ...common, height: file.heightMm * mm, line: file.line ?? null };
  if (file.kind === 'gap') return { kind: 'gap', ...common, base: file.baseMm * mm, gap: file.gapMm * mm };
  const inDegrees = file.gradePercent === undefined;
  return {
    kind: 'grade',
    ...common,
    anchor: file.anchor ?? 'centre',
    base: file.baseMm * mm,
    grade: inDegrees ? tan((file.gradeDeg ?? 0) * degree) : (file.gradePercent ?? 0) * percent,
    unit: inDegrees ? 'degree' : 'percent',
    face: file.turned === true ? -1 : 1,
  };
}

/** Everything that readings of a track are estimated with. Throws SurveyProblem for a track that has no supports. */
export function surveyInput(compiled: CompiledScene, trackId: string, taken: Taken): SurveyInput {
  const track = trackOf(compiled, trackId);
  const strip = track.spec.profile.strip;
  if (strip === undefined || strip.supports.length < 2) {
    throw new SurveyProblem(
      `Track "${trackId}" has no supports: give it some, such as "supports": { "everyMm": 300 }.`,
    );
  }
  const { supports: standing, loads: _loads, ...template } = strip;
  const file = compiled.scene.tracks.find(({ id }) => id === trackId);
  // By the builder's own numbers: a branch's strip begins with the heel of its turnout, and has no supports before it.
  const supports = file === undefined ? [] : placedSupports(file).map(({ atMm }) => atMm * mm);
  const heel = standing.find(({ number }) => number === unlisted)?.chainage;
  const onTurnout = supports.flatMap((_, support) => (bendsStrip(supports, heel, support) ? [] : [support]));
  return {
    track,
    supports,
    ...(heel !== undefined && { heel }),
    strip: template,
    instruments: taken.instruments,
    readings: taken.readings,
    ...(taken.crosses.length > 0 && { cross: { gauge: compiled.scene.scale.gaugeMm * mm, readings: taken.crosses } }),
    fixed: [...new Set([...(taken.fixed ?? []), ...onTurnout])].sort((a, b) => a - b),
    board: compiled.scene.deck.thicknessMm * mm,
    setting: taken.setting ?? usualSetting,
  };
}

function trackOf({ scene, tracks }: CompiledScene, trackId: string): Track {
  const track = tracks.get(trackId);
  if (track !== undefined) return track;
  const list = scene.tracks.map(({ id }) => id).join(', ');
  throw new SurveyProblem(`The scene has no track "${trackId}". It has: ${list}.`);
}

/** How the track may be put right: as the survey says, and where it says nothing, by the plan. */
export function mendTask(
  compiled: CompiledScene,
  trackId: string,
  input: SurveyInput,
  wishes: SceneSurvey['mend'],
  objective: Objective,
): MendTask {
  const { scene, tracks } = compiled;
  const { deck, scale } = scene;
  return {
    objective,
    limits: { ...usualLimits(input), ...limitsOf(wishes) },
    adjuster: adjusterOf(wishes),
    locked: (wishes?.locked ?? []).map((number) => number - 1),
    pairs: headroomPairs(input, {
      depth: (deck.thicknessMm + deck.underlayMm + deck.trackMm) * mm,
      halfWidth: deck.widthMm === undefined ? deckHalfWidthInGauges * scale.gaugeMm * mm : (deck.widthMm / 2) * mm,
      others: [...tracks].flatMap(([id, track]) => (id === trackId ? [] : [track])),
    }),
  };
}

function adjusterOf(wishes: SceneSurvey['mend']): Adjuster {
  if (wishes?.packingMm !== undefined) {
    return { kind: 'packing', thicknesses: wishes.packingMm.map((value) => value * mm), most: wishes.mostPieces ?? 4 };
  }
  const thread = wishes?.thread ?? usualThread;
  return { kind: 'nut', thread, pitch: coarsePitches[thread] };
}

function limitsOf(wishes: SceneSurvey['mend']): Limits {
  const given: readonly (readonly [keyof Limits, number | undefined, number])[] = [
    ['greatestGrade', wishes?.greatestGradePercent, percent],
    ['leastGrade', wishes?.leastGradePercent, percent],
    ['greatestKink', wishes?.greatestKinkPercent, percent],
    ['leastRadius', wishes?.leastRadiusMm, mm],
    ['headroom', wishes?.headroomMm, mm],
    ['largestRise', wishes?.largestRiseMm, mm],
    ['largestDrop', wishes?.largestDropMm, mm],
  ];
  return Object.fromEntries(given.flatMap(([key, value, unit]) => (value === undefined ? [] : [[key, value * unit]])));
}
