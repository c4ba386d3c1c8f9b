export { closersOf } from './closers.ts';
export { deckOf, roomConflicts, roomOf } from './roomConflicts.ts';
export { searchRoute } from './searchRoute.ts';
export type * from './types.ts';
