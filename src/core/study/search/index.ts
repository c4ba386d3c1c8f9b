export { mostNumbers } from './directions.ts';
export { type DivideSpec, divideBoxes } from './divide.ts';
export { type FrontSpec, type SearchedFront, searchFront, unbeatenOf } from './front.ts';
export { allPlaces, type Choice, numbersAt, settingsOf } from './lattice.ts';
export type { LatticePlace, Weigh, Weighed, Worth } from './types.ts';
