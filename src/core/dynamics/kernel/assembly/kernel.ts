/*
 * The kernel's face: everything the other side can call. Trains and route tables live in the kernel's memory and are known by their address.
 */
export { writeFrame } from './frames';
export {
  cutKnob,
  dropTrain,
  giveBack,
  holdSpeed,
  makeTrain,
  room,
  setEngine,
  setJoint,
  setLaw,
  setSpeed,
  setVehicle,
  turnKnob,
} from './lay';
export { engine, extension, force, loss, sigma, speed, sweeps, unsettled } from './read';
export { advance } from './step';
