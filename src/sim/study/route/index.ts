export { searchRoute } from './searchRoute.ts';
export type * from './types.ts';
