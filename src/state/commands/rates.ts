import { type Command, hasResult } from './command.ts';

const rateWords: readonly (readonly [rate: number, id: string, words: string])[] = [
  [1 / 20, 'twentieth', 'a twentieth of true speed'],
  [1 / 4, 'quarter', 'a quarter of true speed'],
  [1, 'true', 'true speed'],
  [4, 'four', 'four times true speed'],
];

/** One command for each playing speed. */
export const rates: readonly Command[] = rateWords.map(([rate, id, words]) => ({
  id: `rate-${id}`,
  label: () => `Play at ${words}`,
  key: null,
  canRun: hasResult,
  run: ({ actions }) => actions.setRate(rate),
}));
