export {
  addCoupling,
  addVehicle,
  copyTrain,
  copyVehicle,
  couplingKinds,
  fieldUnit,
  moveEntry,
  readField,
  removeEntry,
  removeTrain,
  removeVehicle,
  renameTrain,
  type SceneCoupling,
  type SceneVehicle,
  setBogies,
  setBuffers,
  setCoupling,
  setCouplingField,
  setCouplingKind,
  setEntry,
  setVehicleField,
} from '../../scene/index.ts';
export { type Haul, type HaulCase, type HaulTable, haulTable } from '../../sim/study/haul.ts';
export { couplingNumbers } from './couplingNumbers.ts';
export { missingWorkings, withAllWorkings } from './trialsOf.ts';
export type { StockNumber } from './types.ts';
export { type NumberGroup, vehicleNumbers } from './vehicleNumbers.ts';
