/** Over 300 lines for a reason: all that a file can say of one track is described in one place, in the order it is written. */

import { z } from 'zod';
import { bounds } from './bounds.ts';
import { either, idText, maybe, named, oneOf, positiveMm, quantity, whole, yesOrNo } from './fields.ts';

const radiusMm = positiveMm(bounds.lengthMm, 'Radius of the track centreline, mm.', 600);
const turn = oneOf(['left', 'right'], 'Which way the curve turns, seen the way chainage grows.');
const cantMm = maybe(
  quantity(0, 20, 'Outer rail above the inner one, at the middles of their heads, mm; needs the track\'s "cant".', 0.8),
);
const elementId = maybe(idText('A short name that heights and places can refer to.', 'helix'));

/** Curvature at one end of a transition: straight, or a curve of this radius and turn. */
const bend = z
  .union([
    z.literal('straight').meta({ description: 'No curvature.', examples: ['straight'] }),
    z.strictObject({ radiusMm, turn }),
  ])
  .meta({ description: '"straight", or a radius and a turn.', examples: [{ radiusMm: 600, turn: 'left' }] });

const straight = z.strictObject({
  kind: z.literal('straight'),
  id: elementId,
  lengthMm: positiveMm(bounds.lengthMm, 'Length, mm.', 1200),
});

const arc = either(
  z.strictObject({
    kind: z.literal('arc'),
    id: elementId,
    radiusMm,
    turn,
    cantMm,
    angleDeg: maybe(quantity(0.01, 360, 'Angle turned through, degrees.', 90)),
    lengthMm: maybe(positiveMm(bounds.lengthMm, 'Length along the centreline, mm.', 942.5)),
  }),
  ['angleDeg', 'lengthMm'],
);

const helix = z.strictObject({
  kind: z.literal('helix'),
  id: elementId,
  radiusMm,
  turn,
  cantMm,
  turns: quantity(0.01, 60, 'Number of turns.', 3.5),
});

const transition = z.strictObject({
  kind: z.literal('transition'),
  id: elementId,
  lengthMm: positiveMm(bounds.lengthMm, 'Length along the centreline, mm.', 360),
  from: maybe(bend),
  to: maybe(bend),
});

const element = z.discriminatedUnion('kind', [straight, arc, helix, transition]).meta({
  description: 'One stretch of the alignment. A transition without from or to takes the curvature of its neighbour.',
  examples: [{ kind: 'arc', radiusMm: 600, turn: 'left', angleDeg: 90 }],
});

/** A place named by an element (or by "track") instead of a number, so that it moves along when the plan changes. */
const relativePlace = either(
  z.strictObject({
    startOf: maybe(idText('Id of an element, or "track".', 'helix')),
    endOf: maybe(idText('Id of an element, or "track".', 'helix')),
    plusMm: maybe(quantity(-bounds.lengthMm, bounds.lengthMm, 'Further on by this much, mm.', 150)),
  }),
  ['startOf', 'endOf'],
);

const placeFields = {
  atMm: maybe(quantity(0, bounds.lengthMm, 'Chainage, mm.', 2400)),
  at: maybe(
    relativePlace.meta({
      description: 'Chainage relative to an element.',
      examples: [{ endOf: 'helix', plusMm: 150 }],
    }),
  ),
};
const placed = ['atMm', 'at'];

const profilePoint = either(
  z.strictObject({
    ...placeFields,
    heightMm: maybe(quantity(-10_000, 10_000, 'Height of the rail top, mm.', 80)),
    gradePercent: maybe(quantity(-50, 50, 'Grade from the point before to this one, per cent.', -2.4)),
    verticalCurveLengthMm: maybe(positiveMm(bounds.lengthMm, 'Plan length of the vertical curve here, mm.', 500)),
    verticalCurveRadiusMm: maybe(positiveMm(10_000_000, 'Radius of the vertical curve here, mm.', 20_000)),
  }),
  placed,
  ['heightMm', 'gradePercent'],
)
  .refine((value) => !('verticalCurveLengthMm' in value && 'verticalCurveRadiusMm' in value), {
    message: 'at most one of verticalCurveLengthMm and verticalCurveRadiusMm',
  })
  .meta({ description: 'Where two grades meet.', examples: [{ atMm: 2400, heightMm: 60 }] });

