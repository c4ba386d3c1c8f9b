import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Scene } from '../../scene/index.ts';
import type { BestHost } from '../../sim/study/bestHost.ts';
import type { Exactness, Gauge, MeasureId, MeasureLimit, ProbePool } from '../../sim/study/index.ts';
import { withProfile } from '../../sim/study/sceneProfile.ts';
import { sameRailway } from '../sameRailway.ts';
import type { Session } from '../session.ts';
import type { BesideLook } from '../types.ts';
import { createBench } from './bench.ts';
import { createBesideRuns } from './besideRuns.ts';
import { runBestProfile } from './bestRuns.ts';
import { runChance } from './chanceRuns.ts';
import { compareRows, rowsOf } from './compareRuns.ts';
import { runSteepest } from './gradeRuns.ts';
import { turned } from './knobs.ts';
import { type MergeSide, merged } from './merging.ts';
import { runRoute } from './routeRuns.ts';
import { createSweepRuns } from './sweepRuns.ts';
import type { MapAsk, ProfileAsk, RouteAsk, StudyPart, StudyState, SweepAsk, ToleranceAsk } from './types.ts';
import { adopted, bare, sceneOf, withoutVariant, withRailway } from './variantEdits.ts';

/** Knobs with what they are turned to. */
export type Settings = readonly { readonly at: string; readonly to: number }[];

/** What can be done with variants and studies. Everything that changes the scene goes through the session, as one step each. */
export interface StudyActions {
  setPart(part: StudyPart): void;
  setExactness(exactness: Exactness): void;
  setGauge(gauge: Gauge): void;
  /** Limits of measures that sweeps and maps started from now on count too. */
  setLimits(limits: readonly MeasureLimit[]): void;
  setDrawn(drawn: MeasureId | null): void;
  /** Chooses what sweeps, maps and searches start from. */
  setBase(variantId: string | null): void;
  /** Works out the scene and every variant side by side, in the trial on show. */
  compare(): Promise<void>;
  /** Adds a variant of the base in which some knobs are turned; it is then shown beside the railway if `shown`. */
  addVariant(name: string, settings: Settings, shown?: boolean): Promise<boolean>;
  /** Makes the last change a variant: the railway goes back to what it was before it. */
  keepLastChange(): Promise<boolean>;
  renameVariant(id: string, name: string): Promise<boolean>;
  /** Takes a variant out; those that come from it come from its parent then, with its changes made their own. */
  dropVariant(id: string): Promise<boolean>;
  /** Makes a variant the railway; it is no variant any more, and what the railway was becomes one. */
  adoptVariant(id: string): Promise<boolean>;
  /** Merges a variant into another, or into the railway (null); where both changed a place, `sides` says whose value stays. */
  mergeVariant(id: string, into: string | null, sides?: ReadonlyMap<string, MergeSide>): Promise<boolean>;
  /** Shows a variant together with the railway, on the stage and on the band. */
  showBeside(id: string): Promise<void>;
  hideBeside(): void;
  lookBeside(look: Partial<BesideLook>): void;
  sweep(ask: SweepAsk): Promise<void>;
  map(ask: MapAsk): Promise<void>;
  /** The shortest easement with which every train passes propelled. */
  askEasement(): Promise<void>;
  /** The steepest grade the weakest engine takes with so many vehicles. */
  askSteepest(count: number): Promise<void>;
  chance(ask: ToleranceAsk): Promise<void>;
  bestProfile(ask: ProfileAsk): Promise<void>;
  /** Looks for routes that no other beats in grade, room and margin together. */
  bestRoute(ask: RouteAsk): Promise<void>;
  /** Keeps a railway that the search looked at, by its numbers, as a variant of what it was looked for in; then shown beside if `shown`. */
  keepRoute(values: readonly number[], name: string, shown?: boolean): Promise<boolean>;
  /** Keeps the best profile as a variant of what it was looked for in. */
  keepBest(name: string): Promise<boolean>;
  /** Makes swept values part of the scene. */
  keepValue(settings: Settings): Promise<boolean>;
  /** Stops what runs; what is done is kept. */
  stop(): void;
}

export interface Studies {
  readonly study: StoreApi<StudyState>;
  readonly actions: StudyActions;
}

const fresh = { sweep: null, map: null, grade: null, chance: null, best: null, route: null, problem: null } as const;

