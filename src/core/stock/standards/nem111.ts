import { sin } from '../../math/index.ts';
import type { CoachGroup } from './nem103.ts';

/** Greatest angle between a rigid wheelbase's guiding wheel and the rail, rad: 12°. Source: NEM 111 (2016) par. 2.1. */
const greatestAttackAngle = (12 * Math.PI) / 180;

/** Least radius (m) at which a rigid wheelbase (m) with its end axle guiding keeps that angle: a/(2 sin 12°). */
export const leastRadiusOfWheelbase = (wheelbase: number): number => wheelbase / (2 * sin(greatestAttackAngle));

/** What a track is for. */
export type TrackUse = 'least-permitted' | 'station-side' | 'branch-main' | 'main';

/** Least radii in H0 by use and coach group, mm. Source: a club's print of the NEM 111 table. */
export const leastRadiusH0Mm: Readonly<Record<TrackUse, Readonly<Record<CoachGroup, number>>>> = {
  'least-permitted': { A: 363, B: 412, C: 495 },
  'station-side': { A: 412, B: 495, C: 577 },
  'branch-main': { A: 495, B: 577, C: 660 },
  main: { A: 577, B: 660, C: 742 },
};

/** A class of stock for which the norm gives a radius fit for propelling with touching buffers. Prototype lengths, m. */
export interface BufferedClass {
  readonly name: 'A1 two-axle' | 'A2 two-axle' | 'A3 two-axle' | 'A bogie' | 'B bogie' | 'C bogie';
  readonly lengthOverBuffers: number;
  /** Wheelbase of two-axle stock, distance between bogie centres otherwise. */
  readonly pivotSpacing: number;
  /** Least radius as a multiple of the track gauge. */
  readonly gauges: number;
}

/**
 * Least radii when buffers touch: scale heads, sprung, drag-hook gap over 0.07 of the gauge, mass by NEM 302, and an easement by NEM 113
 * or a straight longer than the longest vehicle. Source: NEM 111 (2016) par. 3.2.
 */
export const bufferedClasses: readonly BufferedClass[] = [
  { name: 'A1 two-axle', lengthOverBuffers: 9.8, pivotSpacing: 5.0, gauges: 50 },
  { name: 'A2 two-axle', lengthOverBuffers: 14.6, pivotSpacing: 8.0, gauges: 57 },
  { name: 'A3 two-axle', lengthOverBuffers: 17.5, pivotSpacing: 10.0, gauges: 71 },
  { name: 'A bogie', lengthOverBuffers: 20.3, pivotSpacing: 14.0, gauges: 57 },
  { name: 'B bogie', lengthOverBuffers: 24.5, pivotSpacing: 17.2, gauges: 60 },
  { name: 'C bogie', lengthOverBuffers: 27.5, pivotSpacing: 19.5, gauges: 84 },
];
