export { clearHeight, type StructureGaugeMm, structureGaugeMm } from './nem102.ts';
export { type CoachGroup, modelBodyMm, prototypeCoach, wideningH0, wideningH0Mm } from './nem103.ts';
export { tunnelWidth } from './nem105.ts';
export {
  type BufferedClass,
  bufferedClasses,
  leastRadiusH0Mm,
  leastRadiusOfWheelbase,
  type TrackUse,
} from './nem111.ts';
export { curvedSpacingH0Mm, straightSpacingH0Mm, straightSpacingNMm, trackSpacingH0 } from './nem112.ts';
export { easementLength, easementShiftMm, radiusWithoutEasement } from './nem113.ts';
export { mostCant, mostCantMm } from './nem114.ts';
export { leastMass, leastMassGPerMm } from './nem302.ts';
export { type BufferPlaceMm, bufferPlaceMm, bufferToleranceH0Mm, prototypeHeadMm } from './nem303.ts';
export { flangeH0Mm, type WheelsetMm, wheelsetMm } from './nem310.ts';
export { type AmericanScale, carWeightOz, recommendedCarMass } from './rp201.ts';
export { type WheelLimitsMm, wheelLimitsMm } from './s42.ts';
export { gaugeLimitsMm, gaugeMm, type Scale, setTrackRadii00Mm } from './scales.ts';
