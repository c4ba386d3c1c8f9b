import { z } from 'zod';
import { bounds } from './bounds.ts';
import { either, idText, maybe, named, oneOf, positiveMm, quantity, whole, yesOrNo } from './fields.ts';

export const couplingKinds = ['hook-and-bar', 'loop', 'link', 'knuckle', 'rigid-bar', 'close', 'magnetic'] as const;

const secondStage = (way: string) =>
  maybe(
    z
      .strictObject({
        fromMm: quantity(0, 30, `Travel of the spring ${way} before it meets its stop, mm.`, 0.5),
        stiffnessNPerMm: quantity(0.01, 1_000, 'Stiffness from there on, N/mm; at least that before.', 20),
      })
      .meta({
        description: `Second, stiffer stage of the spring ${way}; one stage when left out.`,
        examples: [{ fromMm: 0.5, stiffnessNPerMm: 20 }],
      }),
  );

export const couplingSchema = z.strictObject({
  id: idText('A short name that vehicles refer to.', 'bar'),
  kind: oneOf(couplingKinds, 'Family of the coupling; what is left out below comes from its row of defaults.'),
  mount: maybe(oneOf(['pocket', 'body', 'bogie'], 'What carries the shank.')),
  pivotInsetMm: maybe(quantity(-60, 120, 'Pivot of the shank behind the body end (negative: beyond it), mm.', 8)),
  reachMm: maybe(positiveMm(120, 'From the pivot to the contact face, mm.', 16)),
  headHeightMm: maybe(positiveMm(200, 'Middle of the head above the rail, mm.', 9.93)),
  headHeightToleranceMm: maybe(quantity(0, 20, 'How far off that height may be either way, mm.', 0.5)),
  facingHeightMm: maybe(positiveMm(100, 'Height of the face that meets its mate, mm.', 2.8)),
  engagementMm: maybe(positiveMm(100, 'Vertical hold when pulled, mm.', 1.4)),
  sideHoldMm: maybe(
    positiveMm(100, 'Sideways hold when pulled, past the free swing, mm; without bound when left out.', 4),
  ),
  freeTiltDeg: maybe(
    quantity(0, 90, 'Tilt of the shank up or down before it takes the body with it, degrees; free when left out.', 3),
  ),
  faceTiltDeg: maybe(quantity(0, 60, 'Tilt of the contact face from vertical, degrees.', 5)),
  faceFriction: maybe(quantity(0, 2, 'Friction coefficient between the faces.', 0.25)),
  freeSwingDeg: maybe(quantity(0.1, 90, 'Swing to either side before the body takes it, degrees.', 15)),
  draftStiffnessNPerMm: maybe(quantity(0.01, 1_000, 'Stiffness of this half when pulled, N/mm.', 4)),
  buffStiffnessNPerMm: maybe(quantity(0.01, 1_000, 'Stiffness of this half when pushed, N/mm.', 6)),
  draftSecond: secondStage('when pulled'),
  buffSecond: secondStage('when pushed'),
  dampingNsPerM: maybe(quantity(0, 10_000, 'Damping of this half, N·s/m.', 8)),
  slackMm: maybe(quantity(0, 30, 'Free play of this half, mm.', 0.6)),
  releaseN: maybe(quantity(0.01, 1_000, 'Pull at which it lets go, N; never when left out, but magnets always do.', 6)),
  recouples: maybe(yesOrNo('Couples again when pushed against its mate; magnets do, the rest not, when left out.')),
  guide: maybe(
    z
      .strictObject({
        lengthenMm: maybe(positiveMm(30, 'Farthest a swing leads the head out of the body, mm.', 3)),
        fullSwingDeg: maybe(quantity(0.5, 90, 'Swing to either side at which it is there, degrees.', 20)),
      })
      .meta({
        description: 'A guided shank (close-coupling mechanism): curves lengthen it; none when left out.',
        examples: [{ lengthenMm: 3 }],
      }),
  ),
});

