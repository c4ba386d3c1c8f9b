export { easementPlaces, setAllEasements } from './allEasements.ts';
export {
  bendOn,
  extendToPose,
  extendTrack,
  layStraightOn,
  moveEnd,
  type NewBend,
  type RoomPlace,
} from './chainEnds.ts';
export { copyTurn } from './copyTurn.ts';
export { type BendChange, cornerPlace, moveCorner, offCornerLine, setBend } from './corners.ts';
export { easeJoin, setEasement } from './easements.ts';
export { insertElement, removeElement, splitElement } from './elements.ts';
export { freeId, newId } from './ids.ts';
export { type ParallelOptions, parallelTrack } from './parallel.ts';
export { planElement } from './planElements.ts';
export { addProfilePoint, type ProfileChange, removeProfilePoint, setProfilePoint } from './profile.ts';
export { changeRoom, type RoomChange } from './room.ts';
export { type ElementChange, setElement } from './setElement.ts';
export { type StartChange, setStart } from './setStart.ts';
export { shortened } from './sized.ts';
export {
  addCoupling,
  copyVehicle,
  removeVehicle,
  setBogies,
  setBuffers,
  setCoupling,
  setCouplingField,
  setCouplingKind,
  setVehicleField,
} from './stock.ts';
export {
  evenSupports,
  meanOffMm,
  moveSupports,
  removeSupports,
  type SupportSpan,
  supportsAsPlanned,
} from './supportSpan.ts';
export { moveSupport, setSupportsEvery, supportsWith } from './supports.ts';
export { changeSurroundings, type Surroundings } from './surroundings.ts';
export { tidy } from './tidy.ts';
export {
  addTourStop,
  changeTourStop,
  moveTourStop,
  type NewTourStop,
  namedStops,
  putTour,
  removeTourStop,
  type TourStopChange,
} from './tour.ts';
export { addTrack, type NewTrack, removeTrack, straightTrack } from './tracks.ts';
export {
  addVehicle,
  copyTrain,
  type EntryChange,
  moveEntry,
  removeEntry,
  removeTrain,
  renameTrain,
  setEntry,
} from './trains.ts';
export {
  addOrder,
  type OrderChange,
  removeOrder,
  removeTrial,
  renameTrial,
  setFollows,
  setOrder,
  setStop,
  setTrialEnd,
} from './trials.ts';
export {
  layTurnout,
  moveTurnout,
  nearestOn,
  type TurnoutChange,
  turnoutNear,
  turnoutTowards,
} from './turnouts.ts';