/** Makes the studies of a session; `pool` runs their probes, `best` looks for profiles. */
export function createStudies(session: Session, pool: ProbePool, best: BestHost): Studies {
  const { session: store, history, actions: document } = session;
  const study = createStore<StudyState>(() => ({
    part: 'variants',
    exactness: 'steady',
    gauge: 'all',
    limits: [],
    drawn: null,
    base: null,
    rows: rowsOf(store.getState().scene),
    comparing: null,
    beside: null,
    ...fresh,
  }));
  const bench = createBench(session, study, pool);
  const beside = createBesideRuns(bench);
  const sweeps = createSweepRuns(bench);

  // A study of a railway that is another now would be read as one of this; variants that come and go change nothing of it.
  store.subscribe((now, before) => {
    if (now.scene !== before.scene) {
      const { rows, base, comparing } = study.getState();
      const gone = base !== null && !now.scene?.variants?.some(({ id }) => id === base);
      const same = now.scene !== null && before.scene !== null && sameRailway(now.scene, before.scene);
      if (same && !gone && comparing === null) study.setState({ rows: rowsOf(now.scene, rows) });
      else {
        bench.stop();
        const kept = same ? rowsOf(now.scene, rows) : rowsOf(now.scene);
        study.setState({
          rows: kept,
          comparing: null,
          ...(gone || !same ? { ...fresh, base: gone ? null : base } : {}),
        });
      }
      const { beside: asked } = study.getState();
      const changes = (scene: Scene | null) =>
        JSON.stringify(scene?.variants?.find(({ id }) => id === asked?.id)?.changes);
      if (!same || changes(now.scene) !== changes(before.scene)) beside.renew();
    } else if (now.trial !== before.trial) beside.renew();
  });

  /** Keeps a railway as a variant of a base, as one step, and shows it beside the railway if `shown`. */
  async function keep(
    name: string,
    from: string | null,
    make: (base: Scene) => Scene,
    shown = false,
  ): Promise<boolean> {
    let added = '';
    const done = await document.change(`variant “${name}”`, (now) => {
      const kept = withRailway(now, name, from, make(sceneOf(now, from)));
      added = kept.id;
      return kept.scene;
    });
    if (done && shown) void beside.show(added);
    return done;
  }

  const actions: StudyActions = {
    setPart: (part) => study.setState({ part }),
    setExactness: (exactness) => study.setState({ exactness }),
    setGauge: (gauge) => study.setState({ gauge }),
    setLimits: (limits) => study.setState({ limits }),
    setDrawn: (drawn) => study.setState({ drawn }),
    setBase(base) {
      bench.stop();
      study.setState({ base, ...fresh });
    },
    compare: () => compareRows(bench),
    addVariant: (name, settings, shown) => keep(name, study.getState().base, (from) => turned(from, settings), shown),
    async keepLastChange() {
      const last = history.getState().past.at(-1);
      if (last === undefined) return false;
      return document.change(`“${last.label}” as a variant`, (now) => {
        // What the variants were is as it now is; only the railway goes back.
        const before = { ...bare(last.scene), ...(now.variants === undefined ? {} : { variants: now.variants }) };
        return withRailway(before, capital(last.label), null, now).scene;
      });
    },
    renameVariant(id, name) {
      return document.change(`name “${name}”`, (now) => ({
        ...now,
        variants: (now.variants ?? []).map((one) => (one.id === id ? { ...one, name } : one)),
      }));
    },
    dropVariant: (id) => document.change('taking a variant out', (now) => withoutVariant(now, id)),
    adoptVariant: (id) => document.change('another variant', (now) => adopted(now, id)),
    mergeVariant: (id, into, sides) => document.change('merging a variant', (now) => merged(now, id, into, sides)),
    showBeside: beside.show,
    hideBeside: beside.hide,
    lookBeside: (look) => store.setState(({ besideLook }) => ({ besideLook: { ...besideLook, ...look } })),
    sweep: sweeps.sweep,
    map: sweeps.map,
    askEasement: sweeps.askEasement,
    askSteepest: (count) => runSteepest(bench, count),
    chance: (ask) => runChance(bench, ask),
    bestProfile: (ask) => runBestProfile(bench, best, ask),
    bestRoute: (ask) => runRoute(bench, best, ask),
    async keepRoute(values, name, shown) {
      const { route } = study.getState();
      if (route === null) return false;
      const found = route.routes.find((one) => one.values.join() === values.join());
      let kept = false;
      await bench.told(async () => {
        const { scene: made } = found?.rounded ? found : await best.lay(route.question, values);
        kept = await keep(name, route.base, () => made, shown);
      });
      return kept;
    },
    async keepBest(name) {
      const { best: looked } = study.getState();
      const { found } = looked ?? {};
      if (!looked || found?.kind !== 'best') return false;
      return keep(name, looked.base, (from) => withProfile(from, looked.trackId, found.rounded.points));
    },
    keepValue(settings) {
      const words = settings.map(({ at, to }) => `${at.split('/').at(-1)} ${to}`).join(', ');
      return document.change(words, (now) => turned(now, settings));
    },
    stop() {
      bench.stop();
      study.setState(({ sweep, map, chance, grade, best: looked, route }) => ({
        comparing: null,
        sweep: sweep && sweep.line === null ? stoppedSweep(sweep) : sweep,
        map: map && map.area === null ? stoppedMap(map) : map,
        chance: chance && { ...chance, progress: null },
        grade: grade && { ...grade, progress: null },
        best: looked?.found == null ? null : looked,
        route: route && route.answer === null ? { ...route, stopping: true } : route,
      }));
    },
  };
  return { study, actions };
}

const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);

/** A sweep called off: what was probed, without edges. */
const stoppedSweep = (sweep: NonNullable<StudyState['sweep']>): NonNullable<StudyState['sweep']> => ({
  ...sweep,
  line: {
    points: sweep.points.map(({ at, probe }) => ({ at, outcome: probe })).sort((a, b) => a.at - b.at),
    edges: [],
    whole: false,
  },
});

/** A map called off: its even places as far as they were probed, without an outline. */
function stoppedMap(map: NonNullable<StudyState['map']>): NonNullable<StudyState['map']> {
  const { across, up } = map.ask;
  return {
    ...map,
    area: {
      across: evenValues(across),
      up: evenValues(up),
      outcomes: [],
      outline: [],
      brink: [],
      probes: map.points.length,
      whole: false,
    },
  };
}

const evenValues = ({ from, to, points }: MapAsk['across']): number[] =>
  Array.from({ length: points }, (_, k) => from + (k * (to - from)) / (points - 1));
