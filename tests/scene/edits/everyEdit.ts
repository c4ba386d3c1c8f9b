// Over 300 lines for a reason: one table with a row for every edit there is.

import fc from 'fast-check';
import * as edits from '../../../src/scene/edits/index.ts';
import {
  couplingKinds,
  placedSupports,
  profileHeights,
  type Scene,
  type SceneElement,
  trackLengthMm,
} from '../../../src/scene/index.ts';

/** What an edit is made with, whatever the scene: which of the parts there are, and numbers from 0 to 1. */
interface Draw {
  readonly edit: EditName;
  readonly one: number;
  readonly other: number;
  readonly a: number;
  readonly b: number;
  readonly side: boolean;
}

/** Of a list the item that a number falls to; the number counts on beyond the end. */
const of = <T>(list: readonly T[], number: number): T => list[number % list.length];

const elements = (a: number, b: number, side: boolean): readonly SceneElement[] => {
  const turn = side ? 'left' : 'right';
  return [
    { kind: 'straight', lengthMm: 20 + 1500 * a },
    { kind: 'arc', radiusMm: 300 + 1500 * b, turn, angleDeg: 5 + 170 * a },
    { kind: 'helix', radiusMm: 300 + 500 * b, turn, turns: 0.5 + 3 * a },
    { kind: 'transition', lengthMm: 50 + 400 * a, to: { radiusMm: 300 + 900 * b, turn } },
  ];
};

/** The id of a coupling; of none where there are none, which edits refuse. */
const couplingOf = ({ couplings = [] }: Scene, number: number): string =>
  couplings.length === 0 ? 'none' : of(couplings, number).id;

/** A stretch of neighbouring supports of a track. */
function spanOf(track: Scene['tracks'][number], { one, other }: Draw): edits.SupportSpan {
  const count = Math.max(1, placedSupports(track).length);
  const [from, to] = [one % count, other % count];
  return { from: Math.min(from, to), to: Math.max(from, to) };
}

/** A stop of a tour, of any kind of view. */
const stopOf = (scene: Scene, number: number, a: number): edits.NewTourStop => ({
  title: 'A place to look at',
  view: of(
    [
      { kind: 'whole' },
      { kind: 'ride' },
      { kind: 'lens', joint: 1 + (number % 5) },
      { kind: 'follow', fromDeg: 300 * a, pictureMm: 100 + 900 * a },
      {
        kind: 'place',
        eye: { xMm: 900 * a, yMm: -800, heightMm: 700 },
        target: { xMm: 400, yMm: 300 * a, heightMm: 100 },
      },
    ] as const,
    number,
  ),
  trial: of(scene.trials, number).id,
  atS: 20 * a,
});

/** A scene that has a stop at least. */
const withStop = (scene: Scene, number: number, a: number): Scene => edits.addTourStop(scene, stopOf(scene, number, a));

