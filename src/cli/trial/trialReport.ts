import { z } from 'zod';
import { risks } from '../../core/risks/index.ts';
import { marginFields, number, text, whole } from '../reportFields.ts';

const chainageMm = number(
  'Chainage of the scene, mm from the start of the track; of a trial with a route, from where that begins.',
);
const onTrack = z.exactOptional(
  z
    .strictObject({ track: text('Id of the track.'), chainageMm: number('Chainage on it, mm.') })
    .meta({ description: 'Of a trial with a route: the same place on the track that lies there.' }),
);
const timeS = number('Time from the start of the trial, s.');
const verdict = z
  .enum(['fails', 'near', 'passes'])
  .meta({ description: 'Of the margin as measured; near: it passes with little left.' });
const undecided = z.exactOptional(
  z
    .literal(true)
    .meta({ description: 'Margins over the tolerances lie on both sides of zero: as built it may fail or pass.' }),
);
const risk = z.enum(risks.map(({ id }) => id));

/** Whom a number is about. Numbers are the scene's, whichever end leads. */
const subject = {
  joint: z.exactOptional(whole('Joint between vehicle n and n + 1, counted from 1 as the scene lists the train.')),
  vehicle: z.exactOptional(whole('Vehicle, counted from 1 as the scene lists the train.')),
  vehicles: z.exactOptional(
    z.array(z.string()).meta({ description: 'Names of the vehicle, or of the two of the joint.' }),
  ),
};

/** What an engine's train can do on its route, of a finding about pull. */
const reach = z.exactOptional(
  z
    .strictObject({
      vehicles: whole('The most vehicles besides engines and tenders that get over the whole route.'),
      gradePercent: z.number().nullable().meta({
        description: 'Steepest even grade this train climbs, in a curve like that of the place, %; null: none.',
      }),
      chainageMm: number('Where the whole route leaves least in hand at steady speed, mm.'),
      neededN: number('What the train needs there, N.'),
      availableN: number('What its engines can give there, N.'),
    })
    .meta({ description: 'By the quasi-static pass.' }),
);

const range = (unit: string) =>
  z.exactOptional(
    z
      .array(z.number())
      .length(2)
      .meta({ description: `Least and greatest margin over the tolerances, ${unit}.` }),
  );

/** An amount in the unit its risk has: exactly one of each group of three or four is there. */
const amounts = {
  ...marginFields('What is left before it fails'),
  valueMm: z.exactOptional(number('What was met, mm.')),
  valueDeg: z.exactOptional(number('What was met, degrees.')),
  valueShare: z.exactOptional(number('What was met, as a share.')),
  valueN: z.exactOptional(number('What was met, N.')),
  limitMm: z.exactOptional(number('What is allowed, mm.')),
  limitDeg: z.exactOptional(number('What is allowed, degrees.')),
  limitShare: z.exactOptional(number('What is allowed, as a share.')),
  limitN: z.exactOptional(number('What is allowed, N.')),
  rangeMm: range('mm'),
  rangeDeg: range('degrees'),
  rangeShare: range('as shares'),
};

const peak = z
  .strictObject({
    forceN: number('N; pulls are positive, pushes negative.'),
    joint: whole('Counted from 1 as the scene lists the train.'),
    vehicles: z.array(z.string()).meta({ description: 'Names of the two vehicles of the joint.' }),
    chainageMm,
    onTrack,
    timeS,
  })
  .nullable();

