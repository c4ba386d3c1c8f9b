import { z } from 'zod';
import { roomSchema } from '../room/roomSchema.ts';
import { bounds } from './bounds.ts';
import { idText, maybe, named, oneOf, positiveMm, quantity } from './fields.ts';
import { linesideSchema } from './linesideSchema.ts';
import { outlineOf } from './outlineSchema.ts';
import { couplingSchema, stockSchema } from './stockSchema.ts';
import { surveysSchema } from './surveySchema.ts';
import { tourSchema } from './tourSchema.ts';
import { trackSchema } from './trackSchema.ts';
import { trainSchema, trialSchema } from './trialSchema.ts';
import { variantSchema } from './variantSchema.ts';

/** The version of the format that this code writes and reads. */
export const formatVersion = 1;

const structureSchema = z
  .strictObject({
    name: named('What people call it.', 'Pier of the bridge'),
    outline: outlineOf('Its corners in plan, one after the other round it; convex.'),
    bottomMm: quantity(-10_000, 10_000, 'Height of its underside, mm.', -20),
    topMm: quantity(-10_000, 10_000, 'Height of its top, mm.', 80),
  })
  .meta({ description: 'Something solid beside or over a track: a wall, a pier, a portal, a gantry.' });

export const sceneSchema = z
  .strictObject({
    gradewright: z.literal(formatVersion).meta({ description: 'Version of the format.', examples: [1] }),
    name: named('What people call the railway.', 'Wren Gill'),
    shows: z
      .string()
      .min(1)
      .max(bounds.sentence)
      .meta({ description: 'One sentence: what can be learnt here.', examples: ['A train that stalls in turn two.'] }),
    scale: z
      .strictObject({
        name: named('Name of the scale.', 'OO'),
        gaugeMm: quantity(3, 200, 'Track gauge, mm.', 16.5),
        ratio: maybe(quantity(1, 500, 'The original is this many times as large.', 76.2)),
      })
      .meta({ description: 'Scale and gauge.', examples: [{ name: 'OO', gaugeMm: 16.5 }] }),
    deck: z
      .strictObject({
        thicknessMm: positiveMm(200, 'Thickness of the deck, mm.', 9),
        underlayMm: quantity(0, 100, 'Thickness of the underlay, mm.', 3),
        trackMm: quantity(0, 100, 'Height of sleepers and rail, mm.', 5),
        widthMm: maybe(
          positiveMm(
            2_000,
            'Width of the deck, half of it on either side of a track, mm; 70 mm in H0 when left out, other gauges in proportion.',
            90,
          ),
        ),
        material: maybe(oneOf(['birch-ply', 'softwood-ply', 'mdf'], 'What the deck is made of.')),
      })
      .meta({
        description: 'What a track carries below its rail tops; it limits the headroom of the track under it.',
        examples: [{ thicknessMm: 9, underlayMm: 3, trackMm: 5 }],
      }),
    room: maybe(roomSchema),
    structures: maybe(z.array(structureSchema).max(bounds.structures)),
    lineside: maybe(z.array(linesideSchema).max(bounds.structures)),
    tracks: z.array(trackSchema).min(1).max(bounds.tracks),
    couplings: maybe(z.array(couplingSchema).max(bounds.couplings)),
    stock: z.array(stockSchema).min(1).max(bounds.stock),
    trains: z.array(trainSchema).min(1).max(bounds.trains),
    trials: z.array(trialSchema).min(1).max(bounds.trials),
    variants: maybe(z.array(variantSchema).max(bounds.variants)),
    surveys: maybe(surveysSchema),
    tour: maybe(tourSchema),
    opensWith: maybe(idText('Id of the trial that is shown when the scene is opened; the first when left out.', 'up')),
  })
  .meta({ title: 'A railway on grades', description: 'Tracks, trains and trials. Lengths in mm, masses in g.' });

/** A scene file, checked: exactly what the file says, with nothing filled in. Treat it as frozen. */
export type Scene = z.infer<typeof sceneSchema>;
export type SceneStructure = z.infer<typeof structureSchema>;
