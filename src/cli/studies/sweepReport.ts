import { z } from 'zod';
import { marginFields, number, text } from '../reportFields.ts';
import { limitShape, measureShape } from './measureFields.ts';

/** What a probe came to, for every report of a study. */
export const outcomeShape = {
  passes: z.boolean().meta({ description: 'By the gauge of the study and its limits.' }),
  cannotRun: z.exactOptional(text('Why the railway cannot be laid or run with these values.')),
  closestRisk: z.exactOptional(text('The risk with the least margin in terms of its own plenty.')),
  closestTrial: z.exactOptional(text('Id of the trial it was in.')),
  ...marginFields('Its margin'),
  chainageMm: z.exactOptional(number('Where, mm from the start of the track.')),
  missed: z.exactOptional(z.array(z.string()).meta({ description: 'Words of the measures whose limits it misses.' })),
  ...measureShape,
};

/** What every report of a study says of how it was made. */
export const studyShape = {
  version: z.literal(1),
  scene: z.string(),
  trials: z.array(z.string()).meta({ description: 'Ids of the trials run.' }),
  gauge: text('"all", or the one risk that decides.'),
  limits: z.exactOptional(z.array(limitShape).meta({ description: 'What measures have to keep; they count too.' })),
  exactness: z.enum(['run', 'steady']).meta({ description: 'Runs in full, or the quasi-static pass alone.' }),
  whole: z
    .boolean()
    .meta({ description: 'False: stopped before its end; what stands here is what was done until then.' }),
};

const swept = z.strictObject({
  at: text('Address in the scene; the unit ends its name.'),
  from: z.number(),
  to: z.number(),
});

const place = z.array(z.number()).length(2);

/** The document that `gradewright sweep --json` writes. */
export const sweepReportSchema = z
  .strictObject({
    report: z.literal('gradewright-sweep'),
    ...studyShape,
    quantities: z.array(swept).min(1).max(2),
    points: z
      .array(z.strictObject({ values: z.array(z.number()).min(1).max(2), ...outcomeShape }))
      .meta({ description: 'Everything that was run, one value or two each.' }),
    edges: z.exactOptional(
      z
        .array(z.strictObject({ passes: z.number(), fails: z.number() }))
        .meta({ description: 'One quantity: where passing turns into failing, the nearest value run on either side.' }),
    ),
    outline: z.exactOptional(
      z.array(z.array(place).length(2)).meta({
        description:
          'Two quantities: the border of what passes, in pieces from place to place, what passes to the left.',
      }),
    ),
    brink: z.exactOptional(
      z.array(z.array(place).length(2)).meta({
        description:
          'Where what passes reaches the edge of the range, beyond which nothing was looked at: with the outline it goes all round.',
      }),
    ),
  })
  .meta({ title: 'A sweep of one or two numbers of a scene' });

export type SweepReport = z.infer<typeof sweepReportSchema>;
export type OutcomeFields = Omit<SweepReport['points'][number], 'values'>;
