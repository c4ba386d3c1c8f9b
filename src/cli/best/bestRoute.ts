import { fieldUnit, type Scene, sceneQuantities } from '../../scene/index.ts';
import { affectedTrials, type ProbeBy, probeScene } from '../../sim/study/index.ts';
import {
  type RoomCorner,
  type RoomKind,
  type RouteAim,
  type RouteAnswer,
  type RouteFound,
  type RouteHooks,
  type RouteNumber,
  type RouteQuestion,
  type RouteRoom,
  roomOf,
  searchRoute,
} from '../../sim/study/route/index.ts';
import { scenePoints } from '../../sim/study/sceneProfile.ts';
import { loadSolver } from '../../sim/survey/solver.ts';
import { BadInput, exitCodes } from '../exitCodes.ts';
import { steppedRange } from '../fieldText.ts';
import { finiteMm } from '../reportFields.ts';
import { csvOf, outcomeColumns, outcomeFields } from '../studies/studyOutcome.ts';
import { checkAddress, type StudyOptions, studyGauge, studyTrials } from '../studies/studyTrials.ts';
import type { StudyOutput } from '../studies/sweep.ts';
import { type BestOptions, curveRuleMm, numberOf, towardsOf } from './best.ts';
import type { BestRouteReport, RouteFields } from './bestRouteReport.ts';
import { bestRouteText } from './bestRouteText.ts';

export interface BestRouteOptions extends BestOptions, Omit<StudyOptions, 'quick'> {
  /** Each `ADDRESS=FROM..TO` or `ADDRESS=FROM..TO..STEP`. */
  readonly vary: readonly string[];
  readonly aim?: string | undefined;
  readonly front?: boolean | undefined;
  /** Addresses worked out so that the track ends where it ends now; asking for one keeps the end. */
  readonly solve: readonly string[];
  readonly keepEnd?: boolean | undefined;
  readonly heights?: string | undefined;
  readonly leastRadius?: string | undefined;
  /** `WIDTHxDEPTH`, mm, from the corner of the room. */
  readonly room?: string | undefined;
  /** What of the scene's room is no limit: walls, obstacles, boards. */
  readonly allow?: readonly string[] | undefined;
  readonly looks?: string | undefined;
}

/** Railways looked at when nothing else is said: some ten seconds of work. */
const usualLooks = 300;
const mostLooks = 100_000;

/** Limits of the heights found when nothing else is said: as `best` has them without numbers to choose. */
const usualHeights = { radius: '10000', steepest: '6' };

/**
 * Chooses numbers of a scene, and the heights to go with them, so that a track has the least ruling grade or its trials the greatest smallest margin, or all that no other
 * beats in grade, room and margin. Exit code: passes when a route keeps every limit. Throws BadInput for what says nothing.
 */
