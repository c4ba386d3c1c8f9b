import type { Chapter } from '../types.ts';
import { always, type Command } from './command.ts';

/** What a command needs to know of a chapter. */
export interface ChapterName {
  readonly id: Chapter;
  readonly label: string;
}

/** One command for each chapter, in the order of the job, on the number keys. */
export const chapterCommands = (chapters: readonly ChapterName[]): readonly Command[] =>
  chapters.map(({ id, label }, index) => ({
    id: `chapter-${id}`,
    label: () => `Chapter: ${label}`,
    key: `${index + 1}`,
    shownKey: `${index + 1}`,
    fieldKey: { key: `Alt+Shift+Digit${index + 1}`, shown: `Alt Shift ${index + 1}` },
    canRun: always,
    run: ({ actions }) => actions.setChapter(id),
  }));
