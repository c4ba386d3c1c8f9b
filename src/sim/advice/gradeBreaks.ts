import { lengthOverBuffers } from '../../core/stock/index.ts';
import type { Vehicle, VehicleEnd } from '../../core/stock/types.ts';
import { profileHeights, type SceneTrack } from '../../scene/index.ts';
import type { CompiledScene } from '../types.ts';
import { collectionOf } from './collection.ts';
import type { AdviceEdit, GradeBreakFact } from './types.ts';
import { curveLengthsMm, gradesBetween } from './verticalCurves.ts';

/**
 * Share of what holds two heads that a step between them may take. Source: a builder's rule, read: keep at least half of the coupler's height
 * engaged.
 */
const holdToKeep = 0.5;

/** A step of less than this share of what may be taken is not worth a word. */
const trivial = 0.1;

/** A vertical curve is proposed in steps of this, mm. */
const roundMm = 10;

/** One fact for each point of the planned heights where the grade changes at once by enough to part coupled heads noticeably. */
export function gradeBreaks({ scene }: CompiledScene): GradeBreakFact[] {
  const { vehicles, longest } = collectionOf(scene);
  const governing = vehicles.map(stepAndHold).reduce((worst, one) => (one.share > worst.share ? one : worst));
  return scene.tracks.flatMap((track) => {
    const points = profileHeights(track);
    const grades = gradesBetween(track);
    const curves = curveLengthsMm(track);
    return points.flatMap(({ atMm }, point): GradeBreakFact[] => {
      if (point === 0 || point >= grades.length || curves[point] > 0) return [];
      const [before, after] = [grades[point - 1], grades[point]];
      const change = Math.abs(after - before);
      const [value, limit] = [change * governing.beyond, holdToKeep * governing.hold];
      if (value < trivial * limit) return [];
      const chainage = atMm / 1000;
      return [
        {
          kind: 'grade-break',
          trackId: track.id,
          chainage,
          from: chainage,
          to: chainage,
          weight: value > limit ? 'wrong' : 'near',
          value,
          limit,
          edit: curveFor(track, point, change, lengthOverBuffers(longest) * 1000),
          before,
          after,
          vehicle: governing.vehicle.name,
        },
      ];
    });
  });
}

/** How far a vehicle's head stands beyond its running point, the hold of the coupling, and the one per the other. */
interface Reaching {
  readonly vehicle: Vehicle;
  readonly beyond: number;
  readonly hold: number;
  readonly share: number;
}

/**
 * A vehicle whose last running point stands on a break of grade δ carries its head off the rail beyond by δ times its distance from that
 * point: overhang and what the coupling stands out. The worse of its ends.
 */
function stepAndHold(vehicle: Vehicle): Reaching {
  const at = ({ coupling }: VehicleEnd, overhang: number): Reaching => {
    const beyond = overhang - coupling.pivotInset + coupling.reach;
    const hold = Math.min(coupling.facingHeight, coupling.engagement);
    return { vehicle, beyond, hold, share: beyond / hold };
  };
  const ends = [at(vehicle.front, vehicle.frontOverhang), at(vehicle.rear, vehicle.rearOverhang)];
  return ends[0].share > ends[1].share ? ends[0] : ends[1];
}

/**
 * A vertical curve for a point: one longest vehicle for each per cent that the grade changes by (common practice of builders), or what there is
 * room for between the curves beside it; null where there is none.
 */
function curveFor(track: SceneTrack, point: number, change: number, longestMm: number): AdviceEdit | null {
  const points = profileHeights(track);
  const curves = curveLengthsMm(track);
  const { atMm } = points[point];
  const before = atMm - points[point - 1].atMm - (point > 1 ? curves[point - 1] / 2 : 0);
  const after = points[point + 1].atMm - atMm - (point < points.length - 2 ? curves[point + 1] / 2 : 0);
  const wanted = Math.ceil((longestMm * change * 100) / roundMm) * roundMm;
  const lengthMm = Math.min(wanted, Math.floor((2 * Math.min(before, after)) / roundMm) * roundMm);
  return lengthMm > 0 ? { kind: 'vertical-curve', point, lengthMm } : null;
}
