import { elementLengthMm } from '../places.ts';
import type { SceneElement } from '../schema/trackSchema.ts';
import { tidy } from './tidy.ts';

/** Shortest stretch that an edit may leave of an element, mm. */
export const shortestMm = 1;

/** An element as long as this, mm, of the same radius. Its length is given the way it was: by length, angle or turns. */
export function sized(element: SceneElement, lengthMm: number): SceneElement {
  switch (element.kind) {
    case 'straight':
    case 'transition':
      return { ...element, lengthMm: tidy(lengthMm) };
    case 'arc':
      return element.lengthMm !== undefined
        ? { ...element, lengthMm: tidy(lengthMm) }
        : { ...element, angleDeg: tidy((lengthMm * 180) / (Math.PI * element.radiusMm)) };
    case 'helix':
      return { ...element, turns: tidy(lengthMm / (2 * Math.PI * element.radiusMm)) };
  }
}

/** The same element, shorter by this much (mm; longer when negative); null when nothing sound would be left. A transition is left alone. */
export function shortened(element: SceneElement, byMm: number): SceneElement | null {
  const leftMm = elementLengthMm(element) - byMm;
  return element.kind === 'transition' || leftMm < shortestMm ? null : sized(element, leftMm);
}
