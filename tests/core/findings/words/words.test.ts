// Over 300 lines for a reason: every sentence the product says stands here side by side, so that the wording can be read as a whole.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RunEventKind } from '../../../../src/core/dynamics/types.ts';
import {
  describeCure,
  describeEvent,
  describeFinding,
  eventTitle,
  findingUnit,
  type Naming,
  riskTitle,
  riskUnitLabel,
  type Show,
} from '../../../../src/core/findings/index.ts';
import type { Cause, Cure, Finding, Verdict } from '../../../../src/core/findings/types.ts';
import { risks } from '../../../../src/core/risks/index.ts';
import type { Governing } from '../../../../src/core/risks/types.ts';

const metric: Show = { lengthUnit: 'mm', gradeForm: 'percent' };
const oneIn: Show = { lengthUnit: 'mm', gradeForm: 'one-in' };
const inches: Show = { lengthUnit: 'in', gradeForm: 'percent' };
const naming: Naming = {
  vehicleNames: ['Brake van', 'Van', 'Van', 'Bogie van', 'Engine'],
  locomotives: [4],
  propelled: true,
};

/** Plain spaces instead of the thin ones before units, to read the expectations. */
const plain = (text: string | null): string => (text ?? '').replaceAll('\u2009', ' ');

const finding = (change: Partial<Finding>): Finding => ({
  risk: 'override',
  verdict: 'fails',
  time: 38,
  frame: 1900,
  chainage: 7.42,
  subject: 2,
  value: 0.0019,
  limit: 0.0015,
  margin: -0.0004,
  range: [-0.0007, -0.0001],
  parts: [],
  governing: 'facing',
  causes: [],
  cures: [],
  ...change,
});
const told = (change: Partial<Finding>, show: Show = metric) => describeFinding(finding(change), naming, show);

describe('riding up', () => {
  const causes: Cause[] = [
    { kind: 'support-off', support: 13, departure: 0.0025 },
    { kind: 'kink', before: 0.019, after: 0.029 },
    { kind: 'buff', force: 0.55, sudden: true },
  ];

  it('is told with place, support, grades and the blow', () => {
    const said = told({ causes });
    expect(plain(said.headline)).toBe('Joint 3 rides up at 7.42 m, at support 14.');
    expect(plain(said.cause)).toBe(
      'Heads of Van 3 and Bogie van stand 1.9 mm apart, 1.5 mm holds them. Support 14 is 2.5 mm high: the grade breaks from 1.9 to 2.9 % as a run-in of 0.55 N arrives.',
    );
    expect(plain(said.margin)).toBe('−0.4 mm');
    expect(plain(said.range)).toBe('−0.7 to −0.1 mm');
    expect(plain(said.value)).toBe('1.9 mm');
    expect(plain(said.limit)).toBe('1.5 mm');
    expect(said.title).toBe('Riding up');
    expect(plain(said.where)).toBe('joint 3, 7.42 m');
  });

  it('is told in inches and in 1 in N', () => {
    expect(plain(told({ causes }, oneIn).cause)).toContain('breaks from 1 in 52.6 to 1 in 34.5 as');
    const said = told({ causes }, inches);
    expect(plain(said.headline)).toBe('Joint 3 rides up at 24′ 4 1/8″, at support 14.');
    expect(plain(said.margin)).toBe('−0.016 in');
  });

  it('says which way a grade falls, and where it turns', () => {
    const kink = (before: number, after: number) =>
      plain(told({ causes: [{ kind: 'kink', before, after }] }).cause).split('. ')[1];
    expect(kink(-0.019, -0.029)).toBe('The grade breaks from 1.9 to 2.9 % down.');
    expect(kink(0.01, -0.005)).toBe('The grade breaks from 1.0 % up to 0.5 % down.');
  });

  it('bears a steady push on the heads, a floating joint as what it is', () => {
    expect(plain(told({ causes: [{ kind: 'buff', force: 0.2 }] }).cause)).toBe(
      'Heads of Van 3 and Bogie van stand 1.9 mm apart under a push of 0.20 N, 1.5 mm holds them.',
    );
    expect(plain(told({ causes: [{ kind: 'buff', force: 0 }] }).cause)).toContain(
      'while the joint floats and is about to close',
    );
    expect(plain(told({ causes: [{ kind: 'draft', force: 0 }] }).cause)).toContain(
      'while the joint floats and is about to stretch',
    );
  });

  it('names fitted heads and vertical curves', () => {
    const said = told({
      causes: [
        { kind: 'heads-differ', by: 0.001 },
        { kind: 'vertical-curve', radius: 5.2 },
      ],
    });
    expect(plain(said.cause)).toContain('The vertical curve has a radius of 5.2 m. As fitted they differ by 1.0 mm.');
  });

  it('of a lifted end speaks of forces', () => {
    const said = told({
      governing: 'lift',
      value: 0.34,
      limit: 0.3,
      range: null,
      causes: [{ kind: 'buff', force: 1.1 }],
    });
    expect(plain(said.headline)).toBe('Joint 3 is lifted at 7.42 m.');
    expect(plain(said.cause)).toBe(
      'Between Van 3 and Bogie van the leaning faces lift with 0.34 N under a push of 1.10 N, 0.30 N of weight holds the end down.',
    );
    expect(plain(said.value)).toBe('0.34 N');
    expect(said.range).toBeNull();
  });

  it('nearly and not at all', () => {
    expect(plain(told({ verdict: 'near' }).headline)).toBe('Joint 3 nearly rides up at 7.42 m.');
    expect(plain(told({ verdict: 'passes' }).headline)).toBe('No joint rides up; joint 3 comes nearest, at 7.42 m.');
  });
});

