export { assessRun, sampleInFull } from './assessRun.ts';
export { framePoser } from './framePoser.ts';
export { riskById, risks } from './registry.ts';
export { newSample } from './sample.ts';
export type * from './types.ts';
