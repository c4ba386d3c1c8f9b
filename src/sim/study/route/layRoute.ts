import { judgeProfile, type ProfileTask } from '../../../core/study/profile/index.ts';
import type { FoundProfile } from '../../../core/study/profile/types.ts';
import { type Pose, trackPoint } from '../../../core/track/index.ts';
import type { GradePoint } from '../../../core/track/types.ts';
import { elementStartsMm, type Scene } from '../../../scene/index.ts';
import { compileScene } from '../../compileScene.ts';
import type { Solver } from '../../survey/solver.ts';
import type { CompiledScene } from '../../types.ts';
import { restsOn } from '../affected.ts';
import { bestProfile, leastProfile } from '../bestProfile.ts';
import { profileTaskOf, withProfile } from '../sceneProfile.ts';
import type { Setting } from '../types.ts';
import { vary } from '../vary.ts';
import { closeTrack, endTolerance, trackEnd } from './closing.ts';
import { planRoom } from './planRoom.ts';
import { deckOf, roomConflicts } from './roomConflicts.ts';
import type { RouteFound, RouteMiss, RouteQuestion } from './types.ts';

/** What stays whatever is chosen. */
export interface RouteGround {
  readonly question: RouteQuestion;
  readonly solver: Solver | null;
  readonly end: Pose;
  /** Heights that stay, m: the ends', and those held, each by its element and its share of that. */
  readonly heights: readonly { readonly element: number; readonly share: number; readonly height: number }[];
  readonly grades: readonly [number, number];
  readonly deckHalfWidth: number;
  /** Tracks that move with the numbers. */
  readonly trackIds: readonly string[];
}

/** Between these vertical curves begin and end, m. */
const nodes = 0.05;
/** What a builder sets places and heights to, m. */
const setting = { place: 1e-3, height: 1e-4 };
/** Limits of the problem that nothing on a model railway comes near: not asked for. */
const unasked = { verticalRadius: 1e-3, steepest: 10 };
/** What may be missed and a limit still count as kept: below what a builder can tell. */
const tolerance = { height: 1e-4, clearance: 1e-4, radiusShare: 1e-3, grade: 1e-4 };

