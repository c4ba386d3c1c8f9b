import type { Chapter } from '../types.ts';
import { always, type Command } from './command.ts';

/** Chapters in the order of the job, with their words. */
export const chapterWords: Readonly<Record<Chapter, string>> = { route: 'Route', trains: 'Trains', trial: 'Trial' };

/** One command for each chapter, on the number keys. */
export const chapters: readonly Command[] = (Object.keys(chapterWords) as Chapter[]).map((chapter, index) => ({
  id: `chapter-${chapter}`,
  label: () => `Chapter: ${chapterWords[chapter]}`,
  key: `${index + 1}`,
  shownKey: `${index + 1}`,
  canRun: always,
  run: ({ actions }) => actions.setChapter(chapter),
}));