export async function bestRoute(
  scene: Scene,
  options: BestRouteOptions,
  hooks: RouteHooks = {},
  probe: ProbeBy = probeScene,
): Promise<StudyOutput<BestRouteReport>> {
  const question = questionOf(scene, options);
  try {
    const solver = question.heights === null ? null : await loadSolver();
    return output(question, await searchRoute(question, { probe, solver }, hooks));
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}

function questionOf(scene: Scene, options: BestRouteOptions): RouteQuestion {
  const numbers = options.vary.map((one): RouteNumber => {
    const { at, from, to, step } = steppedRange('vary', one);
    checkAddress(scene, at);
    const [low, high] = [Math.min(from, to), Math.max(from, to)];
    return { at, from: low, to: high, step: step ?? usualStep(scene, at, high - low) };
  });
  for (const at of options.solve) checkAddress(scene, at);
  const trackId = options.track ?? trackOf(numbers) ?? scene.tracks[0].id;
  const found = heightsOf(options.heights, trackId, numbers);
  const metres = (option: string, text: string | undefined): number | null =>
    text === undefined ? null : numberOf(option, text, 0) / 1e3;
  const usual = found ? usualHeights : { radius: undefined, steepest: undefined };
  const steepest = options.steepest ?? usual.steepest;
  return {
    scene,
    trackId,
    numbers,
    aim: aimOf(options),
    endKept: options.keepEnd === true || options.solve.length > 0,
    solved: options.solve,
    heights: found ? { held: options.hold.map((text) => numberOf('hold', text, 0) / 1e3) } : null,
    limits: {
      radius: metres('least-radius', options.leastRadius),
      verticalRadius: metres('radius', options.radius ?? usual.radius),
      steepest: steepest === undefined ? null : numberOf('steepest', steepest, 0) / 100,
      headroom: metres('headroom', options.headroom),
      room: roomLimits(scene, options),
    },
    grade: {
      curveLength: numberOf('curve', options.curve ?? String(curveRuleMm), 0) / 1e3,
      window: numberOf('over', options.over ?? '0', 0) / 1e3,
      towards: towardsOf(options.towards),
    },
    trialIds: trialsOf(scene, options, [...numbers.map(({ at }) => at), `tracks/${trackId}`]),
    gauge: studyGauge(options.risk),
    probes: looksOf(options.looks),
  };
}

/** Trials that are named, or that the numbers or the track make a difference to; none is well for a grade alone. */
function trialsOf(scene: Scene, options: BestRouteOptions, varied: readonly string[]): string[] {
  const none = varied.every((at) => affectedTrials(scene, at).length === 0);
  return options.trial === undefined && none ? [] : studyTrials(scene, options.trial, varied);
}

const trackOf = (numbers: readonly RouteNumber[]): string | undefined =>
  numbers.map(({ at }) => /^tracks\/([^/]+)\//.exec(at)?.[1]).find((id) => id !== undefined);

/** Whether heights are to be found: unless it is said otherwise, or heights of the track are among the numbers. */
function heightsOf(word: string | undefined, trackId: string, numbers: readonly RouteNumber[]): boolean {
  const own = numbers.find(({ at }) => at.startsWith(`tracks/${trackId}/profile/`));
  if (word !== undefined && word !== 'best' && word !== 'own') {
    throw new BadInput(`--heights is best or own, not "${word}".`);
  }
  if (word === 'best' && own !== undefined) {
    throw new BadInput(
      `"${own.at}" is a height or a grade: --heights best would find it itself. Leave one of them out.`,
    );
  }
  return word === undefined ? own === undefined : word === 'best';
}

function aimOf({ aim, front }: BestRouteOptions): RouteAim {
  if (front && aim !== undefined) throw new BadInput('--aim and --front exclude each other.');
  if (front) return 'front';
  if (aim === undefined || aim === 'grade') return 'grade';
  if (aim === 'margin') return 'margin';
  throw new BadInput(`--aim is grade or margin, not "${aim}".`);
}

/** What a builder sets a number to: whole millimetres, tenths of a degree, hundredths of a per cent or of a turn. */
const steps: Readonly<Record<string, number>> = { mm: 1, '°': 0.1, '%': 0.01, g: 1 };
const otherStep = 0.01;

function usualStep(scene: Scene, at: string, span: number): number {
  const whole = sceneQuantities(scene).find((one) => one.at === at)?.whole === true;
  const step = whole ? 1 : (steps[fieldUnit(at)] ?? otherStep);
  return step <= span || whole ? step : span / 10;
}

const kinds: Readonly<Record<string, RoomKind>> = { walls: 'room', obstacles: 'obstacle', boards: 'boards' };

/** The room of the scene, what is allowed for left out, with the walls of a box where one is given. */
function roomLimits(scene: Scene, { room, allow = [] }: BestRouteOptions): RouteRoom | null {
  const allowed = allow.map((word) => {
    const kind = kinds[word];
    if (kind === undefined) throw new BadInput(`--allow is walls, obstacles or boards, not "${word}".`);
    return kind;
  });
  const own = roomOf(
    scene,
    Object.values(kinds).filter((kind) => !allowed.includes(kind)),
  );
  return room === undefined ? own : { obstacles: [], boards: [], ...own, corners: boxOf(room) };
}

function boxOf(text: string): RoomCorner[] {
  const sides = text.split('x').map((side) => (side.trim() === '' ? Number.NaN : Number(side)));
  const [width, depth] = sides;
  if (sides.length !== 2 || !(width > 0 && depth > 0 && Number.isFinite(width + depth))) {
    throw new BadInput(`--room is a width and a depth in mm, for example 3800x1600, not "${text}".`);
  }
  return [
    { xMm: 0, yMm: 0 },
    { xMm: width, yMm: 0 },
    { xMm: width, yMm: depth },
    { xMm: 0, yMm: depth },
  ];
}

function looksOf(text: string | undefined): number {
  const looks = text === undefined ? usualLooks : Number(text);
  if (Number.isInteger(looks) && looks >= 1 && looks <= mostLooks) return looks;
  throw new BadInput(`--looks is a whole number from 1 to ${mostLooks}, not "${text}".`);
}

function output(question: RouteQuestion, answer: RouteAnswer): StudyOutput<BestRouteReport> {
  const { scene, trackId, numbers, aim, gauge, trialIds } = question;
  const fields = (one: RouteFound) => routeFields(one, question);
  const routes = answer.routes.map(fields);
  const report: BestRouteReport = {
    report: 'gradewright-best-route',
    version: 1,
    scene: scene.name,
    trials: [...trialIds],
    gauge,
    exactness: 'run',
    whole: answer.whole,
    track: trackId,
    aim,
    numbers: numbers.map((one) => ({ ...one })),
    present: answer.present === null ? null : fields(answer.present),
    routes,
    certainty: answer.certainty,
    inFull: answer.inFull,
    settings: answer.settings,
    looks: answer.probes,
    looked: answer.looked.map((one) => ({
      settings: settingFields(one.settings),
      rulingPercent: one.ruling * 100,
      acrossMm: one.across * 1e3,
      alongMm: one.along * 1e3,
      quickShare: one.quickMargin,
    })),
    inTheWay: answer.inTheWay.map(({ miss, name, times }) => ({ limit: miss, ...(name !== null && { name }), times })),
  };
  const addresses = [...numbers.map(({ at }) => at), ...(question.endKept ? question.solved : [])];
  return {
    report,
    text: bestRouteText(question, answer),
    csv: csvOf(
      // Where a measure of the run has the name of one of the route, the column stands once and the route's own figure counts.
      [...new Set([...addresses, ...routeColumns, ...outcomeColumns])],
      routes.map(({ settings, outcome, points: _points, misses: _misses, conflicts: _conflicts, ...measures }) => ({
        ...Object.fromEntries(settings.map(({ at, to }) => [at, to])),
        ...outcome,
        ...measures,
      })),
    ),
    exitCode: answer.routes.some(({ misses }) => misses.length === 0) ? exitCodes.passes : exitCodes.fails,
  };
}

const routeColumns = [
  'rulingPercent',
  'steepestPercent',
  'tightestRadiusMm',
  'acrossMm',
  'alongMm',
  'quickShare',
  'fullShare',
  'quickPasses',
  'agrees',
] as const satisfies readonly (keyof RouteFields)[];

const settingFields = (settings: RouteFound['settings']) => settings.map(({ at, to }) => ({ at, to: Number(to) }));

const routeFields = (one: RouteFound, { gauge }: RouteQuestion): RouteFields => ({
  settings: settingFields(one.settings),
  rulingPercent: one.ruling * 100,
  steepestPercent: one.steepest * 100,
  tightestRadiusMm: finiteMm(one.radius),
  acrossMm: one.across * 1e3,
  alongMm: one.along * 1e3,
  quickShare: one.quickMargin,
  fullShare: one.margin,
  quickPasses: one.quickPasses,
  agrees: one.agrees,
  outcome: one.probe === null ? null : outcomeFields(one.probe, { gauge }),
  misses: [...one.misses],
  conflicts: one.conflicts.map(({ kind, name, trackId, chainage, by }) => ({
    limit: kind,
    ...(name !== null && { name }),
    track: trackId,
    chainageMm: chainage * 1e3,
    byMm: by * 1e3,
  })),
  points: one.points === null ? null : scenePoints(one.points),
});
