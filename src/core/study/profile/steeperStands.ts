import type { Nodes } from './nodes.ts';
import { type Stand, signs, standGrade } from './problem.ts';
import type { ProfileTask } from './types.ts';

/**
 * Stands of the train, in between those that a problem held down, whose mean grade is above what the problem came to (per cent) by more than
 * `by`. Between two stands at which either end of the train passes a node the mean is a parabola of the place, so its ends and its middle give its
 * top exactly. None where no window is asked: then nodes decide.
 */
export function steeperStands(
  task: ProfileTask,
  nodes: Nodes,
  values: ArrayLike<number>,
  above: number,
  by: number,
): Stand[] {
  const span = Math.min(task.window, task.track.length);
  if (span === 0) return [];
  const heads = [...nodes.at, ...nodes.at.map((s) => s + span)]
    .filter((s) => s >= span && s <= task.track.length)
    .sort((a, b) => a - b);
  const found: Stand[] = [];
  const standAt = (head: number): Stand => ({ from: head - span, to: head, side: 'before' });
  for (let k = 0; k + 1 < heads.length; k++) {
    const [low, high] = [heads[k], heads[k + 1]];
    if (high - low < 1e-9) continue;
    for (const sign of signs(task.towards)) {
      const at = (head: number): number => standGrade(task, nodes, standAt(head), sign, values);
      const [a, b, c] = [at(low), at((low + high) / 2), at(high)];
      const bend = a - 2 * b + c;
      if (bend >= 0) continue;
      // Top of the parabola through three places, as a share of the way.
      const share = 0.5 + (a - c) / (4 * bend);
      if (share <= 0 || share >= 1) continue;
      const top = low + share * (high - low);
      if (at(top) > above + by) found.push(standAt(top));
    }
  }
  return found;
}