/** Every edit there is, made with what was drawn. May throw a RangeError, as edits do for what cannot be. */
const table = {
  addCoupling: (scene: Scene, { one }: Draw) => edits.addCoupling(scene, { id: 'bar', kind: of(couplingKinds, one) }),
  addOrder: (scene: Scene, { one }: Draw) => edits.addOrder(scene, of(scene.trials, one).id),
  addProfilePoint: (scene: Scene, { one, a, b, side }: Draw) => {
    const track = of(scene.tracks, one);
    return edits.addProfilePoint(scene, track.id, a * trackLengthMm(track), side ? undefined : 200 * b);
  },
  addTourStop: (scene: Scene, { one, other, a, side }: Draw) => {
    const tour = scene.tour ?? [];
    const after = side && tour.length > 0 ? of(tour, other).id : undefined;
    return edits.addTourStop(scene, stopOf(scene, one, a), after);
  },
  addTrack: (scene: Scene, { one, a, b, side }: Draw) =>
    edits.addTrack(
      scene,
      edits.straightTrack(scene, {
        name: of(scene.tracks, one).name,
        xMm: 4000 * a,
        yMm: 4000 * (b - 0.5),
        headingDeg: 300 * a,
        lengthMm: 100 + 3000 * b,
        heightMm: 100 * a,
        ...(side && { supportsEveryMm: 100 + 300 * a }),
      }),
    ),
  addVehicle: (scene: Scene, { one, other, side }: Draw) =>
    edits.addVehicle(scene, of(scene.trains, one).id, of(scene.stock, other).id, side ? 0 : undefined),
  bendOn: (scene: Scene, { one, a, b, side }: Draw) =>
    edits.bendOn(scene, of(scene.tracks, one).id, 180 * (a - 0.5), {
      radiusMm: 300 + 900 * b,
      easeMm: side ? 0 : 100 * b,
    }),
  changeRoom: (scene: Scene, { a, b, side }: Draw) =>
    edits.changeRoom(scene, {
      corners: side
        ? undefined
        : [
            { xMm: -9000 * a - 100, yMm: -5000 },
            { xMm: 9000, yMm: -5000 },
            { xMm: 9000, yMm: 4000 * b + 100 },
            { xMm: -9000 * a - 100, yMm: 4000 * b + 100 },
          ],
    }),
  changeSurroundings: (scene: Scene, { one, a, b, side }: Draw) => {
    const track = of(scene.tracks, one);
    const [fromMm, toMm] = [0.4 * a * trackLengthMm(track), (0.5 + 0.4 * b) * trackLengthMm(track)];
    return edits.changeSurroundings(scene, {
      lineside: side
        ? []
        : [
            ...(scene.lineside ?? []),
            {
              kind: 'wall',
              name: 'New wall',
              track: track.id,
              fromMm,
              toMm,
              side: 'left',
              distanceMm: 40,
              heightMm: 90,
            },
          ],
    });
  },
  changeTourStop: (scene: Scene, { one, other, a, side }: Draw) => {
    const toured = withStop(scene, one, a);
    return edits.changeTourStop(toured, of(toured.tour ?? [], other).id, {
      title: 'Called otherwise',
      words: side ? undefined : 'Plain words.',
      atS: 40 * a,
      ...(side && { tillS: 20 }),
    });
  },
  copyTrain: (scene: Scene, { one }: Draw) => edits.copyTrain(scene, of(scene.trains, one).id, 'Another'),
  copyTurn: (scene: Scene, { one, other }: Draw) => {
    const track = of(scene.tracks, one);
    return edits.copyTurn(scene, track.id, other % track.alignment.length);
  },
  copyVehicle: (scene: Scene, { one }: Draw) => edits.copyVehicle(scene, of(scene.stock, one).id, 'Another'),
  easeJoin: (scene: Scene, { one, other, a }: Draw) => {
    const track = of(scene.tracks, one);
    return edits.easeJoin(scene, track.id, other % (track.alignment.length + 1), 20 + 600 * a);
  },
  evenSupports: (scene: Scene, draw: Draw) => {
    const track = of(scene.tracks, draw.one);
    // Any plan will do: one that climbs.
    return edits.evenSupports(scene, track.id, spanOf(track, draw), (atMm) => 0.02 * draw.a * atMm);
  },
  extendToPose: (scene: Scene, { one, a, b, side }: Draw) =>
    edits.extendToPose(
      scene,
      of(scene.tracks, one).id,
      { xMm: 8000 * (a - 0.5), yMm: 8000 * (b - 0.5), headingDeg: 360 * a },
      { radiusMm: 400 + 500 * b, easeMm: side ? 0 : 120 },
    ),
  extendTrack: (scene: Scene, { one, a, b, side }: Draw) =>
    edits.extendTrack(
      scene,
      of(scene.tracks, one).id,
      { xMm: 8000 * (a - 0.5), yMm: 8000 * (b - 0.5) },
      { radiusMm: 400 + 500 * b, easeMm: side ? 0 : 120 },
    ),
  insertElement: (scene: Scene, { one, other, a, b, side }: Draw) => {
    const track = of(scene.tracks, one);
    const index = other % (track.alignment.length + 1);
    return edits.insertElement(scene, track.id, index, of(elements(a, b, side), other));
  },
  layStraightOn: (scene: Scene, { one, a }: Draw) =>
    edits.layStraightOn(scene, of(scene.tracks, one).id, 2000 * (a - 0.4)),
  layTurnout: (scene: Scene, { one, a, b, side }: Draw) => {
    const track = of(scene.tracks, one);
    return edits.layTurnout(scene, track.id, {
      name: 'Siding',
      atMm: a * trackLengthMm(track),
      hand: side ? 'left' : 'right',
      towards: b < 0.5 ? 'end' : 'start',
    });
  },
  moveCorner: (scene: Scene, { one, other, a, b }: Draw) => {
    const track = of(scene.tracks, one);
    const index = other % track.alignment.length;
    const { xMm, yMm } = edits.cornerPlace(scene, track, index) ?? { xMm: 0, yMm: 0 };
    return edits.moveCorner(scene, track.id, index, { xMm: xMm + 900 * (a - 0.5), yMm: yMm + 900 * (b - 0.5) });
  },
  moveEnd: (scene: Scene, { one, a, b }: Draw) =>
    edits.moveEnd(scene, of(scene.tracks, one).id, { xMm: 9000 * (a - 0.5), yMm: 9000 * (b - 0.5) }),
  moveEntry: (scene: Scene, { one, other, side }: Draw) => {
    const train = of(scene.trains, one);
    return edits.moveEntry(scene, train.id, other % train.vehicles.length, side ? 1 : -1);
  },
  moveSupport: (scene: Scene, { one, other, a }: Draw) => {
    const track = of(scene.tracks, one);
    return edits.moveSupport(scene, track.id, other, 6 * (a - 0.5));
  },
  moveSupports: (scene: Scene, draw: Draw) => {
    const track = of(scene.tracks, draw.one);
    return edits.moveSupports(scene, track.id, spanOf(track, draw), 6 * (draw.a - 0.5));
  },
  moveTourStop: (scene: Scene, { one, other, a, side }: Draw) => {
    const toured = withStop(withStop(scene, one, a), other, a);
    return edits.moveTourStop(toured, of(toured.tour ?? [], other).id, side ? 1 : -1);
  },
  moveTurnout: (scene: Scene, { one, a, b, side }: Draw) => {
    const track = of(scene.tracks, one);
    return edits.moveTurnout(scene, track.id, {
      ...(a < 0.8 && { atMm: 8000 * a }),
      ...(b < 0.5 && { hand: side ? 'left' : 'right' }),
      ...(b > 0.7 && { towards: side ? 'end' : 'start' }),
    });
  },
  parallelTrack: (scene: Scene, { one, a, side }: Draw) =>
    edits.parallelTrack(scene, of(scene.tracks, one).id, (side ? 1 : -1) * (30 + 80 * a), { name: 'Beside' }),
  putTour: (scene: Scene, { one, other, a, side }: Draw) =>
    edits.putTour(scene, side ? [] : edits.namedStops([stopOf(scene, one, a), stopOf(scene, other, a)])),
  removeElement: (scene: Scene, { one, other }: Draw) => {
    const track = of(scene.tracks, one);
    return edits.removeElement(scene, track.id, other % track.alignment.length);
  },
  removeEntry: (scene: Scene, { one, other }: Draw) => {
    const train = of(scene.trains, one);
    return edits.removeEntry(scene, train.id, other % train.vehicles.length);
  },
  removeOrder: (scene: Scene, { one, other, side }: Draw) => {
    // Of a trial with one order more: the only one stays.
    const { id } = of(scene.trials, one);
    const more = side ? scene : edits.addOrder(scene, id);
    const orders = more.trials.find((trial) => trial.id === id)?.orders ?? [];
    return edits.removeOrder(more, id, other % orders.length);
  },
  removeProfilePoint: (scene: Scene, { one, other }: Draw) => {
    const track = of(scene.tracks, one);
    return edits.removeProfilePoint(scene, track.id, other % track.profile.length);
  },
  removeSupports: (scene: Scene, draw: Draw) => {
    const track = of(scene.tracks, draw.one);
    return edits.removeSupports(scene, track.id, spanOf(track, draw));
  },
  removeTourStop: (scene: Scene, { one, other, a }: Draw) => {
    const toured = withStop(scene, one, a);
    return edits.removeTourStop(toured, of(toured.tour ?? [], other).id);
  },
  removeTrack: (scene: Scene, { one }: Draw) => edits.removeTrack(scene, of(scene.tracks, one).id),
  removeTrain: (scene: Scene, { one }: Draw) => edits.removeTrain(scene, of(scene.trains, one).id),
  removeTrial: (scene: Scene, { one }: Draw) => edits.removeTrial(scene, of(scene.trials, one).id),
  removeVehicle: (scene: Scene, { one, side }: Draw) => {
    // Of a list with one more that no train has.
    const more = side ? scene : edits.copyVehicle(scene, of(scene.stock, one).id, 'Spare');
    return edits.removeVehicle(more, of(more.stock, one).id);
  },
  renameTrain: (scene: Scene, { one }: Draw) => edits.renameTrain(scene, of(scene.trains, one).id, 'Called otherwise'),
  renameTrial: (scene: Scene, { one }: Draw) => edits.renameTrial(scene, of(scene.trials, one).id, 'Called otherwise'),
  setAllEasements: (scene: Scene, { one, a, side }: Draw) =>
    edits.setAllEasements(scene, of(scene.tracks, one).id, side ? 0 : 20 + 500 * a),
  setBend: (scene: Scene, { one, other, a, b, side }: Draw) => {
    const track = of(scene.tracks, one);
    return edits.setBend(scene, track.id, other % track.alignment.length, {
      ...(side && { radiusMm: 200 + 1500 * a }),
      ...(b < 0.5 && { easeInMm: 600 * b }),
      ...(b > 0.3 && { easeOutMm: 300 * b }),
    });
  },
  setBogies: (scene: Scene, { one, side }: Draw) => edits.setBogies(scene, of(scene.stock, one).id, side),
  setBuffers: (scene: Scene, { one, side }: Draw) => edits.setBuffers(scene, of(scene.stock, one).id, side),
  setCoupling: (scene: Scene, { one, other }: Draw) =>
    edits.setCoupling(
      scene,
      of(scene.stock, one).id,
      of(['both', 'front', 'rear'] as const, other),
      couplingOf(scene, other),
    ),
  setCouplingField: (scene: Scene, { one, a, side }: Draw) =>
    edits.setCouplingField(scene, couplingOf(scene, one), 'slackMm', side ? undefined : 2 * a),
  setCouplingKind: (scene: Scene, { one, other }: Draw) =>
    edits.setCouplingKind(scene, couplingOf(scene, one), of(couplingKinds, other)),
  setEasement: (scene: Scene, { one, other, a, side }: Draw) => {
    const track = of(scene.tracks, one);
    return edits.setEasement(scene, track.id, other % track.alignment.length, side ? 0 : 10 + 600 * a);
  },
  setElement: (scene: Scene, { one, other, a, b, side }: Draw) => {
    const track = of(scene.tracks, one);
    const index = other % track.alignment.length;
    const { kind } = track.alignment[index];
    const change: edits.ElementChange =
      kind === 'helix'
        ? { radiusMm: 300 + 500 * b, ...(side && { turns: 0.5 + 4 * a }) }
        : kind === 'arc'
          ? of(
              [
                { radiusMm: 300 + 1200 * b },
                { angleDeg: 2 + 170 * a },
                { lengthMm: 20 + 900 * a },
                { turn: side ? 'left' : 'right' },
                { cantMm: side ? null : 2 * a },
              ] as const,
              other,
            )
          : { lengthMm: 10 + 2500 * a };
    return edits.setElement(scene, track.id, index, change);
  },
  setEntry: (scene: Scene, { one, other, a, side }: Draw) => {
    const train = of(scene.trains, one);
    return edits.setEntry(scene, train.id, other % train.vehicles.length, {
      count: 1 + Math.floor(5 * a),
      turned: side,
      stock: of(scene.stock, other).id,
    });
  },
  setFollows: (scene: Scene, { one, other, a }: Draw) =>
    edits.setFollows(scene, of(scene.trials, one).id, a < 0.2 ? undefined : of(scene.trials, other).id),
  setOrder: (scene: Scene, { one, other, a, b, side }: Draw) => {
    const trial = of(scene.trials, one);
    const change = side ? { setting: a } : { atS: 10 + 40 * b };
    return edits.setOrder(scene, trial.id, other % trial.orders.length, change);
  },
  setProfilePoint: (scene: Scene, { one, other, a }: Draw) => {
    const track = of(scene.tracks, one);
    const index = other % track.profile.length;
    const { atMm } = profileHeights(track)[index];
    const change: edits.ProfileChange = of(
      [
        { heightMm: 300 * a },
        { gradePercent: 8 * (a - 0.5) },
        { verticalCurveLengthMm: 900 * a + 1 },
        { verticalCurveRadiusMm: 3000 + 20_000 * a },
        { verticalCurveLengthMm: null },
        { atMm: Math.max(0, atMm + 800 * (a - 0.5)) },
      ],
      other,
    );
    return edits.setProfilePoint(scene, track.id, index, change);
  },
  setStart: (scene: Scene, { one, a, b }: Draw) =>
    edits.setStart(scene, of(scene.tracks, one).id, {
      xMm: 5000 * (a - 0.5),
      yMm: 5000 * (b - 0.5),
      headingDeg: 1000 * (a - 0.5),
    }),
  setStop: (scene: Scene, { one, a, side }: Draw) =>
    edits.setStop(scene, of(scene.trials, one).id, side ? undefined : 0.1 + 5 * a),
  setSupportsEvery: (scene: Scene, { one, a, b, side }: Draw) =>
    edits.setSupportsEvery(scene, of(scene.tracks, one).id, 80 + 500 * a, side ? 200 * b : undefined),
  setTrialEnd: (scene: Scene, { one, a, b, side }: Draw) => {
    const trial = of(scene.trials, one);
    return edits.setTrialEnd(scene, trial.id, side ? 'startMm' : 'finishMm', a < 0.1 ? undefined : 9000 * b);
  },
  setVehicleField: (scene: Scene, { one, a, side }: Draw) =>
    side
      ? edits.setVehicleField(scene, of(scene.stock, one).id, 'massG', 20 + 400 * a)
      : edits.setVehicleField(scene, of(scene.stock, one).id, 'lengthMm', 40 + 300 * a),
  splitElement: (scene: Scene, { one, a }: Draw) => {
    const track = of(scene.tracks, one);
    return edits.splitElement(scene, track.id, a * trackLengthMm(track));
  },
  supportsAsPlanned: (scene: Scene, draw: Draw) => {
    const track = of(scene.tracks, draw.one);
    return edits.supportsAsPlanned(scene, track.id, spanOf(track, draw));
  },
} as const satisfies Record<string, (scene: Scene, draw: Draw) => Scene>;