describe('the other risks', () => {
  it.each<[Partial<Finding>, string, string]>([
    [
      {
        risk: 'buffer-lock',
        governing: 'overlap',
        value: 0.0085,
        limit: 0.006,
        margin: -0.0025,
        causes: [
          { kind: 'reverse-curve', radius: 0.914 },
          { kind: 'buff', force: 0.3 },
        ],
      },
      'Buffers lock at joint 3 on the reverse curve at 7.42 m.',
      'Heads of Van 3 and Bogie van stand 8.5 mm aside in the reverse curve of 914 mm radius, past their overlap of 6.0 mm, and meet under a push of 0.30 N.',
    ],
    [
      {
        risk: 'buffer-lock',
        verdict: 'near',
        governing: 'gap',
        value: 0.0028,
        limit: 0.0032,
        margin: 0.0004,
        subject: 1,
        causes: [{ kind: 'buff', force: 0.3 }],
      },
      'Buffers nearly lock at joint 2 at 7.42 m.',
      'Faces of Van 2 and 3 stand 3.2 mm apart, 2.8 mm of it goes under a push of 0.30 N: while a gap is open heads cannot lock.',
    ],
    [
      { risk: 'buffer-lock', verdict: 'passes', governing: 'overlap', value: 0.001, limit: 0.006, margin: 0.005 },
      'Buffers keep their overlap; joint 3 has least, at 7.42 m.',
      'Heads of Van 3 and Bogie van stand 1.0 mm aside, they overlap up to 6.0 mm.',
    ],
    [
      { risk: 'buffer-lock', verdict: 'passes', governing: 'gap', value: 0, limit: 0.003, margin: 0.003 },
      'Buffers stay apart; joint 3 has least, at 7.42 m.',
      'Faces of Van 3 and Bogie van stand 3.0 mm apart: while a gap is open heads cannot lock.',
    ],
    [
      { risk: 'buffer-lock', governing: 'gap', value: 0.0031, limit: 0.003, margin: -0.0001 },
      'Buffers lock at joint 3 at 7.42 m.',
      'Faces of Van 3 and Bogie van stand 3.0 mm apart, 3.1 mm of it goes when they are pushed: they meet with their overlap lost.',
    ],
    [
      {
        risk: 'coupler-swing',
        governing: 'swing',
        value: 0.3,
        limit: 0.2618,
        margin: -0.0382,
        causes: [{ kind: 'curve-entry', radius: 0.438 }],
      },
      'Joint 3 swings past its stop at 7.42 m.',
      'Between Van 3 and Bogie van the coupling swings 17.2° where the curve of 438 mm radius begins, 15.0° is free, then the body takes the load sideways.',
    ],
    [
      { risk: 'coupler-swing', verdict: 'passes', governing: 'swing', value: 0.1, limit: 0.2618, margin: 0.1618 },
      'Couplings swing free; joint 3 swings furthest, at 7.42 m.',
      'Between Van 3 and Bogie van the coupling swings 5.7°, 15.0° is free.',
    ],
    [
      {
        risk: 'wheel-climb',
        governing: 'outer-rail',
        value: 0.34,
        limit: 0.3,
        causes: [
          { kind: 'curve', radius: 0.438 },
          { kind: 'buff', force: 0.9 },
        ],
      },
      'Van 3 climbs the outer rail at 7.42 m.',
      'A flange of Van 3 presses on the outer rail with 0.34 N in the curve of 438 mm radius under a push of 0.90 N, under its wheel’s load it climbs at 0.30 N.',
    ],
    [
      { risk: 'wheel-climb', verdict: 'near', governing: 'rail', value: 0.27, limit: 0.3, margin: 0.1 },
      'Van 3 nearly climbs the rail at 7.42 m.',
      'A flange of Van 3 presses on the rail with 0.27 N, under its wheel’s load it climbs at 0.30 N.',
    ],
    [
      { risk: 'wheel-climb', verdict: 'passes', governing: 'inner-rail', value: 0.1, limit: 0.3, margin: 0.67 },
      'No flange climbs; Van 3 comes nearest, at 7.42 m.',
      'A flange of Van 3 presses on the inner rail with 0.10 N, under its wheel’s load it climbs at 0.30 N.',
    ],
    [
      {
        risk: 'string-lining',
        governing: 'inner-rail',
        value: 1.1,
        limit: 1,
        causes: [
          { kind: 'curve', radius: 0.6 },
          { kind: 'draft', force: 2.2 },
        ],
      },
      'Van 3 string-lines to the inside at 7.42 m.',
      'Its couplings pull Van 3 sideways with 1.10 N in the curve of 600 mm radius under a pull of 2.20 N, its weight tips over the inner rail at 1.00 N.',
    ],
    [
      { risk: 'string-lining', verdict: 'near', governing: 'outer-rail', value: 0.9, limit: 1, margin: 0.1 },
      'Van 3 is nearly pulled over to the outside at 7.42 m.',
      'Its couplings pull Van 3 sideways with 0.90 N, its weight tips over the outer rail at 1.00 N.',
    ],
    [
      { risk: 'string-lining', verdict: 'passes', governing: 'inner-rail', value: 0.2, limit: 1, margin: 0.8 },
      'Nothing string-lines; Van 3 comes nearest, at 7.42 m.',
      'Its couplings pull Van 3 sideways with 0.20 N, its weight tips over the inner rail at 1.00 N.',
    ],
    [
      {
        risk: 'jack-knife',
        governing: 'outer-rail',
        value: 0.6,
        limit: 0.5,
        causes: [{ kind: 'buff', force: 2.2, sudden: true }],
      },
      'Van 3 jack-knifes to the outside at 7.42 m.',
      'One end of Van 3 is pressed sideways with 0.60 N as a run-in of 2.20 N arrives, its weight tips over the outer rail at 0.50 N.',
    ],
    [
      { risk: 'jack-knife', verdict: 'near', governing: 'rail', value: 0.45, limit: 0.5, margin: 0.1 },
      'Van 3 nearly jack-knifes at 7.42 m.',
      'One end of Van 3 is pressed sideways with 0.45 N, its weight tips over the rail at 0.50 N.',
    ],
    [
      { risk: 'jack-knife', verdict: 'passes', governing: 'outer-rail', value: 0.1, limit: 0.5, margin: 0.8 },
      'Nothing jack-knifes; Van 3 comes nearest, at 7.42 m.',
      'One end of Van 3 is pressed sideways with 0.10 N, its weight tips over the outer rail at 0.50 N.',
    ],
    [
      { risk: 'parting', governing: 'engagement', causes: [{ kind: 'draft', force: 0.4, sudden: true }] },
      'Joint 3 parts at 7.42 m.',
      'Heads of Van 3 and Bogie van stand 1.9 mm apart as a run-out of 0.40 N arrives, 1.5 mm holds them.',
    ],
    [
      {
        risk: 'parting',
        verdict: 'near',
        governing: 'release',
        value: 1.9,
        limit: 2,
        margin: 0.00007,
        causes: [
          { kind: 'draft', force: 1.9 },
          { kind: 'grade', grade: 0.024 },
        ],
      },
      'Joint 3 nearly parts at 7.42 m.',
      'Van 3 and Bogie van are pulled with 1.90 N on 2.4 % up, the coupling lets go at 2.00 N.',
    ],
    [
      { risk: 'parting', verdict: 'passes', governing: 'engagement', value: 0.0003, limit: 0.0015, margin: 0.0012 },
      'Every joint holds; joint 3 holds by least, at 7.42 m.',
      'Heads of Van 3 and Bogie van stand 0.3 mm apart, 1.5 mm holds them.',
    ],
    [
      {
        risk: 'stall',
        subject: 0,
        governing: 'motor',
        value: 0.36,
        limit: 0.3,
        margin: -0.1667,
        causes: [{ kind: 'motor-limit' }, { kind: 'grade', grade: 0.02 }, { kind: 'curve', radius: 0.6 }],
      },
      'The train stalls at 7.42 m.',
      'It needs 0.36 N on 2.0 % up, in the curve of 600 mm radius, at this setting the motor gives 0.30 N.',
    ],
    [
      { risk: 'stall', subject: 0, verdict: 'near', governing: 'grip', value: 0.36, limit: 0.38, margin: 0.06 },
      'The train nearly stalls at 7.42 m.',
      'It needs 0.36 N, the wheels grip 0.38 N.',
    ],
    [
      { risk: 'stall', subject: 0, verdict: 'passes', governing: 'grip', value: 0.2, limit: 0.38, margin: 0.9 },
      'There is pull enough; least is in hand at 7.42 m.',
      'It needs 0.20 N, the wheels grip 0.38 N.',
    ],
    [
      {
        risk: 'stall',
        subject: 0,
        governing: 'grip',
        value: 0.4,
        limit: 0.33,
        margin: -0.175,
        causes: [{ kind: 'grip-limit' }, { kind: 'curve', radius: 0.505 }],
        reach: { chainage: 14.4, needed: 0.55, available: 0.33, vehicles: 2, grade: 0.013 },
      },
      'The train stalls at 7.42 m.',
      'It needs 0.40 N in the curve of 505 mm radius, the wheels grip 0.33 N. Worse is to come: at 14.40 m it would need 0.55 N and has 0.33 N. At most 2 vehicles would get over the whole route with 2 % in hand, engines and tenders not counted; this train climbs at most 1.3 % in such a curve.',
    ],
    [
      {
        risk: 'stall',
        subject: 0,
        governing: 'motor',
        value: 0.4,
        limit: 0.3,
        margin: -0.25,
        reach: { chainage: 7.4, needed: 0.4, available: 0.3, vehicles: 1, grade: null },
      },
      'The train stalls at 7.42 m.',
      'It needs 0.40 N, at this setting the motor gives 0.30 N. At most 1 vehicle would get over the whole route with 2 % in hand, engines and tenders not counted; this train is too heavy even for the level on the straight.',
    ],
    [
      {
        risk: 'wheelspin',
        subject: 0,
        governing: 'slip',
        value: 0.62,
        limit: 0.33,
        margin: -0.468,
        causes: [{ kind: 'grip-limit' }, { kind: 'grade', grade: -0.02 }],
      },
      'The wheels of Engine spin at 7.42 m.',
      'To turn with the rail they would have to carry 0.62 N on 2.0 % down, their grip ends at 0.33 N.',
    ],
    [
      { risk: 'wheelspin', subject: 0, verdict: 'near', governing: 'grip', value: 0.38, limit: 0.4, margin: 0.0526 },
      'The wheels of Engine nearly spin at 7.42 m.',
      'They carry 0.38 N, their grip ends at 0.40 N.',
    ],
    [
      { risk: 'wheelspin', subject: 0, verdict: 'passes', governing: 'grip', value: 0.2, limit: 0.4, margin: 1 },
      'The wheels grip; Engine uses most of its grip at 7.42 m.',
      'They carry 0.20 N, their grip ends at 0.40 N.',
    ],
    [
      {
        risk: 'headroom',
        subject: 3,
        governing: 'deck',
        value: 0.057,
        limit: 0.0552,
        margin: -0.0018,
        causes: [{ kind: 'deck-above' }, { kind: 'support-off', support: 30, departure: -0.004 }],
      },
      'Bogie van strikes the deck above at 7.42 m.',
      'The deck above leaves 55.2 mm over the rail, Bogie van takes 57.0 mm. Support 31 is 4.0 mm low.',
    ],
    [
      { risk: 'headroom', subject: 3, verdict: 'near', governing: 'deck', value: 0.057, limit: 0.058, margin: 0.001 },
      'Bogie van barely clears the deck above at 7.42 m.',
      'The deck above leaves 58.0 mm over the rail, Bogie van takes 57.0 mm.',
    ],
    [
      { risk: 'headroom', subject: 1, verdict: 'passes', governing: 'deck', value: 0.045, limit: 0.063, margin: 0.018 },
      'There is headroom; Van 2 has least at 7.42 m.',
      'The deck above leaves 63.0 mm over the rail, Van 2 takes 45.0 mm.',
    ],
    [
      {
        risk: 'axle-lift',
        subject: 4,
        governing: 'end-axle',
        value: 0.0011,
        limit: 0.0009,
        margin: -0.0002,
        causes: [
          { kind: 'support-off', support: 37, departure: 0.0025 },
          { kind: 'kink', before: 0.035, after: 0.013 },
        ],
      },
      'Engine lifts an end axle clear of the rail at 7.42 m.',
      'A rigid wheelbase of Engine rocks over a middle axle and at one end its wheels stand 1.1 mm off the rail, flanges guide up to 0.9 mm. Support 38 is 2.5 mm high: the grade breaks from 3.5 to 1.3 %.',
    ],
    [
      { risk: 'axle-lift', verdict: 'near', subject: 4, governing: 'middle-axle', value: 0.0007, limit: 0.0009 },
      'Engine nearly lifts a middle axle clear of the rail at 7.42 m.',
      'A rigid wheelbase of Engine bridges the dip and under its middle its wheels stand 0.7 mm off the rail, flanges guide up to 0.9 mm.',
    ],
    [
      { risk: 'axle-lift', verdict: 'passes', subject: 4, governing: 'middle-axle', value: 0.00003, limit: 0.0009 },
      'Every wheel keeps to the rail; Engine lifts one most at 7.42 m.',
      'A rigid wheelbase of Engine bridges the dip and under its middle its wheels stand 0.03 mm off the rail, flanges guide up to 0.9 mm.',
    ],
    [
      {
        risk: 'grounding',
        subject: 3,
        governing: 'middle',
        value: 0.0034,
        limit: 0.003,
        margin: -0.0004,
        causes: [{ kind: 'kink', before: 0.03, after: -0.03 }],
      },
      'Bogie van grounds on the rail at 7.42 m.',
      'The rail rises 3.4 mm under the middle of Bogie van, its underside is 3.0 mm up. The grade breaks from 3.0 % up to 3.0 % down.',
    ],
    [
      {
        risk: 'grounding',
        subject: 3,
        verdict: 'near',
        governing: 'overhang',
        value: 0.0026,
        limit: 0.003,
        margin: 0.0004,
        causes: [{ kind: 'vertical-curve', radius: 2.1 }],
      },
      'Bogie van nearly grounds on the rail at 7.42 m.',
      'The rail rises 2.6 mm under an overhang of Bogie van, its underside is 3.0 mm up. The vertical curve has a radius of 2.1 m.',
    ],
    [
      { risk: 'grounding', subject: 3, verdict: 'passes', governing: 'middle', value: 0.0003, limit: 0.003 },
      'Nothing grounds; Bogie van comes lowest at 7.42 m.',
      'The rail rises 0.3 mm under the middle of Bogie van, its underside is 3.0 mm up.',
    ],
    [
      {
        risk: 'passing',
        subject: 3,
        governing: 'beside',
        value: 0.0262,
        limit: 0.0241,
        margin: -0.0021,
        causes: [{ kind: 'track-beside' }, { kind: 'curve', radius: 0.438 }],
      },
      'Bogie van fouls a train on the track beside at 7.42 m.',
      'Bogie van stands 24.1 mm from the middle of the track beside in the curve of 438 mm radius, a train there takes 26.2 mm to this side. The tracks want 2.1 mm more between them.',
    ],
    [
      {
        risk: 'passing',
        subject: 3,
        verdict: 'near',
        governing: 'beside',
        value: 0.0262,
        limit: 0.0272,
        margin: 0.001,
      },
      'Bogie van barely clears a train on the track beside at 7.42 m.',
      'Bogie van stands 27.2 mm from the middle of the track beside, a train there takes 26.2 mm to this side.',
    ],
    [
      {
        risk: 'passing',
        subject: 3,
        verdict: 'passes',
        governing: 'beside',
        value: 0.0175,
        limit: 0.0295,
        margin: 0.012,
      },
      'Trains pass each other; Bogie van comes nearest at 7.42 m.',
      'Bogie van stands 29.5 mm from the middle of the track beside, a train there takes 17.5 mm to this side.',
    ],
  ])('%o', (change, headline, cause) => {
    const said = told(change);
    expect(plain(said.headline)).toBe(headline);
    expect(plain(said.cause)).toBe(cause);
  });

  it('call engines engines when nobody says which they are', () => {
    const said = describeFinding(
      finding({ risk: 'wheelspin', subject: 0, governing: 'slip', value: 2 }),
      { vehicleNames: [] },
      metric,
    );
    expect(plain(said.headline)).toBe('The wheels of the engine spin at 7.42 m.');
  });
});

