import type { couplingKinds } from './schema/stockSchema.ts';

/**
 * The one table of default constants. Lengths in mm for 16.5 mm gauge; other gauges take them in proportion to their
 * gauge. `low` and `high` span what is plausible; uncertainty runs draw from there. A row whose source says
 * "assumption" rests on no published measurement and should be measured at home where it matters.
 */
export interface DefaultRow {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

const row = (value: number, low: number, high: number, source: string): DefaultRow => ({ value, low, high, source });

/** The gauge that the lengths of this table are for, mm. */
export const tableGaugeMm = 16.5;

export const rollingDefaults = {
  percent: row(
    1.5,
    0.8,
    2.2,
    'Roll-off slopes of HO cars: 0.8 % good, 1.5-2 % after tuning, 2.2 % worst (club reports)',
  ),
  percentPerMPerS: row(0.5, 0, 2, 'assumption: bearing grease and flutter; no published measurement found'),
  breakaway: row(1.3, 1, 1.6, 'assumption: a nudge is often needed at the roll-off slope'),
} as const;

export const vehicleDefaults = {
  widthMm: row(35, 30, 38, 'assumption: body about 2.7 m wide at 1:76 or 3.0 m at 1:87'),
  heightMm: row(50, 40, 60, 'assumption: within NEM 102 (2017), clear height 59 mm in H0'),
  undersideMm: row(3, 1, 8, 'assumption: brake gear and gear covers 0.2 m up at 1:76; 0.1 to 0.6 m'),
  massHeightMm: row(22, 15, 28, 'common practice, no source: weight carried just above the floor'),
  wheelDiameterMm: row(12.6, 10, 14, 'assumption: about 0.95 m wheels at 1:76'),
} as const;

/** Least mass of a vehicle for its length over buffers, g/mm, by gauge in mm: NEM 302 (2015). */
export const massPerMm: readonly (readonly [gaugeMm: number, massPerMm: number])[] = [
  [6.5, 0.12],
  [9, 0.17],
  [12, 0.25],
  [16.5, 0.4],
  [22.5, 0.6],
  [32, 1.0],
  [45, 2.0],
  [64, 4.0],
];

export const bufferDefaults = {
  spacingMm: row(20, 19.8, 20.2, 'NEM 303 (2015), H0: 20.0 +- 0.2 mm'),
  heightMm: row(12.2, 11.7, 12.7, 'NEM 303 (2015), H0: 12.2 +- 0.5 mm'),
  headWidthMm: row(5.2, 3.9, 7.5, 'NEM 303 (2015), heads 340 to 650 mm wide: 3.9-7.5 mm in H0'),
  headHeightMm: row(4, 3.9, 5.2, 'NEM 303 (2015), heads 340 to 450 mm high'),
  lengthMm: row(6, 4, 8, 'assumption: buffers of about 0.5 m'),
} as const;

export const driveDefaults = {
  adhesion: row(0.2, 0.15, 0.3, 'Tilting plane: 0.203 and 0.207 on 0 gauge tin rail, 0.295 in H0; rule of trade 0.25'),
  slidingShare: row(0.75, 0.6, 0.95, 'assumption: share of adhesion left when the wheels slip fast'),
  slipScaleMmPerS: row(50, 10, 200, 'assumption: no law of slip was found at model scale; a tenth of usual speeds'),
  stallForceShare: row(1.8, 1.1, 3, 'assumption: pull of the motor at standstill as a multiple of the grip'),
  freeSpeedMmPerS: row(600, 300, 900, 'assumption: about 160 km/h at 1:76 with the controller full up'),
  rotatingMassG: row(
    500,
    200,
    2000,
    'Rotor 2.7e-7 kg m2 (15 g, 12 mm) at 20:1 on 20 mm wheels is 1.1 kg; small ones less',
  ),
  drawbarHeightMm: row(9.93, 8, 11, 'Height of the coupling'),
  drivenWheelbaseMm: row(60, 25, 150, 'assumption: a locomotive of three coupled axles'),
  wormFriction: row(0.08, 0.06, 0.1, 'Worm on gear, greased: 0.06 to 0.10 (unseel.com; piclist 2006)'),
  axleStiffnessNPerMm: row(
    20,
    2,
    100,
    'assumption: an unsprung axle in a moulded or cast frame; frame, axle ends and track yield',
  ),
  transferShare: row(0, 0, 1, 'Every wheel drives, unless said otherwise'),
} as const;

export interface CouplingDefaults {
  readonly mount: 'pocket' | 'body' | 'bogie';
  readonly pivotInsetMm: DefaultRow;
  readonly reachMm: DefaultRow;
  readonly headHeightMm: DefaultRow;
  readonly headHeightToleranceMm: DefaultRow;
  readonly facingHeightMm: DefaultRow;
  readonly engagementMm: DefaultRow;
  /** Absent: it tilts as far as it is asked to. */
  readonly freeTiltDeg?: DefaultRow;
  readonly faceTiltDeg: DefaultRow;
  readonly faceFriction: DefaultRow;
  readonly freeSwingDeg: DefaultRow;
  readonly draftStiffnessNPerMm: DefaultRow;
  readonly buffStiffnessNPerMm: DefaultRow;
  readonly dampingNsPerM: DefaultRow;
  readonly slackMm: DefaultRow;
  /** Absent: it never lets go of itself. */
  readonly releaseN?: DefaultRow;
  /** Absent: what has let go stays parted. */
  readonly recouples?: true;
}

/** A close-coupling mechanism in the body, whatever head it carries. */
export const guideDefaults = {
  lengthenMm: row(3, 1, 6, 'assumption: half of what faces 20 mm apart close by on 360 mm radius, and a little more'),
  fullSwingDeg: row(20, 10, 30, 'assumption: swing at the end of the slot'),
} as const;

const friction = row(0.25, 0.15, 0.4, 'assumption: plastic or zinc on the same, dry');
const damping = row(8, 2, 20, 'assumption: a fifth of critical between two vehicles of 150 g on 2 N/mm');
const pocketInset = row(
  8.5,
  7,
  10,
  'NEM 362: pocket 7.1 mm deep, its face 7.5 mm behind the buffer face, buffers of 6 mm',
);

/** One row of numbers for every family of coupling. */
export const couplingDefaults: Readonly<Record<(typeof couplingKinds)[number], CouplingDefaults>> = {
  'hook-and-bar': {
    mount: 'pocket',
    pivotInsetMm: pocketInset,
    reachMm: row(18.5, 16.5, 20.5, 'assumption: bar 4 mm beyond the buffer face, so that buffers part on sharp curves'),
    headHeightMm: row(9, 8.5, 9.5, 'Top of the bar about 10 mm above the rail; bar 2 mm deep assumed'),
    headHeightToleranceMm: row(0.5, 0.2, 1, 'Makers do not agree on the height; amount is an assumption'),
    facingHeightMm: row(2.5, 2, 3.5, 'assumption: bar and the face behind it'),
    engagementMm: row(3, 2, 4, 'assumption: how far the hook reaches below the top of the bar'),
    faceTiltDeg: row(5, 0, 20, 'assumption: bar nearly upright'),
    faceFriction: friction,
    freeSwingDeg: row(
      30,
      20,
      40,
      'assumption: sold for 438 mm curves, which 258 mm coaches enter at 26 degrees; 4 more for play and S bends',
    ),
    draftStiffnessNPerMm: row(3, 1, 8, 'assumption: plastic shank'),
    buffStiffnessNPerMm: row(4, 1.5, 10, 'assumption: plastic shank'),
    dampingNsPerM: damping,
    slackMm: row(0.8, 0.3, 1.5, 'assumption: loose hook'),
  },
  loop: {
    mount: 'pocket',
    pivotInsetMm: pocketInset,
    reachMm: row(17, 15.5, 18, 'assumption from NEM 360: contact 8.5 +- 0.5 mm ahead of its mounting'),
    headHeightMm: row(8.5, 8, 9, 'NEM 363 (2018): height at least 8.5 mm'),
    headHeightToleranceMm: row(0.5, 0.2, 0.8, 'NEM 360 (1994): +- 0.5 mm'),
    facingHeightMm: row(3, 2.5, 4, 'assumption: the bar that the loop hangs from and the face behind it'),
    engagementMm: row(2.5, 1.5, 3.5, 'assumption: the hook lets the loop rise by most of the depth of the bar, 3 mm'),
    faceTiltDeg: row(5, 0, 20, 'assumption: as the hook and bar'),
    faceFriction: friction,
    freeSwingDeg: row(
      25,
      20,
      35,
      'assumption: sold for the least radius of NEM 111, 363 mm, where short coaches ask for that much',
    ),
    draftStiffnessNPerMm: row(3, 1, 8, 'assumption: plastic shank'),
    buffStiffnessNPerMm: row(4, 1.5, 10, 'assumption: plastic shank'),
    dampingNsPerM: damping,
    slackMm: row(
      0.7,
      0.3,
      1.2,
      'assumption: NEM 360 (1994) lets each contact lie 0.5 mm either way, and the loop swings',
    ),
  },
  link: {
    mount: 'body',
    pivotInsetMm: row(0, -1, 3, 'assumption: hook in the headstock'),
    reachMm: row(7, 6.5, 7.5, 'half of the slack more than buffers of 6 mm, so that these touch when it is closed'),
    headHeightMm: row(12.2, 11.7, 12.7, 'NEM 303 (2015): drawhook at buffer height'),
    headHeightToleranceMm: row(0.5, 0.2, 0.8, 'NEM 303 (2015): +- 0.5 mm'),
    facingHeightMm: row(4, 3.9, 5.2, 'Pushes through the buffer heads: their height, NEM 303 (2015)'),
    engagementMm: row(4, 2, 6, 'assumption: a link climbs out of a hook only when slack'),
    faceTiltDeg: row(0, 0, 5, 'Buffer heads stand upright'),
    faceFriction: friction,
    freeSwingDeg: row(80, 60, 90, 'assumption: a chain turns in its hook until it meets the headstock'),
    draftStiffnessNPerMm: row(10, 3, 30, 'assumption: wire links'),
    buffStiffnessNPerMm: row(6, 1, 20, 'assumption: sprung or moulded buffers'),
    dampingNsPerM: damping,
    slackMm: row(2, 1, 3, 'assumption: three links hang 4 mm loose'),
  },
  knuckle: {
    mount: 'body',
    pivotInsetMm: row(8, 6, 10, 'assumption: pin of a draft-gear box behind the body end'),
    reachMm: row(14, 12, 16, 'assumption: pulling face about 6 mm beyond the body end'),
    headHeightMm: row(9.93, 9.4, 10.4, '0.391 in, HO coupler centre (secondary source)'),
    headHeightToleranceMm: row(0.5, 0.25, 1, 'A coupler maker calls errors of 0.5-0.75 mm "not good enough"'),
    facingHeightMm: row(2.8, 2.5, 3.5, 'assumption: knuckle of 11 in full size, 3.2 mm, less its rounded edges'),
    engagementMm: row(1.4, 1, 2.5, 'common practice, no source: keep at least half of the head engaged'),
    faceTiltDeg: row(5, 0, 15, 'assumption: draft angle of a casting'),
    faceFriction: friction,
    freeSwingDeg: row(15, 10, 20, 'assumption: side of the draft-gear box'),
    draftStiffnessNPerMm: row(4, 1, 15, 'assumption: knuckle and shank spring'),
    buffStiffnessNPerMm: row(3, 1, 15, 'assumption: shank spring'),
    dampingNsPerM: damping,
    slackMm: row(0.4, 0.2, 0.8, 'assumption: play between two knuckles, half of it each'),
  },
  'rigid-bar': {
    mount: 'body',
    pivotInsetMm: row(3, 0, 10, 'assumption: pin just behind the body end'),
    reachMm: row(6, 3, 33, 'assumption: half of a short bar; bars of 56 to 66 mm are on record (magazine test, 2018)'),
    headHeightMm: row(9.93, 5, 12, 'assumption: at the height of a knuckle, 9.93 mm'),
    headHeightToleranceMm: row(0.2, 0, 0.5, 'assumption: one piece joins both'),
    facingHeightMm: row(8, 5, 12, 'assumption: pinned at both ends, it cannot ride over'),
    engagementMm: row(4, 2, 8, 'assumption: length of the pin'),
    freeTiltDeg: row(3, 0, 15, 'assumption: a bar in a slot; bars without give lifted a car in a dip (magazine test)'),
    faceTiltDeg: row(0, 0, 0, 'No face: one piece'),
    faceFriction: friction,
    freeSwingDeg: row(30, 15, 45, 'assumption: a bar turns on its pin until it meets the headstock'),
    draftStiffnessNPerMm: row(20, 5, 100, 'assumption: wire or moulding, stiffer than any sprung shank'),
    buffStiffnessNPerMm: row(20, 5, 100, 'assumption: the same bar'),
    dampingNsPerM: damping,
    slackMm: row(0, 0, 0.4, 'One piece without play; a bar on pins has the play of its holes'),
  },
  close: {
    mount: 'pocket',
    pivotInsetMm: pocketInset,
    reachMm: row(
      14.5,
      14,
      15,
      'NEM 363 (2018): face 7.0-7.5 mm behind the buffer face when drawn in; buffers just touch',
    ),
    headHeightMm: row(8.5, 8.2, 9, 'NEM 363 (2018): height at least 8.5 mm'),
    headHeightToleranceMm: row(0.3, 0.1, 0.6, 'assumption: heads of one piece in a pocket 1.75 mm high (NEM 362)'),
    facingHeightMm: row(5.5, 4, 5.5, 'NEM 363 (2018): heads at most 5.5 mm'),
    engagementMm: row(2.5, 1.5, 4, 'assumption: about half of the head, 5.5 mm'),
    faceTiltDeg: row(0, 0, 5, 'assumption: heads form a bar and do not ride on a face'),
    faceFriction: friction,
    freeSwingDeg: row(
      20,
      15,
      30,
      'assumption: half of the angle 65 degrees of NEM 363 (2018), less the play of the pocket',
    ),
    draftStiffnessNPerMm: row(5, 2, 15, 'assumption: stiffer than a hook, as the heads do not yield'),
    buffStiffnessNPerMm: row(5, 2, 15, 'assumption: stiffer than a hook, as the heads do not yield'),
    dampingNsPerM: damping,
    slackMm: row(0.15, 0.05, 0.4, 'assumption: two heads of these snap together without play; the pocket has some'),
  },
  magnetic: {
    mount: 'pocket',
    pivotInsetMm: pocketInset,
    reachMm: row(14.5, 13.5, 16, 'assumption: as a close coupling, faces where the buffers just touch'),
    headHeightMm: row(8.5, 8, 9.5, 'NEM 363 (2018), for want of a norm of its own'),
    headHeightToleranceMm: row(0.3, 0.1, 0.6, 'assumption: as the close coupling'),
    facingHeightMm: row(4, 2, 6, 'assumption: discs of 4 mm'),
    engagementMm: row(2, 1, 3, 'assumption: half a disc out of line, and most of the pull is gone'),
    faceTiltDeg: row(0, 0, 5, 'Faces stand upright'),
    faceFriction: friction,
    freeSwingDeg: row(25, 15, 35, 'assumption: a shank in a pocket, as the loop'),
    draftStiffnessNPerMm: row(5, 2, 15, 'assumption: the shank; the magnets themselves hardly part before they let go'),
    buffStiffnessNPerMm: row(8, 3, 20, 'assumption: face on face'),
    dampingNsPerM: damping,
    slackMm: row(0, 0, 0.1, 'Faces lie on each other'),
    releaseN: row(1.5, 0.5, 4, 'assumption: a pair of small discs; weigh yours with a spring balance'),
    recouples: true,
  },
};

/** Driving defaults of a trial. */
export const trialDefaults = {
  rampS: row(1, 0, 5, 'assumption: a hand on the knob'),
} as const;
