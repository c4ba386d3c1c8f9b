import { z } from 'zod';
import { mostReadings } from '../../core/survey/index.ts';
import { bounds } from './bounds.ts';
import { either, idText, maybe, named, oneOf, positiveMm, quantity, whole, yesOrNo } from './fields.ts';

/** Surveys of a scene: one a weekend for most of a year. */
const mostSurveys = 40;

/** Threads of ISO 261 that rods are sold in. */
export const rodThreads = ['M4', 'M5', 'M6', 'M8', 'M10', 'M12'] as const;

const support = whole(1, bounds.supports, 'Number of the support, counted from 1.', 6);
const supports = (about: string) =>
  z
    .array(support)
    .max(bounds.supports)
    .meta({ description: about, examples: [[1, 24]] });

const whereFields = {
  support: maybe(support),
  atMm: maybe(quantity(0, bounds.lengthMm, 'Chainage, mm.', 2400)),
};
const where = ['support', 'atMm'];

const instrument = maybe(idText('Id of an instrument of this survey; the usual one when left out.', 'level'));
const baseMm = positiveMm(5_000, 'Length it was taken over, mm.', 300);

const gradeReading = either(
  z.strictObject({
    kind: z.literal('grade'),
    ...whereFields,
    instrument,
    baseMm,
    anchor: maybe(oneOf(['centre', 'start'], 'Whether the place is midway between the feet or under the first.')),
    gradePercent: maybe(quantity(-100, 100, 'Grade for growing chainage, per cent.', 2.2)),
    gradeDeg: maybe(quantity(-45, 45, 'The same in degrees.', 1.26)),
    turned: maybe(yesOrNo('The level stood end for end: a second face that takes its zero error out.')),
  }),
  where,
  ['gradePercent', 'gradeDeg'],
);

const heightReading = either(
  z.strictObject({
    kind: z.literal('height'),
    ...whereFields,
    instrument,
    heightMm: quantity(-10_000, 10_000, 'Height of the rail top, mm.', 73.5),
    line: maybe(named('Laser line or water level that it is counted from; the scene’s datum when left out.', 'A')),
  }),
  where,
);

const riseReading = z.strictObject({
  kind: z.literal('rise'),
  fromSupport: support,
  toSupport: support,
  instrument,
  riseMm: quantity(-1_000, 1_000, 'How much higher the rail is at the second support, mm: a spacer, or a step.', 71),
  boardMm: maybe(quantity(0, 200, 'Thickness of a board between the two that was not read, mm.', 9)),
});

const gapReading = either(
  z.strictObject({
    kind: z.literal('gap'),
    ...whereFields,
    instrument,
    baseMm,
    gapMm: quantity(-100, 100, 'Gap under the middle of the straightedge, mm; on a hump negative.', 0.5),
  }),
  where,
);

const crossReading = either(
  z.strictObject({
    kind: z.literal('cross'),
    ...whereFields,
    instrument,
    crossPercent: maybe(
      quantity(-100, 100, 'Level across both rails: rise to the right, looking along the track, per cent.', 4.5),
    ),
    crossDeg: maybe(quantity(-45, 45, 'The same in degrees.', 2.6)),
  }),
  where,
  ['crossPercent', 'crossDeg'],
);

const reading = z
  .discriminatedUnion('kind', [gradeReading, heightReading, riseReading, gapReading, crossReading])
  .meta({
    description:
      'One reading: a grade, a height, a rise between two supports, a gap under a straightedge, or a level across the rails.',
    examples: [{ kind: 'grade', support: 6, baseMm: 300, gradePercent: 2.2 }],
  });