export const buffersSchema = z
  .strictObject({
    spacingMm: maybe(positiveMm(300, 'Between buffer centres, mm.', 20)),
    heightMm: maybe(positiveMm(200, 'Buffer centres above the rail, mm.', 12.2)),
    headWidthMm: maybe(positiveMm(60, 'Width of the heads, mm.', 5.2)),
    headHeightMm: maybe(positiveMm(60, 'Height of the heads, mm.', 4)),
    lengthMm: maybe(positiveMm(60, 'Faces beyond the body end, mm.', 6)),
  })
  .meta({ description: 'Side buffers at both ends; none when left out.', examples: [{ headWidthMm: 6 }] });

const driveSchema = z.strictObject({
  drivenMassG: maybe(quantity(0.1, 200_000, 'Mass that stands on driven wheels, g; all of it when left out.', 170)),
  adhesion: maybe(quantity(0.01, 2, 'Wheel-rail coefficient while the wheels grip.', 0.2)),
  slidingAdhesion: maybe(quantity(0.01, 2, 'Coefficient that fast-slipping wheels fall to.', 0.15)),
  slipScaleMmPerS: maybe(quantity(0.1, 10_000, 'Slip speed over which the coefficient falls, mm/s.', 50)),
  stallForceN: maybe(quantity(0.001, 2_000, 'Pull at the rail at standstill with the setting at 1, N.', 1.5)),
  freeSpeedMmPerS: maybe(quantity(1, 20_000, 'Speed with no load and the setting at 1, mm/s.', 600)),
  rotatingMassG: maybe(quantity(0, 500_000, 'Rotor, flywheel and gears as mass at the wheel rim, g.', 500)),
  worm: maybe(yesOrNo('The worm cannot be driven back by the train; by its lead angle, or else yes, when left out.')),
  wormLeadDeg: maybe(quantity(0.5, 60, 'Lead angle of the worm, degrees: below about 5 it cannot be driven back.', 4)),
  drawbarHeightMm: maybe(positiveMm(200, 'Drawbar above the rail, mm.', 9.9)),
  drivenWheelbaseMm: maybe(positiveMm(3_000, 'Wheelbase over the driven wheels, mm.', 60)),
  transferShare: maybe(quantity(0, 1, 'Share of the moved weight that leaves the driven wheels.', 0)),
  axles: maybe(
    z
      .array(
        z
          .strictObject({
            aheadMm: quantity(-1_500, 1_500, 'Ahead of the middle of the running points, mm.', 30),
            driven: maybe(yesOrNo('Driven; yes when left out.')),
            springNPerMm: maybe(
              quantity(0.001, 1_000, 'Spring of this axle, N/mm; an unsprung one when left out.', 0.5),
            ),
            adhesion: maybe(
              quantity(
                0.01,
                2,
                'Wheel-rail coefficient of this axle, as of one with tyres; that of the drive when left out.',
                0.4,
              ),
            ),
          })
          .meta({ description: 'One axle.', examples: [{ aheadMm: 30 }] }),
      )
      .min(2)
      .max(bounds.axles)
      .meta({
        description:
          'Axles under the frame, so that kinks and vertical curves shift weight between them; the driven weight is the same everywhere when left out.',
        examples: [[{ aheadMm: 30 }, { aheadMm: 0 }, { aheadMm: -45, driven: false, springNPerMm: 0.2 }]],
      }),
  ),
});

