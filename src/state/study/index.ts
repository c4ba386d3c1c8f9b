export { closestCall, type Gauge, type Probe, passesBy } from '../../sim/study/index.ts';
export { createStudies, type Studies, type StudyActions } from './createStudies.ts';
export {
  type FieldReading,
  type QuantityGroup,
  quantityAt,
  quantityGroups,
  readField,
  type StudyQuantity,
  usualRange,
} from './quantities.ts';
export type * from './types.ts';
