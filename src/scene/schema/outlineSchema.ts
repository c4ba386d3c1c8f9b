import { z } from 'zod';
import { bounds } from './bounds.ts';
import { quantity } from './fields.ts';

const coordinate = (about: string, example: number) => quantity(-bounds.lengthMm, bounds.lengthMm, about, example);

const corner = z
  .strictObject({ xMm: coordinate('East, mm.', 1200), yMm: coordinate('North, mm.', 640) })
  .meta({ description: 'One corner.', examples: [{ xMm: 1200, yMm: 640 }] });

/** Corners in plan, one after the other round something. */
export const outlineOf = (about: string, lengthMm = 60, widthMm = 30) =>
  z
    .array(corner)
    .min(3)
    .max(bounds.corners)
    .meta({
      description: about,
      examples: [
        [
          { xMm: 0, yMm: 0 },
          { xMm: lengthMm, yMm: 0 },
          { xMm: lengthMm, yMm: widthMm },
          { xMm: 0, yMm: widthMm },
        ],
      ],
    });

export type SceneCorner = z.infer<typeof corner>;
