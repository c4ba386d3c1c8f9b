import { type Scene, variantScene } from '../../scene/index.ts';
import { compareScenes } from '../../sim/study/index.ts';
import { sameRailway } from '../sameRailway.ts';
import type { StudyBench } from './bench.ts';
import type { CompareRow } from './types.ts';
import { bare } from './variantEdits.ts';

/** Works out the scene and every variant side by side, in the trial on show. */
export async function compareRows({ session, study, pool, begin, told }: StudyBench): Promise<void> {
  const { scene, trialId } = session.session.getState();
  if (scene === null || trialId === null) return;
  const signal = begin();
  const { exactness } = study.getState();
  study.setState({ rows: rowsOf(scene), comparing: 0 });
  await told(async () => {
    const { rows } = study.getState();
    let done = 0;
    const lanes = rows.map(async (row, index) => {
      if (row.scene === null) return;
      const [compared] = await compareScenes([{ name: row.name, scene: row.scene }], [trialId], exactness, (request) =>
        pool.probe(request, { signal }),
      );
      if (signal.aborted) return;
      done++;
      study.setState((state) => ({
        rows: state.rows.with(index, { ...row, compared, exactness }),
        comparing: done / rows.length,
      }));
    });
    await Promise.all(lanes);
  });
  if (!signal.aborted) study.setState({ comparing: null });
}

/** The scene as it is and its variants; what was worked out before stays with a railway that is still the same. */
export function rowsOf(scene: Scene | null, before: readonly CompareRow[] = []): CompareRow[] {
  if (scene === null) return [];
  const known = (row: CompareRow): CompareRow => {
    const old = before.find(({ id }) => id === row.id);
    if (!old?.scene || !old.compared || !row.scene || !alike(old.scene, row.scene)) return row;
    return { ...row, compared: { ...old.compared, name: row.name }, exactness: old.exactness };
  };
  const variants = (scene.variants ?? []).map(({ id, name, from }): CompareRow => {
    const made = variantScene(scene, id);
    const row = { id, name, from: from ?? null, exactness: null };
    if (made.ok) return known({ ...row, scene: bare(made.scene), compared: null });
    const reason = made.problems.map(({ path, found }) => `${path}: ${found}`).join('; ');
    return { ...row, scene: null, compared: { name, probe: { ok: false, reason }, tracks: new Map() } };
  });
  return [
    known({ id: null, name: asItIs, from: null, scene: bare(scene), compared: null, exactness: null }),
    ...variants,
  ];
}

/** The name of the railway among its variants. */
export const asItIs = 'As it is';

const alike = (a: Scene, b: Scene): boolean => sameRailway(a, b) || JSON.stringify(a) === JSON.stringify(b);
