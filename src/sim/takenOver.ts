import type { Run } from '../core/dynamics/types.ts';
import { frontReach } from '../core/stock/index.ts';
import { chainageAtRail, railAt } from '../core/track/index.ts';
import type { CompiledTrial } from './types.ts';

/** How the train stands that a trial takes over from another. */
export interface TakenOver {
  /** The trial before. */
  readonly id: string;
  readonly name: string;
  /** Chainage of the leading end, m, as the scene counts it. */
  readonly chainage: number;
  /** Joints that pull, that push, and that do neither. */
  readonly stretched: number;
  readonly bunched: number;
  readonly slack: number;
}

/** How the train stood as a trial began that goes on from another, by its run; null: it begins by itself. */
export function takenOver({ path, train, follows }: CompiledTrial, run: Run): TakenOver | null {
  if (follows === undefined) return null;
  const { track, reversed } = path;
  const head = chainageAtRail(track, railAt(track, run.chainage[0]) + frontReach(train.vehicles[0]));
  const forces = [...run.force.subarray(0, run.vehicles - 1)];
  const stretched = forces.filter((force) => force > 0).length;
  const bunched = forces.filter((force) => force < 0).length;
  return {
    id: follows.id,
    name: follows.name,
    chainage: reversed ? track.length - head : head,
    stretched,
    bunched,
    slack: forces.length - stretched - bunched,
  };
}

/** That in words: "all 3 couplings stretched", "2 of 5 couplings bunched, 3 slack". */
export function standsWords({ stretched, bunched, slack }: Pick<TakenOver, 'stretched' | 'bunched' | 'slack'>): string {
  const all = stretched + bunched + slack;
  const kinds = (
    [
      ['stretched', stretched],
      ['bunched', bunched],
      ['slack', slack],
    ] as const
  ).filter(([, count]) => count > 0);
  const [first, ...others] = kinds;
  if (first === undefined) return 'one vehicle alone';
  const couplings = all === 1 ? 'coupling' : 'couplings';
  if (others.length === 0) return all === 1 ? `its ${couplings} ${first[0]}` : `all ${all} ${couplings} ${first[0]}`;
  return [`${first[1]} of ${all} ${couplings} ${first[0]}`, ...others.map(([what, count]) => `${count} ${what}`)].join(
    ', ',
  );
}
