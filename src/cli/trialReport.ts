import { z } from 'zod';

// A word for every field, so that the schema in docs/reference explains itself.
const number = (about: string) => z.number().meta({ description: about });
const text = (about: string) => z.string().meta({ description: about });
const whole = (about: string) => z.int().meta({ description: about });
const chainageMm = number('Chainage of the scene, mm from the start of the track.');
const timeS = number('Time from the start of the trial, s.');
const verdict = z.enum(['fails', 'near', 'passes']).meta({ description: 'near: it passes with little left.' });
const risk = z.enum([
  'stall',
  'wheelspin',
  'buffer-lock',
  'coupler-swing',
  'override',
  'parting',
  'wheel-climb',
  'string-lining',
  'jack-knife',
  'axle-lift',
  'grounding',
  'headroom',
  'passing',
]);

/** Whom a number is about, counted from 1 at the leading end of the train. */
const subject = {
  joint: z.exactOptional(whole('Joint between vehicle n and n + 1, counted from 1 at the leading end.')),
  vehicle: z.exactOptional(whole('Vehicle, counted from 1 at the leading end.')),
};

/** An amount in the unit its risk has: exactly one of each group of three or four is there. */
const amounts = {
  marginMm: z.exactOptional(number('What is left before it fails, mm; negative when it fails.')),
  marginDeg: z.exactOptional(number('The same as an angle, degrees.')),
  marginShare: z.exactOptional(number('The same as a share of the limit; 1 is all of it.')),
  marginN: z.exactOptional(number('The same as a force, N.')),
  valueMm: z.exactOptional(number('What was met, mm.')),
  valueDeg: z.exactOptional(number('What was met, degrees.')),
  valueShare: z.exactOptional(number('What was met, as a share.')),
  valueN: z.exactOptional(number('What was met, N.')),
  limitMm: z.exactOptional(number('What is allowed, mm.')),
  limitDeg: z.exactOptional(number('What is allowed, degrees.')),
  limitShare: z.exactOptional(number('What is allowed, as a share.')),
  limitN: z.exactOptional(number('What is allowed, N.')),
  rangeMm: z.exactOptional(
    z.array(z.number()).length(2).meta({ description: 'Least and greatest margin over the tolerances, mm.' }),
  ),
};

const peak = z
  .strictObject({
    forceN: number('N; pulls are positive, pushes negative.'),
    joint: whole('From 1.'),
    chainageMm,
    timeS,
  })
  .nullable();

const trial = z.strictObject({
  id: z.string(),
  name: z.string(),
  track: text('Id of the track.'),
  train: text('Id of the train.'),
  vehicles: z.array(z.string()).meta({ description: 'Names, from the leading end.' }),
  propelled: z.boolean().meta({ description: 'The engine is behind what it moves.' }),
  verdict,
  outcome: z.enum(['arrived', 'stalled', 'parted', 'end-of-track', 'time-limit']),
  durationS: number('How long the trial took, s.'),
  events: z.array(
    z.strictObject({
      kind: z.string(),
      timeS,
      chainageMm,
      ...subject,
      forceN: z.exactOptional(number('Peak force of a run-in (negative), run-out or parting, N.')),
      speedMmPerS: z.exactOptional(number('Speed at a slip or grip, mm/s.')),
      text: z.string(),
    }),
  ),
  risks: z
    .array(z.strictObject({ risk, verdict, ...subject, chainageMm, timeS, ...amounts }))
    .meta({ description: 'The smallest margin of every risk that can arise, in a fixed order.' }),
  findings: z
    .array(
      z.strictObject({
        risk,
        verdict,
        ...subject,
        chainageMm,
        timeS,
        ...amounts,
        headline: z.string(),
        cause: z.string(),
        cures: z.array(z.string()),
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
      frameMs: z.number(),
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
  })
  .meta({ title: 'Result of trials' });

export type TrialReport = z.infer<typeof trialReportSchema>;
export type TrialEntry = TrialReport['trials'][number];
export type ReportVerdict = TrialEntry['verdict'];
