import type { Scene } from '../scene/index.ts';
import type { TrialResult } from '../sim/types.ts';

/** Solved trials kept for going back and forth: each may hold several megabytes of arrays. */
const longestShelf = 8;

export interface ResultShelf {
  find(scene: Scene, trialId: string): TrialResult | null;
  keep(scene: Scene, result: TrialResult): void;
}

/** Remembers the latest solved trials by the very scene object they were solved for. */
export function createResultShelf(): ResultShelf {
  let kept: { scene: Scene; result: TrialResult }[] = [];
  return {
    find: (scene, trialId) =>
      kept.find((entry) => entry.scene === scene && entry.result.trialId === trialId)?.result ?? null,
    keep(scene, result) {
      const others = kept.filter((entry) => entry.scene !== scene || entry.result.trialId !== result.trialId);
      kept = [...others, { scene, result }].slice(-longestShelf);
    },
  };
}
