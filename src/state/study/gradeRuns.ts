import { trainPlaces } from '../../scene/index.ts';
import { compileScene, compileTrial } from '../../sim/index.ts';
import { routeMeasure } from '../../sim/study/index.ts';
import { loadedScene } from '../../sim/study/loads.ts';
import { gradeCurve, type SteepestGrade, steepestGrade } from '../../sim/study/steepestGrade.ts';
import type { ProbeBy } from '../../sim/study/sweep.ts';
import type { StudyBench } from './bench.ts';
import type { GradeQuestion } from './types.ts';

/** Curves of more than this are no curves, m: nobody lays one at home. */
const almostStraight = 20;

/** The curve is drawn to this many times the steepest grade that passes, in whole per cent. */
const beyond = 1.5;

/**
 * The steepest even grade that the weakest of the scene's engines takes with so many of the vehicles that the train on show has most of: on straight track, and
 * in a curve as tight as the tightest of the track or route on show.
 */
export async function runSteepest(bench: StudyBench, count: number): Promise<void> {
  const { study, pool, session } = bench;
  const scene = bench.base();
  const { trial } = session.session.getState();
  const train = scene?.trains.find(({ id }) => id === trial?.trainId);
  if (!scene || !trial || !train) return;
  const signal = bench.begin();
  await bench.told(async () => {
    const kind = commonest(trainPlaces(scene, train).flatMap((place) => kindOf(train.vehicles[place.entry], place)));
    if (kind === null) throw new RangeError('The train on show has nothing behind its engine to count.');
    const engines = scene.stock.filter(({ drive }) => drive !== undefined);
    if (engines.length === 0) throw new RangeError('No engine of this railway has a drive.');
    const { tightest } = routeMeasure(compileTrial(compileScene(scene), trial.id).path.track);
    const radiusMm = tightest < almostStraight ? Math.round(tightest * 1e3) : null;
    const steps = engines.length + 1 + (radiusMm === null ? 0 : 1);
    const name = (id: string) => scene.stock.find((one) => one.id === id)?.name ?? id;
    const tell = (part: Partial<GradeQuestion>) =>
      study.setState(({ grade }) => ({ grade: grade && { ...grade, ...part } }));
    study.setState({
      grade: {
        engine: '',
        kind: name(kind),
        count,
        straight: null,
        toPercent: null,
        points: [],
        curve: null,
        progress: 0,
      },
    });
    const hooks = { stopped: () => signal.aborted };
    const probe: ProbeBy = (request) => pool.probe(request, { signal });
    const loadedWith = (engine: string) => {
      const loaded = loadedScene(scene, trial.id, engine, kind, count);
      if (!loaded.ok) throw new RangeError(loaded.reason);
      return loaded.scene;
    };
    const climbs = (engine: string, radius: number | null): Promise<SteepestGrade> =>
      steepestGrade(loadedWith(engine), trial.id, radius, probe, hooks);
    let weakest: { readonly engine: string; readonly grade: SteepestGrade } | null = null;
    for (const [k, { id }] of engines.entries()) {
      const grade = await climbs(id, null);
      if (weakest === null || (grade.passesPercent ?? -1) < (weakest.grade.passesPercent ?? -1)) {
        weakest = { engine: id, grade };
      }
      if (signal.aborted) return;
      tell({ engine: name(weakest.engine), straight: weakest.grade, progress: (k + 1) / steps });
    }
    if (weakest !== null) {
      const toPercent = Math.max(Math.ceil((weakest.grade.passesPercent ?? 0) * beyond), 1);
      tell({ toPercent });
      await gradeCurve(
        loadedWith(weakest.engine),
        trial.id,
        toPercent,
        probe,
        (point) => tell({ points: [...(study.getState().grade?.points ?? []), point] }),
        hooks,
      );
      if (signal.aborted) return;
      tell({ progress: (engines.length + 1) / steps });
    }
    if (weakest !== null && radiusMm !== null) {
      const grade = await climbs(weakest.engine, radiusMm);
      if (signal.aborted) return;
      tell({ curve: { radiusMm, grade } });
    }
    tell({ progress: null });
  });
}

const kindOf = (
  { stock }: { readonly stock: string },
  { vehicle }: { readonly vehicle: { readonly drive: unknown } },
): string[] => (vehicle.drive === null ? [stock] : []);

/** What a list names most often, the first of those that share the honour; null for an empty one. */
function commonest(names: readonly string[]): string | null {
  const count = (name: string) => names.filter((one) => one === name).length;
  return names.reduce<string | null>((best, name) => (best === null || count(name) > count(best) ? name : best), null);
}
