export * as build from './build/index.ts';
export * as dynamics from './dynamics/index.ts';
export * as findings from './findings/index.ts';
export * as math from './math/index.ts';
export * as risks from './risks/index.ts';
export * as stock from './stock/index.ts';
export * as track from './track/index.ts';
export * as units from './units/index.ts';
