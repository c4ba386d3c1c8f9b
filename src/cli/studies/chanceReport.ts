import { z } from 'zod';
import { outcomeShape, studyShape } from './sweepReport.ts';

const share = (about: string) => z.number().min(0).max(1).meta({ description: about });

/** The document that `gradewright chance --json` writes. */
export const chanceReportSchema = z
  .strictObject({
    report: z.literal('gradewright-chance'),
    ...studyShape,
    seed: z.int().meta({ description: 'The same seed gives the same draws.' }),
    passing: z
      .strictObject({
        share: share('Share of the draws that pass.'),
        low: share('Least true share that fits with 95 % confidence.'),
        high: share('Greatest.'),
      })
      .nullable(),
    uncertain: z.array(
      z.strictObject({
        at: z.string(),
        from: z.number(),
        to: z.number(),
        influence: z.number().nullable().meta({
          description:
            'Rank correlation with the closest call: towards 1 it gets better as this grows, towards -1 worse; null: no difference.',
        }),
      }),
    ),
    draws: z.array(z.strictObject({ values: z.array(z.number()), ...outcomeShape })),
  })
  .meta({ title: 'With what probability trials pass when some numbers are uncertain' });

export type ChanceReport = z.infer<typeof chanceReportSchema>;