describe('cures', () => {
  it.each<[Cure, string]>([
    [{ kind: 'set-support', support: 13, by: -0.0025 }, 'Lower support 14 by 2.5 mm'],
    [{ kind: 'set-support', support: 0, by: 0.001 }, 'Raise support 1 by 1.0 mm'],
    [{ kind: 'splice-joint', chainage: 4.2 }, 'Splice the strip joint at 4.20 m'],
    [{ kind: 'vertical-curve', chainage: 7.4, length: 0.4 }, '400 mm vertical curve at 7.40 m'],
    [{ kind: 'easement', chainage: 3.92, length: 0.35 }, '350 mm easement at 3.92 m'],
    [{ kind: 'straight-between', chainage: 3.92, length: 0.26 }, '260 mm of straight at 3.92 m'],
    [{ kind: 'change-working' }, 'Pulled instead of propelled'],
    [{ kind: 'fewer-vehicles', by: 1 }, 'One vehicle fewer'],
    [{ kind: 'fewer-vehicles', by: 3 }, '3 vehicles fewer'],
    [{ kind: 'match-heads', joint: 5 }, 'Set both heads of joint 6 to one height'],
    [{ kind: 'add-engine-weight', by: 0.04 }, '40 g more on the driven wheels'],
    [{ kind: 'setting', to: 0.72 }, 'Controller at 72 %'],
    [{ kind: 'add-engine-weight', by: 0.12, enough: false }, '120 g more on the driven wheels (helps, not enough)'],
  ])('%o', (cure, words) => {
    expect(plain(describeCure(cure, naming))).toBe(words);
  });

  it('speak inches and ounces too', () => {
    expect(plain(describeCure({ kind: 'easement', chainage: 3.9624, length: 0.3556 }, naming, inches))).toBe(
      '14″ easement at 13′',
    );
    expect(plain(describeCure({ kind: 'add-engine-weight', by: 0.0283495 }, naming, inches))).toBe(
      '1.0 oz more on the driven wheels',
    );
  });

  it('put a change of working by how it is worked now', () => {
    expect(describeCure({ kind: 'change-working' }, { ...naming, propelled: false })).toBe(
      'Propelled instead of pulled',
    );
    expect(describeCure({ kind: 'change-working' }, { vehicleNames: [] })).toBe('Engine at the other end');
  });
});

