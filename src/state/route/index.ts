export { type AdviceWords, adviceWords } from './adviceWords.ts';
export { chosenTrack, createRoute, type DrawnPlan, type Route, type RouteActions } from './createRoute.ts';
export type { Place } from './dragged.ts';
export type { Handle, HandleKind } from './handles.ts';
export { type HandWords, handWords } from './handWords.ts';
export { ranInto } from './runInto.ts';
export { noSnapping, type Snapping } from './snapping.ts';
export type { DraftVerdict, RouteState } from './types.ts';
export { beforeWords, type VerdictWords, verdictWords } from './verdictWords.ts';
