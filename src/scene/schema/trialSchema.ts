import { z } from 'zod';
import { bounds } from './bounds.ts';
import { either, idText, maybe, named, oneOf, quantity, whole, yesOrNo } from './fields.ts';

const headOff = (end: string) =>
  maybe(quantity(-20, 20, `${end} head higher (negative: lower) than the vehicle says, mm.`, -0.5));

export const trainSchema = z.strictObject({
  id: idText('A short name that trials refer to.', 'evening-stopper'),
  name: named('What people call the train.', 'Evening stopper'),
  vehicles: z
    .array(
      z
        .strictObject({
          stock: idText('Id of a vehicle under "stock".', 'long-coach'),
          count: maybe(whole(1, bounds.vehicles, 'How many alike; 1 when left out.', 3)),
          turned: maybe(yesOrNo('Faces the other way: its front towards the last vehicle.')),
          massG: maybe(quantity(0.1, 200_000, 'Mass of this one, g.', 120)),
          headHeightOffMm: maybe(
            z
              .strictObject({ front: headOff('Front'), rear: headOff('Rear') })
              .meta({ description: 'Heads of this one off their height.', examples: [{ rear: -0.5 }] }),
          ),
        })
        .meta({ description: 'One vehicle, or several alike.', examples: [{ stock: 'long-coach', count: 3 }] }),
    )
    .min(1)
    .max(bounds.trainEntries)
    .meta({
      description: 'From the end called "first" to the end called "last".',
      examples: [[{ stock: 'long-coach' }]],
    }),
});

const orderSchema = either(
  z.strictObject({
    atS: maybe(quantity(0, bounds.timeLimitS, 'Obeyed at this time from the start, s.', 10)),
    atMm: maybe(quantity(0, bounds.lengthMm, 'Obeyed when the leading end is here, chainage in mm.', 2400)),
    setting: quantity(-1, 1, 'Speed setting from -1 (full back) to 1 (full ahead).', 0.5),
    holdMmPerS: maybe(
      quantity(
        0,
        20_000,
        'Speed that a load-compensated controller holds, mm/s; "setting" is then the most it may use.',
        200,
      ),
    ),
    rampS: maybe(quantity(0, 600, 'Turned to that setting, or speed, over this long, s; 1 when left out.', 2)),
    vehicle: maybe(whole(1, bounds.vehicles, 'Only for this vehicle, counted from 1 at the end called "first".', 1)),
  }),
  ['atS', 'atMm'],
).meta({ description: 'One order to the controller.', examples: [{ atS: 0, setting: 0.5, rampS: 2 }] });

export const forcesSchema = z.strictObject({
  curveFriction: maybe(quantity(0, 2, 'Sliding coefficient of wheels in a curve.', 0.3)),
  curveDrag: maybe(
    oneOf(['nominal', 'low', 'high'], 'Where in the band of curve drag the trial stands; nominal when left out.'),
  ),
  curveFactor: maybe(quantity(0, 10, 'Multiplies curve drag; 1 when left out.', 1)),
  curveGaugeFactor: maybe(quantity(0, 5, 'Share of the gauge in nominal curve drag.', 0.72)),
  curveWheelbaseFactor: maybe(quantity(0, 5, 'Share of the rigid wheelbase in nominal curve drag.', 0.47)),
  flangeFriction: maybe(quantity(0, 5, 'Flange friction times sliding ratio on sideways coupler load.', 0.2)),
});

const legSchema = z
  .strictObject({
    track: idText('Id of a track.', 'crossover'),
    towards: oneOf(['end', 'start'], 'Which end of that track the train makes for on it.'),
    fromMm: maybe(
      quantity(
        0,
        bounds.lengthMm,
        'Chainage on that track where the train comes onto it, mm; left out: at the turnout it comes through, else at the end it comes from.',
        1500,
      ),
    ),
    toMm: maybe(
      quantity(
        0,
        bounds.lengthMm,
        'Chainage on that track where the train leaves it, mm; left out: at the turnout it leaves through, else at the end it makes for.',
        1500,
      ),
    ),
  })
  .meta({ description: 'One track of a route.', examples: [{ track: 'crossover', towards: 'end' }] });

const trialFields = z.strictObject({
  id: idText('A short name for commands and links.', 'propelled-down'),
  name: named('What people call the trial.', 'Propelled down'),
  track: maybe(idText('Id of the track it runs on.', 'down-line')),
  towards: maybe(oneOf(['end', 'start'], 'Which end of the track the train makes for.')),
  route: maybe(
    z
      .array(legSchema)
      .min(1)
      .max(bounds.routeLegs)
      .meta({
        description:
          'Instead of track and towards: the tracks it runs over, one after another. All chainages of the trial then count along the route, from where it begins.',
        examples: [
          [
            { track: 'up', towards: 'end' },
            { track: 'crossover', towards: 'end' },
          ],
        ],
      }),
  ),
  train: idText('Id of a train.', 'evening-stopper'),
  leading: oneOf(['first', 'last'], 'Which end of the train goes ahead.'),
  follows: maybe(
    idText(
      'Id of a trial of the same train, with "stopS", that this one goes on from: it begins where and how the train of that one comes to its stand. In place of "startMm".',
      'up-past-the-turnout',
    ),
  ),
  startMm: maybe(
    quantity(0, bounds.lengthMm, 'Chainage of the leading end at the start, mm; just inside when left out.', 1500),
  ),
  finishMm: maybe(
    quantity(
      0,
      bounds.lengthMm,
      'Chainage of the leading end on arrival, mm; the end of the track, or route, if left out.',
      17_500,
    ),
  ),
  stopS: maybe(
    quantity(
      0,
      600,
      'On arrival every setting is turned to 0 over this long, s, and the trial is over when the train stands; left out: it is over on arrival.',
      1,
    ),
  ),
  timeLimitS: quantity(0.1, bounds.timeLimitS, 'The trial is over after this long, s.', 120),
  orders: z.array(orderSchema).min(1).max(bounds.orders),
  forces: maybe(
    forcesSchema.meta({ description: 'Constants that belong to no vehicle.', examples: [{ curveFactor: 1.2 }] }),
  ),
  passers: maybe(
    z
      .array(idText('Id of a vehicle under "stock".', 'long-coach'))
      .min(1)
      .max(bounds.passers)
      .meta({
        description: 'What may stand on the tracks beside; the kinds of vehicle of the train itself when left out.',
        examples: [['long-coach']],
      }),
  ),
  stepMs: maybe(
    quantity(
      0.05,
      10,
      'Time step of the solver, ms; 1, 0.5 or 0.25 when left out, by how quickly its vehicles swing on their couplings.',
      1,
    ),
  ),
  frameMs: maybe(
    quantity(
      1,
      1_000,
      'Time between recorded frames, ms; a whole multiple of the step. Very long runs keep fewer.',
      20,
    ),
  ),
});

export const trialSchema = either(trialFields, ['track', 'route'], ['towards', 'route']);

export type SceneTrain = z.infer<typeof trainSchema>;
export type SceneTrial = z.infer<typeof trialSchema>;
export type SceneLeg = z.infer<typeof legSchema>;
export type SceneOrder = z.infer<typeof orderSchema>;
