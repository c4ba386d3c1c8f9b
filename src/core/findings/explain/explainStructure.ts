import { nearestStructure } from '../../risks/index.ts';
import { vehicleCurve } from './curves.ts';
import type { Explainer } from './explainer.ts';

/** A structure stands too near: only moving it, or the track, helps, and how far the words say. */
export const explainStructure: Explainer = {
  causes(situation) {
    const { context, frame, worst } = situation;
    const vehicle = context.train.vehicles[worst.subject];
    const structures = context.surroundings.structures ?? [];
    const nearest = nearestStructure(structures, vehicle, frame.placements[worst.subject]);
    return [
      ...(nearest === null ? [] : [{ kind: 'structure', name: nearest.name } as const]),
      ...vehicleCurve(situation),
    ];
  },
  cures: () => [],
};
