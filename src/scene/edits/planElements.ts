import { arc, helix, straight, transition } from '../../core/track/index.ts';
import type { PlanElement } from '../../core/track/types.ts';
import { elementCurvatures, elementLengthMm } from '../places.ts';
import type { SceneElement, SceneTrack } from '../schema/trackSchema.ts';
import { bendOf } from './bendOf.ts';
import { tidy } from './tidy.ts';

/** One element of a track in SI. Throws RangeError when it cannot be. */
export function planElement(track: SceneTrack, index: number): PlanElement {
  const element = track.alignment[index];
  const length = elementLengthMm(element) / 1000;
  switch (element.kind) {
    case 'straight':
      return straight(length);
    case 'transition': {
      const [from, to] = elementCurvatures(track, index);
      return transition(length, from, to);
    }
    case 'arc': {
      const radius = element.radiusMm / 1000;
      return arc(radius, (element.turn === 'left' ? length : -length) / radius);
    }
    case 'helix':
      return helix(element.radiusMm / 1000, element.turn === 'left' ? element.turns : -element.turns);
  }
}

/** A plan element as the format writes it; a transition names both its ends. */
export function sceneElement({ kind, length, startCurvature, endCurvature }: PlanElement): SceneElement {
  const lengthMm = tidy(length * 1000);
  if (kind === 'straight') return { kind, lengthMm };
  if (kind === 'transition') return { kind, lengthMm, from: bendOf(startCurvature), to: bendOf(endCurvature) };
  const radius = 1 / Math.abs(startCurvature);
  const turn = startCurvature > 0 ? 'left' : 'right';
  return { kind: 'arc', radiusMm: tidy(radius * 1000), turn, angleDeg: tidy((length / radius) * (180 / Math.PI)) };
}
