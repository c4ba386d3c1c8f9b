import { createStore, type StoreApi } from 'zustand/vanilla';
import { changedScene, type Scene, sceneChanges, sceneQuantities, variantScene } from '../../scene/index.ts';
import {
  affectedTrials,
  compareScenes,
  type Exactness,
  type Gauge,
  type Probe,
  type ProbePool,
  sweepScene,
  vary,
} from '../../sim/study/index.ts';
import { isAbort, wordsOf } from '../aborting.ts';
import { freshId } from '../freshId.ts';
import type { Session } from '../session.ts';
import type { CompareRow, StudyState, SweepAsk } from './types.ts';

/** What can be done with variants and sweeps. Everything that changes the scene goes through the session, as one step each. */
export interface StudyActions {
  setExactness(exactness: Exactness): void;
  setGauge(gauge: Gauge): void;
  /** Works out the scene and every variant side by side, in the trial on show. */
  compare(): Promise<void>;
  /** Adds a variant in which one number of the scene is another. */
  addVariant(name: string, at: string, to: number): Promise<boolean>;
  /** Keeps what another scene differs in as a variant of the present one. */
  keepAsVariant(name: string, other: Scene): Promise<boolean>;
  renameVariant(id: string, name: string): Promise<boolean>;
  /** Takes a variant out; those that come from it come from its parent then, with its changes made their own. */
  dropVariant(id: string): Promise<boolean>;
  /** Makes a variant the railway; it is no variant any more, and what the railway was becomes one. */
  adoptVariant(id: string): Promise<boolean>;
  sweep(ask: SweepAsk): Promise<void>;
  /** Makes a swept value part of the scene. */
  keepValue(at: string, to: number): Promise<boolean>;
  /** Stops what runs; what is done is kept. */
  stop(): void;
}

export interface Studies {
  readonly study: StoreApi<StudyState>;
  readonly actions: StudyActions;
}