const offMm = quantity(-100, 100, 'Built higher (or, negative, lower) than planned by this much, mm.', 2.5);

const listedSupports = z
  .array(
    either(z.strictObject({ ...placeFields, offMm: maybe(offMm) }), placed).meta({
      description: 'One support.',
      examples: [{ atMm: 300, offMm: 0.5 }],
    }),
  )
  .min(2)
  .max(bounds.supports);

const evenSupports = z.strictObject({
  everyMm: quantity(20, 5_000, 'Distance from support to support, mm.', 300),
  firstMm: maybe(quantity(0, bounds.lengthMm, 'Chainage of support 1, mm; 0 when left out.', 150)),
  off: maybe(
    z
      .array(
        z.strictObject({
          support: whole(1, bounds.supports, 'Number of the support, counted from 1.', 14),
          byMm: offMm,
        }),
      )
      .max(bounds.supports),
  ),
});

const pose = z.strictObject({
  xMm: quantity(-bounds.lengthMm, bounds.lengthMm, 'East of the corner of the room, mm.', 600),
  yMm: quantity(-bounds.lengthMm, bounds.lengthMm, 'North of the corner of the room, mm.', 600),
  headingDeg: quantity(-360, 360, 'Direction of growing chainage, degrees counter-clockwise from east.', 0),
});

const turnout = z.strictObject({
  hand: oneOf(['left', 'right'], 'To which side it leads off, seen from its front.'),
  radiusMm,
  gaugeMm: quantity(3, 200, 'Track gauge, mm.', 16.5),
  crossing: maybe(
    z
      .strictObject({
        oneIn: quantity(1, 60, 'Crossing of 1 in so many.', 6),
        measured: maybe(oneOf(['right-angle', 'centre-line'], 'How the number is meant; right-angle when left out.')),
      })
      .meta({ description: 'A straight crossing; left out: curved.', examples: [{ oneIn: 6 }] }),
  ),
  frontMm: quantity(0, 5_000, 'From the front joint to where the curve begins, mm.', 20),
  heelMm: quantity(0, 5_000, 'Diverging track beyond the nose of the crossing, mm.', 40),
});

const branch = z.strictObject({
  branchOf: idText('Id of a track further up in the file.', 'down-line'),
  atMm: quantity(0, bounds.lengthMm, 'Chainage of the front joint on that track, mm.', 1500),
  towards: oneOf(['end', 'start'], 'Towards which end of that track the turnout leads.'),
  turnout,
});

const measuredHeights = z.strictObject({
  between: oneOf(['beam', 'straight'], 'A strip bent through the heights, or straight from one to the next.'),
  heights: z
    .array(
      either(
        z.strictObject({ ...placeFields, heightMm: quantity(-10_000, 10_000, 'Height found, mm.', 41.5) }),
        placed,
      ),
    )
    .min(2)
    .max(bounds.supports),
});

const rails = z.strictObject({
  offsets: maybe(
    z
      .array(
        either(
          z.strictObject({ ...placeFields, leftMm: quantity(-20, 20, 'Laid this much left of the plan, mm.', -1.5) }),
          placed,
        ),
      )
      .max(bounds.supports),
  ),
  joints: maybe(z.array(either(z.strictObject(placeFields), placed)).max(bounds.stripJoints)),
  kinks: maybe(
    z
      .array(
        either(
          z.strictObject({
            ...placeFields,
            turnDeg: quantity(-20, 20, 'Turn of the track at the joint, degrees, left positive.', 1.5),
            reachMm: quantity(
              0,
              2_000,
              'How far to either side the rails are off the plan by it, mm; 0 swings all that follows.',
              150,
            ),
          }),
          placed,
        ),
      )
      .max(bounds.stripJoints),
  ),
});

