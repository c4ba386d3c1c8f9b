/* Reads a train as it stands. */
import { engineAt } from './engines';
import { Engine } from './motor';
import { sum } from './pairs';
import { along, halfAt, jointHalf, Train, tabulated } from './train';

/** Rail distance of vehicle i's origin, m, and its speed, m/s. */
export function sigma(train: Train, i: i32): f64 {
  return along(train, i, halfAt(train, i).place);
}

export function speed(train: Train, i: i32): f64 {
  return along(train, i, halfAt(train, i).speed);
}

/** Of joint j: force averaged over the last step, N, and extension now, m. */
export function force(train: Train, j: i32): f64 {
  return jointHalf(train, j).force;
}

export function extension(train: Train, j: i32): f64 {
  locateJoint(train, j);
  return jointHalf(train, j).extension;
}

export function engine(train: Train, e: i32): Engine {
  return engineAt(train, e);
}

export function unsettled(train: Train): i32 {
  return train.unsettled;
}

export function sweeps(train: Train): i32 {
  return train.sweeps;
}

/** Work taken by a loss since the start, J: motor, rolling, curve, flange, coupler, slip, holding. */
export function loss(train: Train, which: i32): f64 {
  switch (which) {
    case 0:
      return train.motor;
    case 1:
      return sum(train.rolling);
    case 2:
      return sum(train.curve);
    case 3:
      return sum(train.flange);
    case 4:
      return sum(train.coupler);
    case 5:
      return train.slip;
    default:
      return train.holding;
  }
}

/** Finds where a joint stands now: its extension from the free length in space, m. */
export function locateJoint(train: Train, j: i32): void {
  const half = jointHalf(train, j);
  const a = sigma(train, j);
  const b = sigma(train, j + 1);
  half.extension = a - b - half.spacing + tabulated(train, half.jointTable, 0.5 * (a + b));
}

/** Writes down where the host reads it how the ends of the train stand. */
export function keepEnds(train: Train): void {
  const last = train.count - 1;
  train.first = sigma(train, 0);
  train.last = sigma(train, last);
  train.lastSpeed = speed(train, last);
}