describe('events', () => {
  it('are told with their place, the scene’s own where the train runs the other way', () => {
    const event = { kind: 'run-in', time: 5, chainage: 2, subject: 5, value: -0.55 } as const;
    expect(plain(describeEvent(event, naming))).toBe('Slack runs in at joint 6 with 0.55 N, 2.00 m.');
    expect(plain(describeEvent(event, { ...naming, path: { length: 9, reversed: true } }))).toBe(
      'Slack runs in at joint 6 with 0.55 N, 7.00 m.',
    );
    expect(plain(describeEvent({ ...event, kind: 'slip', subject: 4, value: 0.1 }, naming, metric))).toBe(
      'The wheels of Engine start to spin at 2.00 m.',
    );
  });

  it('all have a title and a sentence', () => {
    const kinds: RunEventKind[] = [
      'stall',
      'slip',
      'grip',
      'standstill',
      'moving',
      'run-in',
      'run-out',
      'parting',
      'arrived',
      'end-of-track',
      'time-limit',
    ];
    const sentences = kinds.map((kind) =>
      describeEvent({ kind, time: 1, chainage: 2, subject: 1, value: 0.3 }, naming),
    );
    expect(new Set(sentences).size).toBe(kinds.length);
    expect(new Set(kinds.map(eventTitle)).size).toBe(kinds.length);
    for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z].*2\.00.*\.$/);
  });
});

