export type { BandActions } from './actions.ts';
export { Band, type BandProps } from './Band.tsx';
export { makeRowKeeper } from './rows/rowKeeper.ts';
