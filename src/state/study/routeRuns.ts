import { searchRoute } from '../../sim/study/route/index.ts';
import type { StudyBench } from './bench.ts';
import type { RouteAsk, RouteState } from './types.ts';

/** What a curve is worth in terms of grade, m: 32/R(in) per cent, the rule of the trade in H0. */
const curveWorth = 8.128e-3;

/** Looks for the routes that no other beats in grade, room and margin together, in the trial on show; the best so far are shown as they come. */
export async function runRoute(bench: StudyBench, ask: RouteAsk): Promise<void> {
  const { study, pool, session } = bench;
  const scene = bench.base();
  const { trial } = session.session.getState();
  if (scene === null || trial === null) return;
  const signal = bench.begin();
  const { base, gauge } = study.getState();
  study.setState({ route: { ask, base, routes: [], answer: null, progress: 0 } });
  const change = (part: Partial<RouteState>) =>
    study.setState(({ route }) => ({ route: route && { ...route, ...part } }));
  await bench.told(async () => {
    const answer = await searchRoute(
      {
        scene,
        trackId: trial.trackId,
        numbers: ask.numbers,
        aim: 'front',
        endKept: false,
        solved: [],
        heights: null,
        limits: { radius: null, verticalRadius: null, steepest: null, headroom: null, room: null },
        grade: { curveLength: curveWorth, window: 0, towards: 'both' },
        trialIds: [trial.id],
        gauge,
        probes: ask.probes,
      },
      // What is under way when the search is stopped is let to its end: it then gives what it found.
      { probe: (request) => pool.probe(request), solver: null },
      {
        width: pool.width,
        stopped: () => signal.aborted,
        onProgress: (done, known) => change({ progress: done / known }),
        onFound: (routes) => change({ routes }),
      },
    );
    change({ routes: answer.routes, answer, progress: 1 });
  });
}