/** Makes the studies of a session; `pool` runs their probes. */
export function createStudies({ session, actions: document }: Session, pool: ProbePool): Studies {
  const study = createStore<StudyState>(() => ({
    exactness: 'steady',
    gauge: 'all',
    rows: [],
    comparing: null,
    sweep: null,
    problem: null,
  }));
  let running: AbortController | null = null;

  const scene = (): Scene | null => session.getState().scene;

  /** Begins something new; whatever ran before is stopped. */
  function begin(): AbortController {
    running?.abort();
    running = new AbortController();
    study.setState({ problem: null });
    return running;
  }

  /** Works something out; an abort ends it quietly, anything else is told. */
  async function told(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (error) {
      if (!isAbort(error)) study.setState({ problem: wordsOf(error) });
    }
  }

  // A comparison or sweep of a railway that is another now would be read as one of this.
  session.subscribe((now, before) => {
    if (now.scene === before.scene) return;
    running?.abort();
    study.setState({ rows: rowsOf(now.scene), comparing: null, sweep: null, problem: null });
  });
  study.setState({ rows: rowsOf(scene()) });

  const actions: StudyActions = {
    setExactness: (exactness) => study.setState({ exactness }),
    setGauge: (gauge) => study.setState({ gauge }),
    async compare() {
      const { trialId } = session.getState();
      const now = scene();
      if (now === null || trialId === null) return;
      const { signal } = begin();
      const { exactness } = study.getState();
      study.setState({ rows: rowsOf(now), comparing: 0 });
      await told(async () => {
        const rows = study.getState().rows;
        let done = 0;
        const lanes = rows.map(async (row, index) => {
          if (row.scene === null) return;
          const [compared] = await compareScenes(
            [{ name: row.name, scene: row.scene }],
            [trialId],
            exactness,
            (request) => pool.probe(request, { signal }),
          );
          if (signal.aborted) return;
          done++;
          study.setState((state) => ({
            rows: state.rows.with(index, { ...row, compared }),
            comparing: done / rows.length,
          }));
        });
        await Promise.all(lanes);
      });
      if (!signal.aborted) study.setState({ comparing: null });
    },
    addVariant(name, at, to) {
      return document.change(`variant “${name}”`, (now) => {
        const varied = vary(bare(now), [{ at, to }]);
        if (!varied.ok) throw new RangeError(varied.reason);
        return withVariant(now, name, sceneChanges(bare(now), varied.scene));
      });
    },
    keepAsVariant(name, other) {
      return document.change(`variant “${name}”`, (now) =>
        withVariant(now, name, sceneChanges(bare(now), bare(other))),
      );
    },
    renameVariant(id, name) {
      return document.change(`name “${name}”`, (now) => ({
        ...now,
        variants: (now.variants ?? []).map((one) => (one.id === id ? { ...one, name } : one)),
      }));
    },
    dropVariant(id) {
      return document.change('taking a variant out', (now) => {
        const gone = now.variants?.find((one) => one.id === id);
        if (gone === undefined) throw new RangeError('That variant is not there any more.');
        const variants = (now.variants ?? []).flatMap((one) => {
          if (one.id === id) return [];
          if (one.from !== id) return [one];
          const { from: _gone, ...rest } = one;
          const changes = [...gone.changes, ...one.changes];
          return [gone.from === undefined ? { ...rest, changes } : { ...rest, from: gone.from, changes }];
        });
        return withVariants(now, variants);
      });
    },
    adoptVariant(id) {
      return document.change('another variant', (now) => {
        const made = variantScene(now, id);
        if (!made.ok) throw new RangeError(made.problems[0].found);
        const fresh = bare(made.scene);
        // Every other variant is kept as it was: as what it differs from the new railway in.
        const others = (now.variants ?? []).flatMap((one) => {
          if (one.id === id) return [];
          const was = variantScene(now, one.id);
          if (!was.ok) return [one];
          const { from: _gone, ...rest } = one;
          return [{ ...rest, changes: sceneChanges(fresh, bare(was.scene)) }];
        });
        return withVariant(withVariants(fresh, others), 'As it was before', sceneChanges(fresh, bare(now)));
      });
    },
    async sweep(ask) {
      const now = scene();
      if (now === null) return;
      const { signal } = begin();
      const { gauge, exactness } = study.getState();
      const trialId = session.getState().trialId ?? '';
      const affected = affectedTrials(now, ask.at);
      // The trial on show, if the number matters to it; else those that it matters to.
      const trialIds = affected.includes(trialId) || affected.length === 0 ? [trialId] : affected;
      const whole = sceneQuantities(now).find(({ at }) => at === ask.at)?.whole === true;
      study.setState({ sweep: { ask, gauge, trialIds, exactness, points: [], line: null, progress: 0 } });
      await told(async () => {
        const probe = async (request: Parameters<ProbePool['probe']>[0]): Promise<Probe> => {
          const answer = await pool.probe(request, { signal });
          if (signal.aborted) return answer;
          const point = { at: Number(request.settings[0].to), probe: answer };
          study.setState(({ sweep }) => ({ sweep: sweep && { ...sweep, points: [...sweep.points, point] } }));
          return answer;
        };
        const hooks = {
          width: pool.width,
          stopped: () => signal.aborted,
          onProgress: (done: number, known: number) =>
            study.setState(({ sweep }) => ({ sweep: sweep && { ...sweep, progress: done / known } })),
        };
        const line = await sweepScene(now, { ...ask, whole }, { trialIds, gauge, exactness }, probe, hooks);
        if (!signal.aborted) study.setState(({ sweep }) => ({ sweep: sweep && { ...sweep, line, progress: 1 } }));
      });
    },
    keepValue(at, to) {
      return document.change(`${at.split('/').at(-1)} ${to}`, (now) => {
        const varied = vary(now, [{ at, to }]);
        if (!varied.ok) throw new RangeError(varied.reason);
        return varied.scene;
      });
    },
    stop() {
      running?.abort();
      running = null;
      study.setState(({ sweep }) => ({
        comparing: null,
        sweep: sweep && sweep.line === null ? stopped(sweep) : sweep,
      }));
    },
  };
  return { study, actions };
}

type Sweep = NonNullable<StudyState['sweep']>;

/** A sweep called off: what was probed, without edges. */
const stopped = (sweep: Sweep): Sweep => ({
  ...sweep,
  line: {
    points: sweep.points.map(({ at, probe }) => ({ at, outcome: probe })).sort((a, b) => a.at - b.at),
    edges: [],
    whole: false,
  },
});

/** The scene as it is and its variants, none worked out. */
function rowsOf(scene: Scene | null): CompareRow[] {
  if (scene === null) return [];
  const variants = (scene.variants ?? []).map(({ id, name }): CompareRow => {
    const made = variantScene(scene, id);
    if (made.ok) return { id, name, scene: made.scene, compared: null };
    const reason = made.problems.map(({ path, found }) => `${path}: ${found}`).join('; ');
    return { id, name, scene: null, compared: { name, probe: { ok: false, reason }, tracks: new Map() } };
  });
  return [{ id: null, name: 'As it is', scene, compared: null }, ...variants];
}

/** A scene without its variants: what variants differ in. */
function bare(scene: Scene): Scene {
  const { variants: _variants, ...rest } = scene;
  return rest;
}

const withVariants = (scene: Scene, variants: NonNullable<Scene['variants']>): Scene =>
  variants.length === 0 ? bare(scene) : { ...scene, variants };

/** The scene with one more variant, under an id of its own. Throws RangeError when its changes lead nowhere. */
function withVariant(scene: Scene, name: string, changes: ReturnType<typeof sceneChanges>): Scene {
  changedScene(scene, changes);
  const taken = new Set((scene.variants ?? []).map(({ id }) => id));
  const id = freshId(name, taken, 'variant');
  return { ...scene, variants: [...(scene.variants ?? []), { id, name, changes }] };
}
