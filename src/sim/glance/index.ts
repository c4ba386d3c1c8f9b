export { glanceAt } from './glanceAt.ts';
export type * from './types.ts';
