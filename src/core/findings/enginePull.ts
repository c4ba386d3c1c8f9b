import type { RiskContext } from '../risks/types.ts';
import { standardGravity } from '../units/index.ts';
import type { Candidate } from './explainer.ts';
import { vehiclesToDrop } from './loads.ts';

/** What a cure of a short pull should leave in hand: what the risk calls near. */
const inHand = 0.1;

/** Weight is added in steps of this, kg. */
const ballastStep = 0.005;

/** More than this share of its own mass fits into no engine. */
const mostBallast = 0.6;

/** Fewer vehicles, so that what the train needs falls to what the engines give. Forces in N. */
export function fewerVehicles(context: RiskContext, needed: number, available: number): Candidate[] {
  const fewer = vehiclesToDrop(context, () => true, needed, available);
  if (fewer === null) return [];
  return [{ cure: { kind: 'fewer-vehicles', by: fewer.by }, expected: available / fewer.force - 1 }];
}

/**
 * Weight over the driven wheels of every engine, so that grip exceeds need by the margin called near. The added weight has to be
 * carried up as well: Δm·g·(μ - need per weight) = shortfall, shared by the engines.
 */
export function engineWeight(context: RiskContext, needed: number, available: number): Candidate[] {
  const { vehicles } = context.train;
  const engines = vehicles.filter((vehicle) => vehicle.drive !== null);
  if (engines.length === 0) return [];
  const adhesion = engines.reduce((sum, engine) => sum + (engine.drive?.adhesion ?? 0), 0) / engines.length;
  const weight = standardGravity * vehicles.reduce((sum, vehicle) => sum + vehicle.mass, 0);
  const each = adhesion - (1 + inHand) * (needed / weight);
  const shortfall = (1 + inHand) * needed - available;
  if (each <= 0 || shortfall <= 0) return [];
  const by = Math.ceil(shortfall / each / standardGravity / engines.length / ballastStep) * ballastStep;
  const lightest = Math.min(...engines.map((engine) => engine.mass));
  return by > mostBallast * lightest ? [] : [{ cure: { kind: 'add-engine-weight', by }, expected: inHand }];
}

/** The setting (0 to 1, to a hundredth) at which the motors together pull `force` (N) at standstill; null past full. */
export function settingFor({ run, train }: RiskContext, force: number): number | null {
  let full = 0;
  for (const vehicle of run.locomotives) full += train.vehicles[vehicle].drive?.stallForce ?? 0;
  const setting = force / full;
  return setting <= 1 ? setting : null;
}
