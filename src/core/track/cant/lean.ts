import type { CantPoint, CantSpec, Track, TrackSpec } from '../types.ts';

/** Cant as its places have it at a chainage, m: linear between them, constant beyond the outer two; rad. 0 without places. */
function cantBetween(points: readonly CantPoint[], chainage: number): number {
  const after = points.findIndex((point) => point.chainage > chainage);
  if (after === 0) return points[0].cant;
  if (after < 0) return points.length === 0 ? 0 : points[points.length - 1].cant;
  const [from, to] = [points[after - 1], points[after]];
  return from.cant + ((to.cant - from.cant) * (chainage - from.chainage)) / (to.chainage - from.chainage);
}

/** The cant that trains run on: the plan's and how the deck as built leans beside it. Null where neither is given. */
export function builtCant({ cant, lean = [] }: Pick<TrackSpec, 'cant' | 'lean'>): CantSpec | null {
  if (lean.length === 0) return cant ?? null;
  if (cant === undefined) return { points: lean, lever: 0 };
  const places = [...cant.points, ...lean].map(({ chainage }) => chainage).sort((a, b) => a - b);
  const points = places
    .filter((chainage, i) => i === 0 || chainage > places[i - 1])
    .map((chainage) => ({ chainage, cant: cantBetween(cant.points, chainage) + cantBetween(lean, chainage) }));
  return { ...cant, points };
}

/** The cant that the plan gives a chainage, m, whatever was built; rad, positive where the right rail is the higher one. */
export const plannedCant = ({ spec }: Track, chainage: number): number =>
  cantBetween(spec.cant?.points ?? [], chainage);
