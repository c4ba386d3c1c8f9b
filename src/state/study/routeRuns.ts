import { type Scene, trackIdsOf } from '../../scene/index.ts';
import { compileScene } from '../../sim/index.ts';
import type { BestHost } from '../../sim/study/bestHost.ts';
import { curveWorth } from '../../sim/study/index.ts';
import {
  closersOf,
  deckOf,
  type RoomKind,
  type RouteQuestion,
  roomConflicts,
  roomOf,
} from '../../sim/study/route/index.ts';
import type { StudyBench } from './bench.ts';
import type { RouteAsk, RouteState } from './types.ts';

/**
 * Looks for the routes that no other beats in grade, room and margin together, in the trial on show; the best so far are shown as they come. Stopped, it ends with
 * what it has.
 */
export async function runRoute(bench: StudyBench, host: BestHost, ask: RouteAsk): Promise<void> {
  const { study, pool, session } = bench;
  const scene = bench.base();
  const { trial } = session.session.getState();
  if (scene === null || trial === null) return;
  const signal = bench.begin();
  const { base } = study.getState();
  const change = (part: Partial<RouteState>) =>
    study.setState(({ route }) => ({ route: route && route.question === question ? { ...route, ...part } : route }));
  let question: RouteQuestion | null = null;
  await bench.told(async () => {
    question = questionOf(bench, scene, trial, ask);
    study.setState({ route: { ask, question, base, routes: [], answer: null, progress: 0, stopping: false } });
    // What is under way when the search is stopped is let to its end.
    const answer = await host.route(question, (request) => pool.probe(request), {
      width: pool.width,
      signal,
      onProgress: (done, known) => change({ progress: done / known }),
      onFound: (routes) => change({ routes }),
    });
    change({ routes: answer.routes, answer, progress: 1, stopping: false });
  });
  // One that failed leaves nothing behind that would look as if it still ran.
  study.setState(({ route }) => ({ route: route?.question === question && route?.answer === null ? null : route }));
}

function questionOf(
  { study }: StudyBench,
  scene: Scene,
  { id, trackId }: { readonly id: string; readonly trackId: string },
  ask: RouteAsk,
): RouteQuestion {
  const { numbers, heights, probes, within, endKept, aim = 'front' } = ask;
  const metres = (mm: number | null): number | null => (mm === null ? null : mm / 1e3);
  const solved = endKept
    ? (ask.solved ??
      closersOf(
        scene,
        trackId,
        numbers.map(({ at }) => at),
      ))
    : [];
  return {
    scene,
    trackId,
    numbers,
    aim,
    endKept,
    solved,
    heights: heights && { held: [] },
    limits: {
      radius: metres(ask.leastRadiusMm),
      verticalRadius: heights && heights.verticalRadiusMm / 1e3,
      steepest: heights && heights.steepestPercent / 100,
      headroom: metres(ask.headroomMm),
      room: roomOf(scene, within),
    },
    grade: { curveLength: curveWorth, window: 0, towards: 'both' },
    trialIds: [id],
    gauge: study.getState().gauge,
    probes,
  };
}

/** What of its room a railway says anything of, and whether the tracks of a trial keep it as they are. */
export function roomKept(scene: Scene, trialId: string): { readonly kind: RoomKind; readonly kept: boolean }[] {
  const room = roomOf(scene);
  const trial = scene.trials.find(({ id }) => id === trialId);
  if (room === null || trial === undefined) return [];
  const own = trackIdsOf(trial);
  let missed: readonly RoomKind[] = [];
  try {
    const { tracks } = compileScene(scene);
    const laid = new Map([...tracks].filter(([id]) => own.includes(id)));
    missed = roomConflicts(laid, deckOf(scene), room).map(({ kind }) => kind);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
  }
  const said: readonly RoomKind[] = [
    ...(room.corners === null ? [] : (['room'] as const)),
    ...(room.obstacles.length === 0 ? [] : (['obstacle'] as const)),
    ...(room.boards.length === 0 ? [] : (['boards'] as const)),
  ];
  return said.map((kind) => ({ kind, kept: !missed.includes(kind) }));
}
