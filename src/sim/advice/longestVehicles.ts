import { lengthOverBuffers } from '../../core/stock/index.ts';
import { cornerPlace, type Scene, setBend, setElement } from '../../scene/index.ts';
import type { CompiledScene } from '../types.ts';
import { collectionOf } from './collection.ts';
import { radiusForAll, throwsRound, tooLongFor } from './roundCurve.ts';
import type { AdviceEdit, LongestVehicleFact } from './types.ts';

/** Radii nearer than this are one, m. */
const sameRadius = 5e-4;

/** A curve of one radius. */
interface Bend {
  readonly radius: number;
  readonly from: number;
  readonly to: number;
  /** Its element in the file; null for what a turnout lays. */
  readonly element: number | null;
}

/**
 * For each track the longest vehicle that goes round its tightest curve; and for each radius that some of the collection does not go round,
 * which do not.
 */
export function longestVehicles({ scene, tracks }: CompiledScene): LongestVehicleFact[] {
  const collection = collectionOf(scene);
  const forAll = radiusForAll(collection);
  return scene.tracks.flatMap((file): LongestVehicleFact[] => {
    const track = tracks.get(file.id);
    if (track === undefined) return [];
    const laid = track.spec.elements.length - file.alignment.length;
    const bends: Bend[] = [];
    let from = 0;
    track.spec.elements.forEach(({ length, startCurvature, endCurvature }, k) => {
      const to = from + length;
      const radius = 1 / Math.abs(startCurvature);
      const known = bends.some((bend) => Math.abs(bend.radius - radius) < sameRadius);
      if (length > 0 && startCurvature !== 0 && startCurvature === endCurvature && !known) {
        bends.push({ radius, from, to, element: k < laid ? null : k - laid });
      }
      from = to;
    });
    bends.sort((a, b) => a.radius - b.radius);
    return bends
      .filter(({ radius }, k) => k === 0 || radius < forAll)
      .map(({ radius, from, to, element }): LongestVehicleFact => {
        const tooLong = radius < forAll ? tooLongFor(collection, radius) : [];
        const going = collection.vehicles
          .filter((_, stock) => !tooLong.some((one) => one.stock === stock))
          .sort((a, b) => lengthOverBuffers(b) - lengthOverBuffers(a))[0];
        return {
          kind: 'longest-vehicle',
          trackId: file.id,
          chainage: (from + to) / 2,
          from,
          to,
          weight: tooLong.length > 0 ? 'wrong' : 'note',
          value: going === undefined ? 0 : lengthOverBuffers(going),
          limit: lengthOverBuffers(collection.longest),
          edit: tooLong.length > 0 ? widened(scene, file.id, element, forAll) : null,
          radius,
          vehicle: going?.name ?? null,
          tooLong,
          radiusForAll: forAll,
          throws: going === undefined ? null : throwsRound(going, radius),
        };
      });
  });
}

function widened(scene: Scene, trackId: string, element: number | null, radius: number): AdviceEdit | null {
  if (element === null || !Number.isFinite(radius)) return null;
  const radiusMm = Math.round(radius * 1000);
  try {
    withRadius(scene, trackId, element, radiusMm);
    return { kind: 'radius', element, radiusMm };
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** The scene with another radius of a curve: between straights these give what it needs, else what follows moves. Throws RangeError in words. */
export function withRadius(scene: Scene, trackId: string, element: number, radiusMm: number): Scene {
  const file = scene.tracks.find(({ id }) => id === trackId);
  const corner = file?.alignment[element]?.kind === 'arc' ? cornerPlace(scene, file, element) : null;
  return corner === null
    ? setElement(scene, trackId, element, { radiusMm })
    : setBend(scene, trackId, element, { radiusMm });
}
