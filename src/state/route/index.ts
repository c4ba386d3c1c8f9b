export { type AdviceWords, adviceWords } from './adviceWords.ts';
export { chosenSpan, spanWords, upTo } from './chosenSupports.ts';
export { chosenTrack, createRoute, type Route, type RouteActions } from './createRoute.ts';
export type { Steer } from './dragged.ts';
export type { DrawnPlan } from './drawnPlan.ts';
export { type Handle, type HandleKind, handlesOf, type Place } from './handles.ts';
export { type PlanWords, planWords } from './planWords.ts';
export { ranInto } from './runInto.ts';
export { noSnapping, type Snapping } from './snapping.ts';
export {
  moveWith,
  raisedOff,
  supportLabel,
  supportName,
  supportOffWords,
  supportOfKey,
  supportStepMm,
} from './supportHand.ts';
export type { ChosenSupports, DraftVerdict, RouteState, Works } from './types.ts';
export { beforeWords, type VerdictWords, verdictWords } from './verdictWords.ts';
