import type { Scene } from '../../scene/index.ts';
import { trialParts, withTrial } from './parts.ts';

/** The same train over the same way with its other end ahead: pulled instead of pushed, or the reverse. */
export function changeWorking(scene: Scene, trialId: string): Scene | null {
  const parts = trialParts(scene, trialId);
  if (parts === null) return null;
  const { trial } = parts;
  return withTrial(scene, { ...trial, leading: trial.leading === 'first' ? 'last' : 'first' });
}
