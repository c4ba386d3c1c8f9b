import { jointNumber, jointVehicles, type Naming } from '../../../core/findings/index.ts';

/** A joint by its number and its two vehicles: "6 Covered van–Long bogie van". Numbers are the scene's, whichever end leads. */
export const jointName = (naming: Naming, joint: number): string =>
  `${jointNumber(naming, joint)} ${jointVehicles(naming, joint).join('–')}`;

/** The plain names of a joint's two vehicles in the order of their numbers. */
export function plainPair({ vehicleNames, lastLeads }: Naming, joint: number): readonly [string, string] {
  const [leading, trailing] = [vehicleNames[joint], vehicleNames[joint + 1]];
  return lastLeads === true ? [trailing, leading] : [leading, trailing];
}
