import { type DrawnPlan, type Handle, planWords, type RouteState, verdictWords } from '../../state/route/index.ts';
import type { SessionState } from '../../state/types.ts';
import type { WordsLook } from './handWordsBox.ts';

interface Hand {
  /** Something is held, or the keyboard is at a handle. */
  readonly busy: boolean;
  /** The keyboard is at this handle, and no pointer holds it. */
  readonly keyed: boolean;
  /** Why the last key did nothing. */
  readonly said: string | null;
}

/** What is written at a hand, line by line: the numbers, what its keys do, what will not go well, what it was led to, why it cannot, what the train makes of it. */
export function linesAtHand(
  state: SessionState,
  route: RouteState,
  plan: DrawnPlan,
  handle: Handle | undefined,
  { busy, keyed, said }: Hand,
): readonly (readonly [text: string, look: WordsLook])[] {
  const { refusal, led, verdict } = route;
  const lines: [text: string, look: WordsLook][] = [];
  if (handle !== undefined && state.scene !== null) {
    const { figures, remarks } = planWords(state.scene, plan, handle, route, state);
    const [figure, ...more] = figures;
    lines.push([figure ?? '', 'figure']);
    if (more.length > 0) lines.push([more.join(' · '), 'more']);
    if (handle.keys !== undefined && keyed) lines.push([handle.keys, 'more']);
    if (refusal === null) for (const remark of remarks) lines.push([remark, 'fails']);
  }
  if (refusal === null && led !== null) lines.push([led, 'led']);
  const told = verdict === null ? null : verdictWords(verdict, state);
  const why = refusal ?? said;
  if (why !== null) lines.push([why, 'refusal']);
  else if (told !== null && plan.lines === null && busy) lines.push([told.words, told.fails ? 'fails' : 'passes']);
  return lines;
}