describe('any finding', () => {
  const cause: fc.Arbitrary<Cause> = fc.oneof(
    fc.record({
      kind: fc.constant('support-off' as const),
      support: fc.nat(60),
      departure: fc.double({ min: -0.01, max: 0.01, noNaN: true }),
    }),
    fc.record({
      kind: fc.constant('kink' as const),
      before: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
      after: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
    }),
    fc.record({
      kind: fc.constantFrom('buff' as const, 'draft' as const),
      force: fc.double({ min: 0, max: 5, noNaN: true }),
      sudden: fc.boolean(),
    }),
    fc.record({
      kind: fc.constantFrom(
        'reverse-curve' as const,
        'curve-entry' as const,
        'curve' as const,
        'vertical-curve' as const,
      ),
      radius: fc.double({ min: 0.2, max: 90, noNaN: true }),
    }),
    fc.record({ kind: fc.constant('grade' as const), grade: fc.double({ min: -0.1, max: 0.1, noNaN: true }) }),
    fc.record({ kind: fc.constant('heads-differ' as const), by: fc.double({ min: 0, max: 0.003, noNaN: true }) }),
    fc.constantFrom<Cause>(
      { kind: 'motor-limit' },
      { kind: 'grip-limit' },
      { kind: 'deck-above' },
      { kind: 'track-beside' },
    ),
  );

  it('is told in whole sentences and whole numbers', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...risks.map(({ id }) => id)),
        fc.constantFrom<Verdict>('fails', 'near', 'passes'),
        fc.constantFrom<Governing | null>(
          'facing',
          'lift',
          'engagement',
          'release',
          'overlap',
          'gap',
          'motor',
          'grip',
          'slip',
          'deck',
          'middle-axle',
          'end-axle',
          'middle',
          'overhang',
          'beside',
          'outer-rail',
          'inner-rail',
          'rail',
          null,
        ),
        fc.array(cause, { maxLength: 4 }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.constantFrom(metric, oneIn, inches),
        (risk, verdict, governing, causes, margin, show) => {
          const said = describeFinding(finding({ risk, verdict, governing, causes, margin }), naming, show);
          for (const text of [said.headline, said.cause]) {
            expect(text).toMatch(/^[A-Z0-9−].*\.$/);
            expect(text).not.toMatch(/NaN|undefined|null|–|\.\.|,,| {2}| ,|\s\./);
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it('has rows with a title and a unit', () => {
    expect(new Set(risks.map(({ id }) => riskTitle(id))).size).toBe(risks.length);
    expect(riskUnitLabel('override', metric)).toBe('mm');
    expect(riskUnitLabel('override', inches)).toBe('in');
    expect(riskUnitLabel('stall', metric)).toBe('%');
    expect(riskUnitLabel('coupler-swing', metric)).toBe('°');
    expect(findingUnit({ risk: 'stall', governing: 'motor' })).toBe('force');
    expect(findingUnit({ risk: 'parting', governing: 'release' })).toBe('force');
    expect(findingUnit({ risk: 'parting', governing: 'engagement' })).toBe('length');
  });
});

describe('a place along a route of several tracks', () => {
  // Three metres of Line, run towards its end, then Branch from 2.4 m back to 0.
  const legs = [
    { trackName: 'Line', from: 1, to: 4, start: 0 },
    { trackName: 'Branch', from: 2.4, to: 0, start: 3 },
  ];
  const say = (chainage: number) => {
    const { headline } = describeFinding(finding({ chainage }), { ...naming, legs }, metric);
    return plain(headline);
  };

  it('is told along the route and by the track that lies there', () => {
    expect(say(2)).toContain('2.00 m (3.00 m on Line)');
    expect(say(4.4)).toContain('4.40 m (1.00 m on Branch)');
  });

  it('is told along the track alone where there is only one', () => {
    expect(plain(told({ chainage: 2 }).headline)).not.toContain('(');
  });
});
