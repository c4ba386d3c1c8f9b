export { type ChapterEntry, chapterOf, chapters, commands } from './chapters.ts';
