import { z } from 'zod';
import { type RiskId, risks } from '../../core/risks/index.ts';
import { bounds } from './bounds.ts';
import { idText, maybe, named, oneOf, positiveMm, quantity, whole } from './fields.ts';

/** Stops of a tour, and letters said at one: more would not be read off a wall. */
const mostStops = 60;
const mostWords = 400;

const placeIn = (about: string, xMm: number, yMm: number, heightMm: number) =>
  z
    .strictObject({
      xMm: quantity(-bounds.lengthMm, bounds.lengthMm, 'East, mm.', xMm),
      yMm: quantity(-bounds.lengthMm, bounds.lengthMm, 'North, mm.', yMm),
      heightMm: quantity(-10_000, bounds.lengthMm, 'Height, mm.', heightMm),
    })
    .meta({ description: about, examples: [{ xMm, yMm, heightMm }] });

const joint = whole(1, bounds.vehicles, 'Joint of the train, counted from 1; the last one of a train with fewer.', 6);

const viewSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('whole') }),
    z.strictObject({ kind: z.literal('down') }),
    z.strictObject({ kind: z.literal('eye') }),
    z.strictObject({ kind: z.literal('ride'), joint: maybe(joint) }),
    z.strictObject({
      kind: z.literal('follow'),
      joint: maybe(joint),
      fromDeg: maybe(quantity(-360, 360, 'Seen from this side, degrees from east, counter-clockwise.', -60)),
      aboveDeg: maybe(quantity(-90, 90, 'Seen from this high, degrees above level.', 24)),
      pictureMm: maybe(positiveMm(bounds.lengthMm, 'What the picture shows from top to bottom, mm.', 600)),
    }),
    z.strictObject({
      kind: z.literal('place'),
      eye: placeIn('Where the eye is.', 3900, -900, 900),
      target: placeIn('What it looks at: the middle of the picture.', 2900, 900, 260),
      fieldDeg: maybe(quantity(1, 120, 'Angle of view from top to bottom, degrees; 24 when left out.', 24)),
    }),
    z.strictObject({
      kind: z.literal('lens'),
      joint,
      from: maybe(oneOf(['side', 'above', 'along'], 'From where the lens looks; the side when left out.')),
    }),
  ])
  .meta({
    description:
      'What is looked at: the whole railway, straight down, at eye height, riding along, following, from a place, or a joint through the lens.',
    examples: [{ kind: 'whole' }, { kind: 'lens', joint: 6 }],
  });

const riskIds = risks.map(({ id }) => id) as [RiskId, ...RiskId[]];

const stopSchema = z
  .strictObject({
    id: idText('A short name.', 'the-joint'),
    title: named('What stands large under the picture.', 'The joint with no splice'),
    words: maybe(
      z
        .string()
        .min(1)
        .max(mostWords)
        .meta({
          description: 'What is said there: plain text.',
          examples: ['Watch the two coupler heads as they pass support 38.'],
        }),
    ),
    view: viewSchema,
    trial: maybe(idText('Id of the trial on show; the one the scene opens with when left out.', 'propelled-down')),
    atS: maybe(quantity(0, bounds.timeLimitS, 'Moment of the trial, s; 0 when left out.', 41.2)),
    tillS: maybe(quantity(0, bounds.timeLimitS, 'It plays from there till this moment, s; stands when left out.', 43)),
    risk: maybe(
      z.enum(riskIds).meta({
        description: 'The check whose verdict and margin are told; that of the whole trial when left out.',
        examples: ['override'],
      }),
    ),
  })
  .meta({
    description: 'One stop of the tour.',
    examples: [{ id: 'whole', title: 'The railway', view: { kind: 'whole' } }],
  });

export const tourSchema = z
  .array(stopSchema)
  .max(mostStops)
  .meta({ description: 'What is shown to others, one view after the other.', examples: [[]] });

export type SceneTourStop = z.infer<typeof stopSchema>;
export type SceneTourView = SceneTourStop['view'];