const trial = z.strictObject({
  id: z.string(),
  name: z.string(),
  track: text('Id of the track; of a route, the first.'),
  route: z.exactOptional(
    z
      .array(
        z.strictObject({
          track: text('Id of the track.'),
          fromMm: number('Chainage on it where the train comes onto it, mm.'),
          toMm: number('Chainage on it where the train leaves it, mm.'),
          startMm: number('Where this leg begins along the route, mm.'),
        }),
      )
      .meta({ description: 'The tracks it runs over, in order; left out: it runs on one.' }),
  ),
  joints: z.exactOptional(
    z
      .array(
        z.strictObject({
          chainageMm: number('Along the route, mm.'),
          gapMm: number('How far the next track begins from where this one ends, mm.'),
          turnDeg: number('By how much it turns there, degrees, left positive.'),
        }),
      )
      .meta({ description: 'Where two tracks of the route do not quite meet; left out: all do.' }),
  ),
  goesOnFrom: z.exactOptional(
    z
      .strictObject({
        trial: text('Id of that trial.'),
        chainageMm,
        stretched: whole('Joints that pull.'),
        bunched: whole('Joints that push.'),
        slack: whole('Joints that do neither.'),
      })
      .meta({
        description:
          'The trial whose train it takes over, with the place of its leading end and how its joints stand; left out: it begins by itself, every joint in the middle of its slack.',
      }),
  ),
  train: text('Id of the train.'),
  vehicles: z.array(z.string()).meta({ description: 'Names in the order of their numbers, which is the scene’s.' }),
  leading: z.enum(['first', 'last']).meta({ description: 'Which of them leads.' }),
  propelled: z.boolean().meta({ description: 'The engine is behind what it moves.' }),
  verdict,
  undecided,
  closest: z.exactOptional(text('Of a trial that passes: what came nearest to failing.')),
  outcome: z.enum(['arrived', 'stalled', 'parted', 'end-of-track', 'time-limit']),
  durationS: number('How long the trial took, s.'),
  events: z.array(
    z.strictObject({
      kind: z.string(),
      timeS,
      chainageMm,
      onTrack,
      ...subject,
      forceN: z.exactOptional(number('Peak force of a run-in (negative), run-out or parting, N.')),
      speedMmPerS: z.exactOptional(number('Speed at a slip or grip, mm/s.')),
      text: z.string(),
    }),
  ),
  risks: z
    .array(z.strictObject({ risk, verdict, undecided, ...subject, chainageMm, onTrack, timeS, ...amounts }))
    .meta({ description: 'The smallest margin of every risk that can arise, in a fixed order.' }),
  findings: z
    .array(
      z.strictObject({
        risk,
        verdict,
        undecided,
        ...subject,
        chainageMm,
        onTrack,
        timeS,
        ...amounts,
        headline: z.string(),
        cause: z.string(),
        cures: z.array(z.string()).meta({
          description: 'What can be tried, the most helpful first; not yet run. One that is not enough says so.',
        }),
        reach,
      }),
    )
    .meta({ description: 'In order of gravity.' }),
  greatestDraft: peak.meta({
    description: 'Greatest pull on any joint; null for a train without joints or never pulled.',
  }),
  greatestBuff: peak.meta({ description: 'Greatest push on any joint; null likewise.' }),
  speeds: z.strictObject({
    greatestMmPerS: number('Greatest speed of the leading vehicle, mm/s.'),
    meanMmPerS: number('Way of the leading vehicle over time, mm/s.'),
    endMmPerS: number('Speed at the end, mm/s.'),
  }),
  energy: z
    .strictObject({
      motorJ: number('Work of the motors.'),
      kineticJ: number('Gained in speed.'),
      potentialJ: number('Gained in height.'),
      storedJ: number('Gained in coupling springs.'),
      rollingJ: number('Lost in rolling.'),
      curveJ: number('Lost in curves.'),
      flangeJ: number('Lost at flanges under sideways coupler load.'),
      couplerJ: number('Lost in couplings.'),
      slipJ: number('Lost in slipping wheels.'),
      holdingJ: number('Taken by worms that the train pushes.'),
      residualJ: number('What the account fails to close by.'),
    })
    .meta({ description: 'Energy account, J.' }),
  model: z
    .strictObject({
      gravityMPerS2: z.number(),
      curveFriction: z.number(),
      curveFactor: z.number(),
      flangeFriction: z.number(),
      stepMs: z.number(),
      frameMs: number('Time between recorded frames that was asked for.'),
      keptFrameMs: number(
        'Time between the frames kept and judged: that asked for, or 2, 4, 8 … times as much where the run is so long that its frames would take over 64 MiB.',
      ),
    })
    .meta({ description: 'Constants the trial was run with.' }),
});

/** The document that `gradewright trial --json` writes. Numbers in full precision, units in the names. */
export const trialReportSchema = z
  .strictObject({
    report: z.literal('gradewright-trial'),
    version: z.literal(1),
    scene: z.string(),
    verdict: verdict.meta({ description: 'The worst of all trials.' }),
    trials: z.array(trial),
    notReached: z.exactOptional(
      z.array(z.strictObject({ id: z.string(), name: z.string(), reason: z.string() })).meta({
        description:
          'Trials that go on from one whose train did not come to its stand where it should; they stand in no other list. Left out: none.',
      }),
    ),
  })
  .meta({ title: 'Result of trials' });

export type TrialReport = z.infer<typeof trialReportSchema>;
export type TrialEntry = TrialReport['trials'][number];
export type ReportVerdict = TrialEntry['verdict'];
