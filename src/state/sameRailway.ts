import type { Scene } from '../scene/index.ts';

/** What a scene holds beside the railway and its trials: it changes nothing of how a train runs. */
const besideTheRailway: ReadonlySet<string> = new Set<keyof Scene>(['surveys', 'tour', 'variants']);

/** The later scene with every part that says the same as in the earlier one taken from that: what is unchanged is then the very same object. */
export function withPartsOf(earlier: Scene, later: Scene): Scene {
  const old = new Map<string, unknown>(Object.entries(earlier));
  const parts = Object.entries(later).map(([key, part]: [string, unknown]) => {
    const same = old.has(key) && JSON.stringify(old.get(key)) === JSON.stringify(part);
    return [key, same ? old.get(key) : part];
  });
  return Object.fromEntries(parts) as Scene;
}

/** What trains run the same with, whatever it says, though a search for a route asks for it: no risk is computed from the room. */
const roundTheRailway: ReadonlySet<string> = new Set<keyof Scene>(['room']);

/** True when trains run the same in both: as for `sameRailway`, wherever they stand in the room. */
export const runsTheSame = (a: Scene, b: Scene): boolean => sameBut(a, b, [besideTheRailway, roundTheRailway]);

/** True when railway and room are the same in both: no part but surveys, tour and variants is another object. */
export const sameRailway = (a: Scene, b: Scene): boolean => sameBut(a, b, [besideTheRailway]);

function sameBut(a: Scene, b: Scene, but: readonly ReadonlySet<string>[]): boolean {
  const parts = (scene: Scene): Map<string, unknown> =>
    new Map(Object.entries(scene).filter(([key]) => !but.some((one) => one.has(key))));
  const ofA = parts(a);
  const ofB = parts(b);
  return ofA.size === ofB.size && [...ofA].every(([key, part]) => ofB.get(key) === part);
}
