export { gatherPage, type PageWish } from './gatherPage.ts';
export type { PageHooks } from './pageTrials.ts';
export * from './types.ts';
