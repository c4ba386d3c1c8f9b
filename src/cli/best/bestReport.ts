import { z } from 'zod';
import { number } from '../reportFields.ts';

const profile = z.strictObject({
  rulingPercent: number('Greatest grade with curves, in the mean over the train, per cent.'),
  steepestPercent: number('Steepest grade at a single place, per cent.'),
  verticalRadiusMm: z.number().nullable().meta({ description: 'Tightest vertical radius, mm; null: even grade.' }),
  heightMissedMm: number('By how much a height to be met is missed at most, mm.'),
  clearanceSpareMm: z.number().nullable().meta({ description: 'Headroom beyond what is asked, mm; null: none asked.' }),
  points: z.array(
    z.strictObject({ atMm: z.number(), heightMm: z.number(), verticalCurveLengthMm: z.exactOptional(z.number()) }),
  ),
});

/** The document that `gradewright best --json` writes. */
export const bestReportSchema = z
  .strictObject({
    report: z.literal('gradewright-best'),
    version: z.literal(1),
    scene: z.string(),
    track: z.string(),
    presentPercent: number('Ruling grade of the profile as it is, per cent.'),
    impossible: z.exactOptional(
      z.array(z.string()).meta({ description: 'Limits of which each alone, left out, would make a profile possible.' }),
    ),
    leastPercent: z.exactOptional(number('Least ruling grade with curves that begin and end at the steps, per cent.')),
    proven: z.exactOptional(z.boolean()),
    floorPercent: z.exactOptional(number('No profile at all has less, per cent.')),
    exact: z.exactOptional(profile),
    rounded: z.exactOptional(profile),
    misses: z.exactOptional(
      z
        .array(
          z.strictObject({
            limit: z.enum(['heights', 'clearances', 'steepest', 'vertical-radius']),
            atMm: number('Where, mm from the start of the track.'),
            asked: number(
              'What is asked: mm, or per cent for a grade; 0 for a height or a clearance, which says by how much it is off.',
            ),
            found: number('What it is.'),
          }),
        )
        .meta({ description: 'Limits that the rounded profile misses.' }),
    ),
    heightStepMm: z.exactOptional(number('The rounded heights are whole steps of this, mm.')),
    keepsLimits: z.exactOptional(z.boolean().meta({ description: 'Whether the rounded profile keeps every limit.' })),
  })
  .meta({ title: 'The profile with the least ruling grade' });

export type BestReport = z.infer<typeof bestReportSchema>;
