import { type Scene, tidy } from '../../scene/index.ts';
import { trialParts, withTrial } from './parts.ts';

/** Turns the controller so that its highest setting of the trial is `to`, all others in proportion; null when none moves the train. */
export function changeSetting(scene: Scene, trialId: string, to: number): Scene | null {
  const parts = trialParts(scene, trialId);
  if (parts === null) return null;
  const { trial } = parts;
  const highest = Math.max(...trial.orders.map((order) => Math.abs(order.setting)));
  if (highest === 0 || !(Math.abs(to) > 0)) return null;
  const factor = Math.abs(to) / highest;
  return withTrial(scene, {
    ...trial,
    orders: trial.orders.map((order) => ({ ...order, setting: tidy(order.setting * factor) })),
  });
}
