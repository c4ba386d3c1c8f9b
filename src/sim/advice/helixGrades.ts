import { cos, hypot, sin } from '../../core/math/index.ts';
import { plannedHeight, trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import type { CompiledScene } from '../types.ts';
import { steepestPlanned } from './plannedGrades.ts';
import type { HelixGradesFact, HelixTrack } from './types.ts';

/** A curve of more than one turn, or what the file calls a helix. */
interface Coil {
  readonly trackId: string;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  readonly grade: number;
  readonly perTurn: number;
}

/** Centres nearer than this share of the smaller radius belong to one helix. */
const sameCentre = 0.1;

/** Grades nearer than this are alike, as a ratio: a hundredth of a per cent, what the best digital level shows. */
const sameGrade = 1e-4;

/** One fact for each track of a helix shared by several that is steeper than the gentlest of them. */
export function helixGrades({ tracks }: CompiledScene): HelixGradesFact[] {
  const coils = [...tracks].flatMap(([id, track]) => coilsOf(id, track));
  return coils.flatMap((coil): HelixGradesFact[] => {
    const sharing = coils.filter((other) => other === coil || beside(coil, other)).sort((a, b) => a.radius - b.radius);
    const gentlest = sharing.reduce((least, one) => (one.grade < least.grade ? one : least));
    if (sharing.length < 2 || coil.grade - gentlest.grade < sameGrade) return [];
    return [
      {
        kind: 'helix-grades',
        trackId: coil.trackId,
        chainage: (coil.from + coil.to) / 2,
        from: coil.from,
        to: coil.to,
        weight: 'note',
        value: coil.grade,
        limit: gentlest.grade,
        edit: null,
        tracks: sharing.map(({ trackId, radius, grade, perTurn }): HelixTrack => ({ trackId, radius, grade, perTurn })),
      },
    ];
  });
}

function coilsOf(trackId: string, track: Track): Coil[] {
  const { elements, startChainage } = track.plan;
  return elements.flatMap(({ length, startCurvature, endCurvature }, k): Coil[] => {
    const turned = Math.abs(startCurvature) * length;
    if (startCurvature === 0 || startCurvature !== endCurvature || turned < 2 * Math.PI * (1 - Number.EPSILON * 8)) {
      return [];
    }
    const [from, to] = [startChainage[k], startChainage[k] + length];
    const { x, y, heading } = trackPoint(track, from);
    const radius = 1 / startCurvature;
    const [low, high] = [plannedHeight(track, from), plannedHeight(track, to)];
    return [
      {
        trackId,
        x: x - radius * sin(heading),
        y: y + radius * cos(heading),
        radius: Math.abs(radius),
        from,
        to,
        low: Math.min(low, high),
        high: Math.max(low, high),
        grade: steepestPlanned(track, from, to),
        perTurn: (Math.abs(high - low) * 2 * Math.PI) / turned,
      },
    ];
  });
}

/** Whether two coils stand round one middle at common heights, on two tracks. */
function beside(one: Coil, other: Coil): boolean {
  const apart = hypot(one.x - other.x, one.y - other.y);
  return (
    one.trackId !== other.trackId &&
    apart < sameCentre * Math.min(one.radius, other.radius) &&
    one.low < other.high &&
    other.low < one.high
  );
}
