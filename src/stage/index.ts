export { Stage, type StageProps } from './Stage.tsx';
export type { StageProbe } from './view/probe.ts';
