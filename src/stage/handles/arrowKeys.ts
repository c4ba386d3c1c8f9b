import { pictureAxes } from '../camera/look.ts';
import type { Shown } from '../view/shown.ts';

/** Where each arrow key points: to the right and up, 1, 0 or -1. */
export const arrows: Readonly<Record<string, readonly [right: number, up: number]>> = {
  ...{ ArrowLeft: [-1, 0], ArrowRight: [1, 0] },
  ...{ ArrowUp: [0, 1], ArrowDown: [0, -1] },
};

/** Right and up of the picture as ways over the ground, each of length 1. */
export function groundAxes({ look }: Pick<Shown, 'look'>): {
  right: readonly [number, number];
  up: readonly [number, number];
} {
  const { right } = pictureAxes(look);
  const size = Math.hypot(right[0], right[1]) || 1;
  const [x, y] = [right[0] / size, right[1] / size];
  // Upwards in the picture is away from the eye: square to the left of right.
  return { right: [x, y], up: [-y, x] };
}
