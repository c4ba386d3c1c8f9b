import { formatNumber, thinSpace } from '../../core/units/index.ts';
import type { Opened, SessionState } from '../../state/types.ts';

/** Where a scene came from. */
export function openedWords({ from, name }: Opened): string {
  return {
    program: 'an example, as it came',
    file: `opened from ${name}`,
    machine: 'as you left it',
    shape: 'new',
    copy: 'open in another window too, so this is a copy',
  }[from];
}

/** What is going on, in a few words: a run, cures being worked out, a change not run yet, or where the scene came from. */
export function stateWords(state: SessionState): string {
  const { progress, cures, scene, compiled, trial, trialId, opened, holding } = state;
  if (!scene) return '';
  if (progress !== null) return `solving the trial, ${formatNumber(progress * 100, { digits: 0 })}${thinSpace}%`;
  if (holding && compiled?.scene !== scene) return 'the trial is solved when you let go';
  if (compiled?.scene !== scene || trial?.id !== trialId || !state.result) return 'not run since it was changed';
  const outcomes = [...cures.values()].flat();
  const over = outcomes.filter(({ state: now }) => now === 'done' || now === 'impossible').length;
  if (outcomes.some((outcome) => outcome.state === 'running')) {
    return `trying cures, ${over + 1} of ${outcomes.length}`;
  }
  return opened ? openedWords(opened) : '';
}
