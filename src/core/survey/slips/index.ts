export type { Candidate, Family, SlipContext } from './candidate.ts';
export { families } from './families.ts';
