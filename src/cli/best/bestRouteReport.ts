import { z } from 'zod';
import { number, text, whole } from '../reportFields.ts';
import { outcomeShape, studyShape } from '../studies/sweepReport.ts';

const setting = z.strictObject({ at: text('Address in the scene; the unit ends its name.'), to: z.number() });

const route = z.strictObject({
  settings: z.array(setting).meta({ description: 'The numbers chosen, then those worked out to keep the end.' }),
  rulingPercent: number('Greatest grade with curves, in the mean over the train, per cent.'),
  steepestPercent: number('Steepest grade at a single place, per cent.'),
  tightestRadiusMm: z.number().nullable().meta({ description: 'mm; null for a straight line.' }),
  acrossMm: number('What the decks of the tracks that change take from west to east, mm.'),
  alongMm: number('From south to north, mm.'),
  quickShare: z
    .number()
    .nullable()
    .meta({ description: 'Least margin of all trials, as a share of its own plenty, by the quasi-static pass.' }),
  fullShare: z.number().nullable().meta({ description: 'The same in full runs; null: not run.' }),
  quickPasses: z
    .boolean()
    .nullable()
    .meta({ description: 'Whether all is well by the quasi-static pass; null: not run.' }),
  agrees: z.boolean().nullable().meta({ description: 'Whether the full runs give the same verdict; null: not run.' }),
  outcome: z.strictObject(outcomeShape).nullable().meta({ description: 'Of the full runs; null: not run.' }),
  misses: z
    .array(z.string())
    .meta({ description: 'Limits missed; none in a route that is answered unless its rounding misses one.' }),
  conflicts: z
    .array(
      z.strictObject({
        limit: z.enum(['room', 'obstacle', 'boards']),
        name: z.exactOptional(text('What people call the obstacle.')),
        track: z.string(),
        chainageMm: number('Where on that track most of a deck is in the way, mm.'),
        byMm: number('By how much, mm.'),
      }),
    )
    .meta({ description: 'What of the room is in the way.' }),
  points: z
    .array(
      z.strictObject({ atMm: z.number(), heightMm: z.number(), verticalCurveLengthMm: z.exactOptional(z.number()) }),
    )
    .nullable()
    .meta({ description: 'Heights found for it; null: the scene’s own.' }),
});

/** The document that `gradewright best --vary … --json` writes. */
export const bestRouteReportSchema = z
  .strictObject({
    report: z.literal('gradewright-best-route'),
    ...studyShape,
    track: z.string(),
    aim: z.enum(['grade', 'margin', 'front']),
    numbers: z.array(
      z.strictObject({ at: z.string(), from: z.number(), to: z.number(), step: number('Step between its settings.') }),
    ),
    present: route
      .nullable()
      .meta({ description: 'The route as it is, by the same measure; null: it cannot be laid.' }),
    routes: z
      .array(route)
      .meta({ description: 'The best; of a front every route that no other beats. Empty: none keeps every limit.' }),
    certainty: z.enum(['every-setting', 'no-better-neighbour', 'best-found']).meta({
      description: 'Every setting was looked at; no setting around it, a step away, is better; or only the best found.',
    }),
    inFull: z.boolean().meta({
      description:
        'Every setting looked at that keeps the limits was run in full: what is said of margins is then said of full runs.',
    }),
    settings: whole('Settings in the ranges in all.'),
    looks: whole('How many were looked at.'),
    looked: z
      .array(
        z.strictObject({
          settings: z.array(setting),
          rulingPercent: z.number(),
          acrossMm: z.number(),
          alongMm: z.number(),
          quickShare: z.number().nullable(),
        }),
      )
      .meta({ description: 'Every setting looked at that keeps the limits, beaten or not, by ruling grade.' }),
    inTheWay: z
      .array(z.strictObject({ limit: z.string(), name: z.exactOptional(z.string()), times: z.int() }))
      .meta({ description: 'How often each limit stood in the way.' }),
  })
  .meta({ title: 'The best route in the ranges of some numbers' });

export type BestRouteReport = z.infer<typeof bestRouteReportSchema>;
export type RouteFields = z.infer<typeof route>;
