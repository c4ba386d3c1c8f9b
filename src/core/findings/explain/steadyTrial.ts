import { steadyRun, trainLength } from '../../dynamics/index.ts';
import { framePoser, newSample, type RiskContext, type RiskId, riskById } from '../../risks/index.ts';
import { turnVehicle } from '../../stock/index.ts';
import type { Vehicle } from '../../stock/types.ts';
import { settingsAlong } from '../settingsAlong.ts';
import type { Trial } from '../situation.ts';
import { droppable } from './loads.ts';

/** What is changed about a train that is taken over its whole route again, at its steady speed. */
export interface TrainChange {
  readonly vehicles?: readonly Vehicle[];
  readonly propelled?: boolean;
  /** Every setting times this. */
  readonly factor?: number;
}

/** Way between two stations, m. A grade, a curve or a vehicle is many times longer; loads differ by less than 1 % from those of the full run. */
const every = 0.02;

/** How far inside the start of its track a train too long for its start is put, m. */
const inside = 0.001;

/** A trial's train taken along its whole route by the quasi-static pass. */
export interface SteadyTrial {
  readonly context: RiskContext;
  /** Settings of the engines by the path chainage of the leading body end, changed as asked. */
  readonly settings: (chainage: number) => readonly number[];
}

/**
 * The train of a trial, changed, over the whole way from start to finish however far the run came: its statics at every place. Null where the
 * trial's script is not known, never orders the train ahead, or leaves no way for a train that long.
 */
export function steadyTrial(trial: Trial, { vehicles, propelled, factor = 1 }: TrainChange): SteadyTrial | null {
  const { context, driven } = trial;
  if (driven === null) return null;
  const { path, run } = context;
  const highest = driven.script.orders.reduce((most, { setting }) => Math.max(most, setting), 0) * factor;
  const train = vehicles === undefined ? context.train : { ...context.train, vehicles };
  const start = Math.max(driven.script.start, trainLength(train) + inside);
  if (!(highest > 0) || start + every >= driven.script.finish) return null;
  const lead = context.train.vehicles[0].pivotSpacing / 2 + context.train.vehicles[0].frontOverhang;
  const ordered = settingsAlong(driven, run, lead);
  const steady = steadyRun(
    { path, train, script: { ...driven.script, start }, options: driven.options },
    { every, setting: Math.min(1, highest) },
  );
  return {
    context: { ...context, train, run: steady, propelled: propelled ?? context.propelled },
    settings: (chainage) => ordered(chainage).map((setting) => setting * factor),
  };
}

/**
 * Least margin (SI) of a risk anywhere on the route, were the train changed and always ran at its steady speed: no blows, no starts. Infinity where the
 * risk has nothing to say; null where the route cannot be told.
 */
export function marginOnRoute(trial: Trial, risk: RiskId, change: TrainChange): number | null {
  const steady = steadyTrial(trial, change);
  if (steady === null) return null;
  const { context } = steady;
  const definition = riskById(risk);
  const sampler = definition.prepare(context);
  if (sampler === null) return Number.POSITIVE_INFINITY;
  const { frames, vehicles, locomotives } = context.run;
  const subjects = { joint: vehicles - 1, vehicle: vehicles, locomotive: locomotives.length }[definition.subject];
  const pose = framePoser(context);
  const sample = newSample();
  let least = Number.POSITIVE_INFINITY;
  for (let f = 0; f < frames; f++) {
    const frame = pose(f);
    for (let subject = 0; subject < subjects; subject++) {
      sampler.sample(frame, subject, sample);
      if (sample.margin < least) least = sample.margin;
    }
  }
  return least;
}

/** The train with its other end ahead: pulled where it was propelled, and the reverse. */
export const turnedTrain = ({ context }: Trial): TrainChange => ({
  vehicles: [...context.train.vehicles].reverse().map(turnVehicle),
  propelled: !context.propelled,
});

/**
 * The train with so many vehicles besides engines and tenders: those furthest from the engines taken off, or the last of them
 * repeated. Null for a train that has none.
 */
export function withVehicles({ context }: Trial, count: number): TrainChange | null {
  const { vehicles } = context.train;
  const order = droppable(context);
  if (order.length === 0) return null;
  if (count <= order.length) {
    const gone = new Set(order.slice(0, order.length - count));
    return { vehicles: vehicles.filter((_, index) => !gone.has(index)) };
  }
  const [last] = order;
  const more = Array.from({ length: count - order.length }, () => vehicles[last]);
  return { vehicles: [...vehicles.slice(0, last), ...more, ...vehicles.slice(last)] };
}