export const stockSchema = either(
  z.strictObject({
    id: idText('A short name that trains refer to.', 'long-coach'),
    name: named('What people call the vehicle.', 'Long coach'),
    kind: oneOf(['locomotive', 'tender', 'coach', 'wagon'], 'What it is.'),
    massG: maybe(quantity(0.1, 200_000, 'Mass, g; the standard mass for its length when left out.', 150)),
    lengthMm: maybe(positiveMm(3_000, 'Between body ends (headstocks), mm.', 246)),
    overBuffersMm: maybe(positiveMm(3_000, 'Over buffer faces, mm.', 258)),
    wheelbaseMm: maybe(positiveMm(1_000, 'Rigid frame: between the end axles, mm.', 40)),
    bogies: maybe(
      z
        .strictObject({
          centresMm: positiveMm(2_500, 'Between bogie pivots, mm.', 186),
          wheelbaseMm: positiveMm(600, 'Wheelbase of a bogie, mm.', 34),
          axles: maybe(whole(2, 3, 'Axles of a bogie, evenly apart; 2 when left out.', 3)),
        })
        .meta({ description: 'Bogies instead of a rigid frame.', examples: [{ centresMm: 186, wheelbaseMm: 34 }] }),
    ),
    axles: maybe(
      whole(
        2,
        bounds.axles,
        'Rigid frame: its axles, evenly apart; 3 under a locomotive or tender and 2 under the rest when left out.',
        4,
      ),
    ),
    frontOverhangMm: maybe(
      quantity(-200, 1_500, 'Front body end beyond the front running point, mm; half the rest when left out.', 30),
    ),
    widthMm: maybe(positiveMm(400, 'Body width, mm.', 35)),
    heightMm: maybe(positiveMm(800, 'Top of the body above the rail, mm.', 50)),
    undersideMm: maybe(quantity(0, 200, 'Lowest part above the rail, mm.', 4)),
    massHeightMm: maybe(positiveMm(400, 'Centre of mass above the rail, mm.', 22)),
    massAheadMm: maybe(quantity(-500, 500, 'Centre of mass ahead of the middle of the running points, mm.', 0)),
    wheelDiameterMm: maybe(positiveMm(300, 'Wheel diameter, mm.', 12.6)),
    wheels: maybe(
      z
        .strictObject({
          backToBackMm: maybe(positiveMm(200, 'Between the backs of the wheels, mm.', 14.5)),
          flangeThicknessMm: maybe(positiveMm(10, 'Thickness of a flange, mm.', 0.8)),
          flangeDepthMm: maybe(positiveMm(10, 'Depth of a flange below the tread, mm.', 0.9)),
          flangeAngleDeg: maybe(quantity(30, 89, 'Steepest slope of the flange where it bears, degrees.', 70)),
        })
        .meta({
          description: 'Wheels as measured; what is left out lies in the middle of the limits of NEM 310.',
          examples: [{ backToBackMm: 14.5 }],
        }),
    ),
    coupling: maybe(idText('Id of the coupling at both ends.', 'bar')),
    frontCoupling: maybe(idText('Id of the coupling at the front, where it differs.', 'bar')),
    rearCoupling: maybe(idText('Id of the coupling at the rear, where it differs.', 'drawbar')),
    headHeightOffMm: maybe(
      z
        .strictObject({
          front: maybe(quantity(-20, 20, 'Front head higher (negative: lower) than the coupling says, mm.', -0.6)),
          rear: maybe(quantity(-20, 20, 'Rear head higher (negative: lower) than the coupling says, mm.', -0.6)),
        })
        .meta({ description: 'Heads as fitted to every vehicle of this kind.', examples: [{ front: -0.6 }] }),
    ),
    buffers: maybe(buffersSchema),
    bufferEnds: maybe(oneOf(['both', 'front', 'rear'], 'Which ends have the buffers; both when left out.')),
    rollingPercent: maybe(quantity(0, 20, 'Drag on plain level track, per cent of weight.', 1.5)),
    rollingPercentPerMPerS: maybe(quantity(0, 20, 'More drag for each m/s, per cent of weight.', 0.5)),
    breakaway: maybe(quantity(1, 5, 'Drag from rest as a multiple of rolling drag.', 1.3)),
    drive: maybe(driveSchema.meta({ description: 'Motor and grip; a locomotive needs it.', examples: [{}] })),
  }),
  ['lengthMm', 'overBuffersMm'],
  ['wheelbaseMm', 'bogies'],
)
  .refine((value) => (value.kind === 'locomotive') === (value.drive !== undefined), {
    message: 'drive on a locomotive, and on nothing else',
  })
  .meta({
    description: 'One kind of vehicle.',
    examples: [
      {
        id: 'long-coach',
        name: 'Long coach',
        kind: 'coach',
        overBuffersMm: 258,
        bogies: { centresMm: 186, wheelbaseMm: 34 },
      },
    ],
  });

export type SceneCoupling = z.infer<typeof couplingSchema>;
export type SceneBuffers = z.infer<typeof buffersSchema>;
export type SceneVehicle = z.infer<typeof stockSchema>;
export type SceneDrive = NonNullable<SceneVehicle['drive']>;
