import { z } from 'zod';
import { number } from '../reportFields.ts';
import { outcomeShape, studyShape } from './sweepReport.ts';

const track = z.strictObject({
  track: z.string().meta({ description: 'Id of the track.' }),
  lengthMm: number('Along the centreline in plan, mm.'),
  riseMm: number('From the lowest to the highest rail top, mm.'),
  steepestPercent: number('Steepest grade as built, per cent.'),
  tightestRadiusMm: z.number().nullable().meta({ description: 'mm; null for a straight track.' }),
  sharpestVerticalRadiusMm: z.number().nullable().meta({ description: 'mm; null for an even grade.' }),
  acrossMm: number('Size of the plan from west to east, mm.'),
  alongMm: number('Size of the plan from south to north, mm.'),
});

/** The document that `gradewright compare --json` writes. */
export const compareReportSchema = z
  .strictObject({
    report: z.literal('gradewright-compare'),
    ...studyShape,
    railways: z.array(z.strictObject({ name: z.string(), ...outcomeShape, tracks: z.array(track) })).min(1),
  })
  .meta({ title: 'Variants of a railway side by side' });

export type CompareReport = z.infer<typeof compareReportSchema>;
export type TrackFields = z.infer<typeof track>;
