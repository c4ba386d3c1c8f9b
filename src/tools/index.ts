export { type HandDeed, type HandEvent, type HandState, type HandStep, handStep, idle } from './handleTool.ts';
export { nudgeSteps, raisePerPixel, raiseSteps, snappingFor, turnSteps } from './steps.ts';
