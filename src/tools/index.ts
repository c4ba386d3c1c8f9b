export { type HandDeed, type HandEvent, type HandState, type HandStep, handStep, idle } from './handleTool.ts';
export { nudgeSteps, snappingFor, turnSteps } from './steps.ts';
