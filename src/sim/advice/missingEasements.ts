import { easementLength, endThrowHandbook, lengthOverBuffers, radiusWithoutEasement } from '../../core/stock/index.ts';
import { elementCurvatures, elementLengthMm, elementStartsMm, type SceneTrack } from '../../scene/index.ts';
import type { CompiledScene } from '../types.ts';
import { collectionOf } from './collection.ts';
import { easeEdit } from './easeEdit.ts';
import { nearestNorm } from './nearestNorm.ts';
import type { MissingEasementFact } from './types.ts';

/** A curve that turns at least this far is a helix whatever the file calls it, rad. */
const wholeTurn = 2 * Math.PI * (1 - 1e-12);

/** One fact for each mouth of a helix where the curvature begins at once and the norm asks for an easement (NEM 113, 2016). */
export function missingEasements({ scene }: CompiledScene): MissingEasementFact[] {
  const norm = nearestNorm(scene.scale.gaugeMm);
  const { longest } = collectionOf(scene);
  const overhang = Math.max(longest.frontOverhang, longest.rearOverhang);
  return scene.tracks.flatMap((track) => {
    const starts = elementStartsMm(track);
    return joinsOfHelices(track).flatMap((index): MissingEasementFact[] => {
      const jump = Math.abs(elementCurvatures(track, index)[0] - elementCurvatures(track, index - 1)[1]);
      const radius = 1 / jump;
      if (!(radius <= radiusWithoutEasement(norm))) return [];
      const chainage = starts[index] / 1000;
      const limit = easementLength(norm, radius);
      return [
        {
          kind: 'missing-easement',
          trackId: track.id,
          chainage,
          from: chainage - limit / 2,
          to: chainage + limit / 2,
          weight: 'near',
          value: 0,
          limit,
          edit: easeEdit(scene, track, [index], Math.max(limit, lengthOverBuffers(longest)) * 1000),
          radius,
          aside: endThrowHandbook(radius, longest.pivotSpacing, overhang),
        },
      ];
    });
  });
}

/** The joins, each by the element behind it, where a helix meets something else than an easement. */
function joinsOfHelices({ alignment }: SceneTrack): readonly number[] {
  const coiled = alignment.map((element) => {
    if (element.kind === 'helix') return true;
    return element.kind === 'arc' && elementLengthMm(element) / element.radiusMm >= wholeTurn;
  });
  return alignment.flatMap((element, index) => {
    if (index === 0 || (!coiled[index] && !coiled[index - 1])) return [];
    return element.kind === 'transition' || alignment[index - 1].kind === 'transition' ? [] : [index];
  });
}
