import type { Scene } from '../../scene/index.ts';
import { withAllWorkings as withWorkings } from '../../sim/index.ts';
import { trialWords } from '../words.ts';

export { missingWorkings } from '../../sim/index.ts';

/** The scene with a trial for each way a train can be worked over a track, each named as the session names trials. */
export const withAllWorkings = (scene: Scene, trainId: string, trackId: string, like: string): Scene =>
  withWorkings(scene, trainId, trackId, () => like, trialWords);