export const trackSchema = z.strictObject({
  id: idText('A short name that trials refer to.', 'down-line'),
  name: named('What people call the track.', 'Down line'),
  start: z.union([pose, branch]).meta({
    description: 'Where chainage 0 lies: a place in the room, or the front joint of a turnout in another track.',
    examples: [{ xMm: 600, yMm: 600, headingDeg: 0 }],
  }),
  alignment: z.array(element).min(1).max(bounds.elements),
  profile: z.array(profilePoint).min(1).max(bounds.profilePoints),
  supports: maybe(
    z.union([listedSupports, evenSupports]).meta({
      description: 'A list of supports, or supports at even distances.',
      examples: [{ everyMm: 300, off: [{ support: 14, byMm: 2.5 }] }],
    }),
  ),
  stripJoints: maybe(
    z
      .array(
        either(
          z.strictObject({
            ...placeFields,
            stepMm: maybe(quantity(-20, 20, 'The strip after the joint is higher by this much, mm.', 0.5)),
            bridgedMm: maybe(positiveMm(500, 'Length of rail over which a step is bridged, mm; 40 when left out.', 40)),
          }),
          placed,
        ),
      )
      .max(bounds.stripJoints)
      .meta({
        description: 'Butt joints of the trackbed strip that have no splice plate: the grade may break there.',
        examples: [[{ atMm: 2400 }]],
      }),
  ),
  strip: maybe(
    z
      .strictObject({
        material: oneOf(['birch-ply', 'softwood-ply', 'mdf'], 'What the strip is sawn from.'),
        thicknessMm: positiveMm(100, 'Thickness, mm.', 9),
        widthMm: positiveMm(1_000, 'Width, mm.', 60),
        trackGPerM: maybe(quantity(0, 20_000, 'Mass of track and underlay on it, g per metre.', 150)),
        settled: maybe(yesOrNo('Whether it has lain for years and crept.')),
      })
      .meta({
        description: 'The trackbed strip; with it the sag under its own weight counts.',
        examples: [{ material: 'birch-ply', thicknessMm: 9, widthMm: 60 }],
      }),
  ),
  measured: maybe(
    measuredHeights.meta({
      description: 'Heights as measured, in place of supports.',
      examples: [{ between: 'beam', heights: [{ atMm: 0, heightMm: 0 }] }],
    }),
  ),
  rails: maybe(
    rails.meta({
      description: 'How the rails as laid wander from the plan; the outer two offsets are 0.',
      examples: [{ kinks: [{ atMm: 1200, turnDeg: 1.5, reachMm: 150 }] }],
    }),
  ),
  crossLevels: maybe(
    z
      .array(
        either(
          z.strictObject({
            ...placeFields,
            offPercent: quantity(
              -20,
              20,
              'Slope across the rails as built less the planned one, per cent; positive: the right rail is too high, looking along the track.',
              1.2,
            ),
          }),
          placed,
        ),
      )
      .min(1)
      .max(bounds.supports)
      .meta({
        description:
          'How the deck as built leans beside its plan; linear between places, the same beyond the outer two.',
        examples: [[{ atMm: 1200, offPercent: 1.2 }]],
      }),
  ),
  cant: maybe(
    z
      .strictObject({
        gaugeMm: quantity(
          3,
          200,
          'Between the rails, mm; cant is counted between the middles of their heads, 1/16.5 of it further apart.',
          16.5,
        ),
        packed: oneOf(['outer', 'both'], 'Outer rail raised alone, or raised by half and the inner lowered by half.'),
        rampMm: maybe(positiveMm(5_000, 'Run-in where a canted curve has no transition, mm.', 300)),
      })
      .meta({
        description: 'Cant of the curves that have cantMm, run in over their transitions.',
        examples: [{ gaugeMm: 16.5, packed: 'outer' }],
      }),
  ),
});

export type SceneTrack = z.infer<typeof trackSchema>;
export type SceneElement = SceneTrack['alignment'][number];
export type SceneBend = NonNullable<Extract<SceneElement, { kind: 'transition' }>['from']>;
export type SceneProfilePoint = SceneTrack['profile'][number];
export type SceneSupports = NonNullable<SceneTrack['supports']>;
export type SceneBranch = Extract<SceneTrack['start'], { branchOf: string }>;
export type ScenePlace = Pick<NonNullable<SceneTrack['stripJoints']>[number], 'at' | 'atMm'>;