const instrumentSchema = z
  .strictObject({
    id: idText('A short name that readings refer to.', 'level'),
    reads: oneOf(['grade', 'height', 'rise', 'gap', 'cross'], 'What it reads.'),
    errorPercent: maybe(quantity(0, 20, 'Of a level: standard deviation of one reading, per cent of grade.', 0.05)),
    stepPercent: maybe(quantity(0, 20, 'Of a level: smallest step it shows, per cent of grade.', 0.1)),
    stepDeg: maybe(quantity(0, 10, 'Of a level: smallest step it shows, degrees.', 0.1)),
    zeroPercent: maybe(quantity(0, 20, 'Of a level: standard deviation of its zero error, per cent.', 0.17)),
    errorMm: maybe(quantity(0, 50, 'Of anything else: standard deviation of one reading, mm.', 0.3)),
    stepMm: maybe(quantity(0, 50, 'Of anything else: smallest step it is read to, mm.', 0.5)),
    zeroMm: maybe(quantity(0, 50, 'Of anything else: standard deviation of the error all readings share, mm.', 0)),
  })
  .meta({
    description: 'What readings are taken with.',
    examples: [{ id: 'level', reads: 'grade', stepPercent: 0.1 }],
  });

const mendSchema = z
  .strictObject({
    thread: maybe(oneOf(rodThreads, 'Threaded rod that the supports’ nuts run on.')),
    packingMm: maybe(
      z
        .array(positiveMm(50, 'Thickness of a piece, mm.', 0.5))
        .min(1)
        .max(12)
        .meta({ description: 'Pieces in the drawer, mm, instead of nuts.', examples: [[0.5, 1, 2]] }),
    ),
    mostPieces: maybe(whole(1, 20, 'Most pieces under one support.', 4)),
    locked: maybe(supports('Supports that stay as they are: ends, and those that cannot be reached.')),
    greatestGradePercent: maybe(quantity(-50, 50, 'Greatest grade anywhere, per cent.', 2.7)),
    leastGradePercent: maybe(quantity(-50, 50, 'Least grade anywhere, per cent.', 1.7)),
    greatestKinkPercent: maybe(quantity(0.01, 50, 'Greatest change of grade at a support, per cent.', 1)),
    leastRadiusMm: maybe(quantity(100, 10_000_000, 'Least vertical radius, mm.', 7300)),
    headroomMm: maybe(quantity(1, 1_000, 'Least clear height from rail top to the deck above, mm.', 59)),
    largestRiseMm: maybe(quantity(0, 100, 'Most that a support may be raised, mm.', 10)),
    largestDropMm: maybe(quantity(0, 100, 'Most that a support may be lowered, mm.', 10)),
  })
  .refine((value) => !('thread' in value && 'packingMm' in value), { message: 'at most one of thread and packingMm' })
  .meta({
    description:
      'With what the line can be put right, and what it has to keep. A limit left out is taken from the plan.',
    examples: [{ thread: 'M8', greatestGradePercent: 2.7 }],
  });

export const surveySchema = z
  .strictObject({
    id: idText('A short name.', 'first'),
    name: named('What people call it.', 'After the first turn was glued'),
    track: idText('Id of the track.', 'climb'),
    instruments: maybe(
      z
        .array(instrumentSchema)
        .max(20)
        .meta({
          description: 'Instruments, where they are not the usual ones.',
          examples: [[{ id: 'level', reads: 'grade' }]],
        }),
    ),
    readings: z
      .array(reading)
      .min(1)
      .max(mostReadings)
      .meta({ description: 'In any order and any mix.', examples: [[{ kind: 'height', support: 6, heightMm: 73.5 }]] }),
    fixed: maybe(supports('Supports known to stand as planned: the datum.')),
    settingMm: maybe(
      positiveMm(10, 'How closely supports are set when nothing goes wrong, standard deviation, mm.', 0.3),
    ),
    mend: maybe(mendSchema),
  })
  .meta({
    description: 'Readings taken along a track, and how it may be put right.',
    examples: [
      { id: 'first', name: 'First turn', track: 'climb', readings: [{ kind: 'height', support: 6, heightMm: 73.5 }] },
    ],
  });

export const surveysSchema = z
  .array(surveySchema)
  .max(mostSurveys)
  .meta({ description: 'Surveys of the tracks as built.', examples: [[]] });

export type SceneSurvey = z.infer<typeof surveySchema>;
export type SceneReading = SceneSurvey['readings'][number];
export type SceneInstrument = NonNullable<SceneSurvey['instruments']>[number];
