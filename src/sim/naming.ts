import type { Naming } from '../core/findings/index.ts';
import type { CompiledTrial, TrialResult } from './types.ts';

/** Who is who in a trial, for words about it; with its result, its engines by name too. Numbers are the scene's whichever end leads. */
export const namingOf = (trial: CompiledTrial, result?: Pick<TrialResult, 'run'> | null): Naming => ({
  vehicleNames: trial.train.vehicles.map((vehicle) => vehicle.name),
  lastLeads: trial.lastLeads,
  ...(result ? { locomotives: result.run.locomotives } : {}),
  propelled: trial.propelled,
  ...(trial.legs ? { legs: trial.legs } : {}),
  path: { length: trial.path.track.length, reversed: trial.path.reversed },
});
