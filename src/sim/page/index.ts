export { gatherPage, type PageWish } from './gatherPage.ts';
export type { PageHooks } from './pageTrials.ts';
export { type TestToMake, testsToMake } from './testsToMake.ts';
export * from './types.ts';
