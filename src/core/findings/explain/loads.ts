import type { RiskContext } from '../../risks/types.ts';
import type { Situation } from '../situation.ts';
import type { Cause } from '../types.ts';

/** A blow this soon before a moment still is its cause, s. */
const lately = 0.3;

/** The push at a joint at the situation's moment. */
export function buffCause({ context, worst }: Situation): Cause {
  const at = worst.frame * (context.run.vehicles - 1) + worst.subject;
  return { kind: 'buff', force: Math.abs(context.run.buffPeak[at]), sudden: struck(context, worst.frame, 'run-in') };
}

/** The pull at a joint at the situation's moment. */
export function draftCause({ context, worst }: Situation): Cause {
  const at = worst.frame * (context.run.vehicles - 1) + worst.subject;
  return { kind: 'draft', force: context.run.draftPeak[at], sudden: struck(context, worst.frame, 'run-out') };
}

/** Whether a wave of that kind is passing through the train. */
function struck({ run }: RiskContext, frame: number, kind: 'run-in' | 'run-out'): boolean {
  const now = run.time[frame];
  return run.events.some((event) => event.kind === kind && Math.abs(event.time - now) <= lately);
}

/** Trailing vehicles in the order they would be taken off: from the end away from the engines, engines and tenders never. */
export function droppable({ train, propelled }: RiskContext): number[] {
  const order = train.vehicles.map((_, i) => i);
  if (!propelled) order.reverse();
  return order.filter((i) => train.vehicles[i].drive === null && train.vehicles[i].kind !== 'tender');
}

/**
 * Least number of vehicles to take off so that a force made by the mass of those in `made` falls to `limit`; null when that
 * takes all of them or more.
 */
export function vehiclesToDrop(
  context: RiskContext,
  made: (vehicle: number) => boolean,
  force: number,
  limit: number,
): { readonly by: number; readonly force: number } | null {
  const { vehicles } = context.train;
  const all = vehicles.reduce((sum, vehicle, i) => sum + (made(i) ? vehicle.mass : 0), 0);
  const order = droppable(context);
  let left = all;
  for (let by = 1; by < order.length; by++) {
    const off = order[by - 1];
    if (made(off)) left -= vehicles[off].mass;
    if ((force * left) / all <= limit) return { by, force: (force * left) / all };
  }
  return null;
}

/** Whether a vehicle's mass works through a joint: those on the side away from the engines. */
export function beyondJoint({ train }: RiskContext, joint: number): (vehicle: number) => boolean {
  let ahead = 0;
  let behind = 0;
  train.vehicles.forEach((vehicle, i) => {
    if (vehicle.drive === null) return;
    if (i <= joint) ahead += vehicle.drive.drivenMass;
    else behind += vehicle.drive.drivenMass;
  });
  return ahead >= behind ? (vehicle) => vehicle > joint : (vehicle) => vehicle <= joint;
}