/** What stays, found on the railway as it is. Throws RangeError for a question that says nothing. */
export function groundOf(question: RouteQuestion, solver: Solver | null): RouteGround {
  const { scene, trackId, heights, limits, numbers } = question;
  const file = scene.tracks.find(({ id }) => id === trackId);
  const end = trackEnd(scene, trackId);
  const task = profileTaskOf(compileScene(scene), trackId, wishOf(question, 0));
  if (file === undefined) throw new RangeError(`The scene has no track "${trackId}".`);
  if (heights !== null && (solver === null || limits.verticalRadius === null || limits.steepest === null)) {
    throw new RangeError('To find the best heights, say the least vertical radius and the steepest grade.');
  }
  const starts = elementStartsMm(file).map((mm) => mm / 1e3);
  const { length } = task.track;
  const heightAt = (chainage: number) => {
    if (!(chainage >= 0 && chainage <= length)) {
      throw new RangeError(`The height held at ${chainage} m is not on the track of ${length} m.`);
    }
    const element = Math.max(
      0,
      starts.slice(0, -1).findLastIndex((from) => from <= chainage),
    );
    const share = (chainage - starts[element]) / (starts[element + 1] - starts[element]);
    return { element, share, height: trackPoint(task.track, chainage).z };
  };
  const named = numbers.map(({ at }) => /^tracks\/([^/]+)\//.exec(at)?.[1]);
  const moved = [trackId, ...named.flatMap((id) => (id === undefined ? [] : [id]))];
  return {
    question,
    solver,
    end,
    heights: [0, length, ...(heights?.held ?? [])].map(heightAt),
    grades: [task.grades[0].grade, task.grades[1].grade],
    deckHalfWidth: deckOf(scene).half,
    trackIds: scene.tracks.flatMap(({ id }) => (moved.some((other) => restsOn(scene.tracks, id, other)) ? [id] : [])),
  };
}

/** A railway laid with some numbers and measured without its trials; `missed` is 0 when it keeps every limit. */
export type LaidRoute =
  | { readonly ok: true; readonly route: RouteFound; readonly missed: number }
  | { readonly ok: false; readonly reason: string };

/** Lays a railway with numbers of the question at values; `rounded` with heights as a builder sets them, else as they come out. */
export function layRoute(ground: RouteGround, values: readonly number[], rounded = false): LaidRoute {
  const { question } = ground;
  const { scene, trackId, numbers, solved, endKept } = question;
  const chosen = numbers.map(({ at }, k): Setting => ({ at, to: values[k] }));
  try {
    const varied = vary(scene, chosen);
    if (!varied.ok) return varied;
    const closed = endKept
      ? closeTrack(varied.scene, trackId, ground.end, solved)
      : { scene: varied.scene, values: [], left: 0 };
    const settings = [...chosen, ...closed.values.map((to, k): Setting => ({ at: solved[k], to }))];
    const laid = vary(scene, settings);
    if (!laid.ok) return laid;
    return measured(ground, laid.scene, settings, { values, solved: closed.values, left: closed.left }, rounded);
  } catch (error) {
    if (error instanceof RangeError) return { ok: false, reason: error.message };
    throw error;
  }
}

/** The railway as it is, by the same measure: its own heights, no end to be kept. */
export function layPresent(ground: RouteGround): LaidRoute {
  const question = { ...ground.question, heights: null, endKept: false };
  try {
    const nothing = { values: [], solved: [], left: 0 };
    return measured({ ...ground, question }, question.scene, [], nothing, false);
  } catch (error) {
    if (error instanceof RangeError) return { ok: false, reason: error.message };
    throw error;
  }
}

interface Chosen {
  readonly values: readonly number[];
  readonly solved: readonly number[];
  /** Gap left at the end, m. */
  readonly left: number;
}

function measured(
  ground: RouteGround,
  scene: Scene,
  settings: readonly Setting[],
  { values, solved, left }: Chosen,
  rounded: boolean,
): LaidRoute {
  const { question, deckHalfWidth } = ground;
  const { trackId, limits, endKept } = question;
  const compiled = compileScene(scene);
  const track = compiled.tracks.get(trackId);
  if (track === undefined) throw new RangeError(`The scene has no track "${trackId}".`);
  const own = ({ tracks }: CompiledScene) => new Map([...tracks].filter(([id]) => ground.trackIds.includes(id)));
  const task: ProfileTask = {
    ...profileTaskOf(compiled, trackId, wishOf(question, deckHalfWidth)),
    ...(question.heights === null && !endKept ? {} : kept(ground, scene)),
  };
  const plan = planRoom(own(compiled).values(), deckHalfWidth);
  const points = question.heights === null ? null : foundPoints(ground, task, rounded);
  const judged = judgeProfile(task, points?.length ? points : track.spec.profile.points);
  const made = points?.length ? withProfile(scene, trackId, points) : scene;
  // Heights only matter to what a deck can pass over.
  const high = made !== scene && limits.room?.obstacles.some(({ top }) => top !== null) === true;
  const conflicts =
    limits.room === null ? [] : roomConflicts(own(high ? compileScene(made) : compiled), deckOf(scene), limits.room);
  const misses = [
    ...missesOf(question, plan, judged, left, points?.length === 0),
    ...conflicts.map(({ kind, by }): [RouteMiss, number] => [kind, by]),
  ];
  return {
    ok: true,
    missed: misses.reduce((sum, [, by]) => sum + by, 0),
    route: {
      values,
      solved,
      settings,
      points: points?.length ? points : null,
      rounded: rounded || points === null,
      scene: made,
      ruling: judged.ruling,
      steepest: judged.steepest,
      radius: plan.radius,
      across: plan.across,
      along: plan.along,
      area: plan.across * plan.along,
      misses: [...new Set(misses.map(([miss]) => miss))],
      conflicts,
      quickPasses: null,
      agrees: null,
      quickMargin: null,
      margin: null,
      probe: null,
    },
  };
}

const wishOf = ({ limits, grade }: RouteQuestion, deckHalfWidth: number) => ({
  held: [],
  verticalRadius: limits.verticalRadius ?? unasked.verticalRadius,
  steepest: limits.steepest ?? unasked.steepest,
  ...grade,
  every: nodes,
  headroom: limits.headroom,
  deckHalfWidth,
});

/** Heights and grades that stay, at the chainages where they now lie. */
function kept({ question, heights, grades }: RouteGround, scene: Scene): Pick<ProfileTask, 'heights' | 'grades'> {
  const file = scene.tracks.find(({ id }) => id === question.trackId);
  const starts = file === undefined ? [] : elementStartsMm(file).map((mm) => mm / 1e3);
  const placed = heights.map(({ element, share, height }) => ({
    chainage: starts[element] + share * (starts[element + 1] - starts[element]),
    height,
  }));
  const ends = [placed[0].chainage, placed[1].chainage];
  return { heights: placed, grades: ends.map((chainage, k) => ({ chainage, grade: grades[k] })) };
}

/** Heights of least ruling grade; none when none keep what is asked. */
function foundPoints({ solver }: RouteGround, task: ProfileTask, rounded: boolean): readonly GradePoint[] {
  if (solver === null) throw new RangeError('There is no solver to find heights by.');
  if (!rounded) return leastProfile(solver, task) ?? [];
  const found = bestProfile(solver, task, setting);
  return found.kind === 'best' ? found.rounded.points : [];
}

/** Limits missed, each with by how much in terms of itself: what the search goes down by where nothing keeps them all. */
function missesOf(
  { limits, endKept, heights }: RouteQuestion,
  plan: { readonly radius: number },
  judged: FoundProfile,
  left: number,
  impossible: boolean,
): [RouteMiss, number][] {
  const misses: [RouteMiss, number][] = [];
  const note = (miss: RouteMiss, by: number, within = 0): void => {
    if (by > within) misses.push([miss, by]);
  };
  if (limits.radius !== null) note('radius', 1 - plan.radius / limits.radius, tolerance.radiusShare);
  if (endKept) note('end', left, endTolerance);
  if (impossible) return [...misses, ['heights', 1]];
  if (endKept && heights === null) note('end', judged.heightMissed, tolerance.height);
  if (limits.verticalRadius !== null)
    note('vertical-radius', 1 - judged.verticalRadius / limits.verticalRadius, tolerance.radiusShare);
  if (limits.steepest !== null)
    note('steepest', (judged.steepest - limits.steepest) / limits.steepest, tolerance.grade / limits.steepest);
  if (limits.headroom !== null)
    note('headroom', -judged.clearanceSpare / limits.headroom, tolerance.clearance / limits.headroom);
  return misses;
}
