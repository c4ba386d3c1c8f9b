import { z } from 'zod';
import { whole as count } from '../reportFields.ts';
import { outcomeShape, studyShape } from './sweepReport.ts';

/** The document that `gradewright loads --json` writes. */
export const loadsReportSchema = z
  .strictObject({
    report: z.literal('gradewright-loads'),
    ...studyShape,
    loads: z.array(
      z.strictObject({
        trial: z.string(),
        engine: z.string().meta({ description: 'Id under "stock".' }),
        kind: z.string().meta({ description: 'Id under "stock" of the vehicles hauled.' }),
        passes: count('Greatest number that passes, confirmed by a full run; -1: not even the engine alone.'),
        fails: count('The number above it that fails in full.')
          .nullable()
          .meta({ description: 'Null: none asked about fails.' }),
        massG: z.number().meta({ description: 'Mass of the vehicles that pass, g.' }),
        failing: z.strictObject(outcomeShape).nullable().meta({ description: 'What became of the first that fails.' }),
      }),
    ),
  })
  .meta({ title: 'The greatest load of every engine' });

export type LoadsReport = z.infer<typeof loadsReportSchema>;
