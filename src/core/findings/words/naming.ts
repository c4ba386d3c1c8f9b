import type { Naming } from './show.ts';

/**
 * Number of a vehicle of the run, counted from 1 as the scene lists the train: a vehicle keeps it whichever end leads and
 * whether the train is pulled or propelled.
 */
export const vehicleNumber = ({ vehicleNames, lastLeads }: Naming, index: number): number =>
  lastLeads === true ? vehicleNames.length - index : index + 1;

/** Number of a joint of the run, counted from 1 likewise: joint n couples vehicles n and n + 1. */
export const jointNumber = ({ vehicleNames, lastLeads }: Naming, joint: number): number =>
  lastLeads === true ? vehicleNames.length - 1 - joint : joint + 1;

/** A vehicle's name, with its number where others of the train are called the same: `Long coach 3`. */
export function vehicleName(naming: Naming, index: number): string {
  const name = naming.vehicleNames[index];
  const number = vehicleNumber(naming, index);
  if (name === undefined) return `vehicle ${number}`;
  return naming.vehicleNames.filter((other) => other === name).length > 1 ? `${name} ${number}` : name;
}

/** A locomotive by its number among the locomotives. */
export function engineName(naming: Naming, locomotive: number): string {
  const vehicle = naming.locomotives?.[locomotive];
  return vehicle === undefined ? 'the engine' : vehicleName(naming, vehicle);
}

/** The two vehicles of a joint in the order of their numbers: `Open wagon 2`, `Brake van`. */
export function jointVehicles(naming: Naming, joint: number): [string, string] {
  const pair: [string, string] = [vehicleName(naming, joint), vehicleName(naming, joint + 1)];
  if (naming.lastLeads === true) pair.reverse();
  return pair;
}

/** The two vehicles of a joint: `Brake van and Open wagon 2`, `Open wagon 2 and 3`. */
export function pairName(naming: Naming, joint: number): string {
  const { vehicleNames } = naming;
  const [first, second] = jointVehicles(naming, joint);
  const alike = vehicleNames[joint] !== undefined && vehicleNames[joint] === vehicleNames[joint + 1];
  return `${first} and ${alike ? jointNumber(naming, joint) + 1 : second}`;
}