type EditName = keyof typeof table;

/** Names of all edits, in order. */
export const editNames = (Object.keys(table) as EditName[]).sort();

/**
 * Edits that say of a train, a vehicle, a trial or a turnout what was asked, and no more: where a bar would meet a hook, an arrival lie before its start or a route set
 * back, the reader of files says so. All others make sound scenes of sound ones.
 */
export const saidByAPerson: ReadonlySet<EditName> = new Set<EditName>([
  'addVehicle',
  'moveEntry',
  'moveTurnout',
  'removeEntry',
  'setCoupling',
  'setCouplingKind',
  'setEntry',
  'setTrialEnd',
  'setVehicleField',
]);

/** What the room exports that is no edit: it measures, or makes a part of one. */
export const noEdits = [
  'cornerPlace',
  'easementPlaces',
  'freeId',
  'meanOffMm',
  'namedStops',
  'nearestOn',
  'newId',
  'offCornerLine',
  'planElement',
  'shortened',
  'straightTrack',
  'supportsWith',
  'tidy',
  'turnoutNear',
  'turnoutTowards',
];

/** The edit made; null where it refuses in words. Any other error is passed on. */
export function edited(scene: Scene, draw: Draw): Scene | null {
  try {
    return table[draw.edit](scene, draw);
  } catch (error) {
    if (error instanceof RangeError && error.message !== '') return null;
    throw error;
  }
}

/** In thousandths: no builder works in numbers that differ by less. */
const share = fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000);

/** Any edit with any numbers. */
export const anyDraw = (edit: fc.Arbitrary<EditName> = fc.constantFrom(...editNames)): fc.Arbitrary<Draw> =>
  fc.record({ edit, one: fc.nat(60), other: fc.nat(60), a: share, b: share, side: fc.boolean() });
