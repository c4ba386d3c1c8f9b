import type { Drive, Vehicle } from './types.ts';

/**
 * The same vehicle facing the other way: ends, overhangs and centre of mass change places. On a locomotive whose driven
 * wheels lead, the drawbar takes weight off them; turned, it puts the same weight on, so the transfer share changes sign.
 * Turning twice gives the vehicle back.
 */
export function turnVehicle(vehicle: Vehicle): Vehicle {
  return {
    ...vehicle,
    massAhead: 0 - vehicle.massAhead,
    frontOverhang: vehicle.rearOverhang,
    rearOverhang: vehicle.frontOverhang,
    front: vehicle.rear,
    rear: vehicle.front,
    drive: vehicle.drive && turnDrive(vehicle.drive),
  };
}

const turnDrive = (drive: Drive): Drive => ({
  ...drive,
  transferShare: 0 - drive.transferShare,
  ...(drive.axles === undefined ? {} : { axles: drive.axles.map((axle) => ({ ...axle, ahead: 0 - axle.ahead })) }),
});
