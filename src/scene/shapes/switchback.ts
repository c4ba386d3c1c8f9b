import type { SceneTrack } from '../schema/trackSchema.ts';
import type { SceneLeg, SceneTrial } from '../schema/trialSchema.ts';
import { reversedRoute, wayLengthMm, wayOf } from '../way.ts';
import { climbTrack } from './climb.ts';
import { type Movement, oneTrain } from './oneTrain.ts';
import { cornerMm, leadFor, verticalCurveFor } from './pieces.ts';
import type { ShapeScale } from './scales.ts';
import {
  chosen,
  inProportion,
  type ShapeField,
  type ShapeRun,
  type StartingShape,
  shapedScene,
  usualCoaches,
} from './shape.ts';
import { besideClimbFor } from './spacing.ts';
import { usualTrainMm } from './stock.ts';
import { standFor } from './storage.ts';
import { type Hand, turnoutFor, wayBeside } from './turnouts.ts';

const fields: readonly ShapeField[] = [
  { id: 'riseMm', name: 'Rise in all', unit: 'mm', low: 10, high: 3000, usual: inProportion(220) },
  { id: 'legs', name: 'Legs', unit: 'count', low: 2, high: 3, usual: () => 3 },
  { id: 'gradePercent', name: 'Grade at most', unit: 'percent', low: 0.5, high: 8, usual: () => 2.5 },
  { id: 'wallMm', name: 'Length of the wall', unit: 'mm', low: 500, high: 60_000, usual: inProportion(7000, 100) },
  { id: 'lowMm', name: 'Height at its foot', unit: 'mm', low: -2000, high: 2000, usual: () => 0 },
];

/**
 * Widest gauge, mm, on which the usual train stops by itself within the room past a turnout. How far a train runs on grows with the square of the gauge, that
 * room only with the gauge: in O and 1 it would run off the end.
 */
const stopsWithinMm = 23;

/** Share of the room past a turnout, besides the train's own, by which a train clears it before its driver shuts off. */
const pastShare = 0.15;

/** Crossings of the turnouts at which trains set back. */
const crossing = 6;

/** A climb in legs along one wall: the train runs past a turnout, and sets back up the next leg. */
export const switchbackShape: StartingShape = {
  id: 'switchback',
  name: 'Switchback on a wall',
  about: 'Legs one behind the other along a wall; trains set back at each end and climb on.',
  fields,
  make(scale, values) {
    const [riseMm, legs, gradePercent, wallMm, lowMm] = fields.map(({ id }) => chosen({ fields }, scale, values, id));
    const curve = verticalCurveFor(scale);
    const beside = besideClimbFor(scale);
    const stand = standFor(scale);
    const turnout = turnoutFor(scale, crossing);
    const way = wayBeside(turnout, 'left', beside.mm);
    const lead = leadFor(scale);
    // Both legs are level until they lie clear of each other: there the one falls and the other climbs away.
    const levelMm = way.alongMm + curve.mm / 2;
    const openMm = [wallMm - lead - stand.mm - levelMm, wallMm - 2 * (stand.mm + levelMm)];
    const slopes = Array.from({ length: legs }, (_, leg) => openMm[leg > 0 && leg < legs - 1 ? 1 : 0]);
    const slopedMm = slopes.reduce((sum, slope) => sum + slope, 0);
    const shortMm = Math.max((100 * riseMm) / gradePercent - slopedMm, legs * (curve.mm - Math.min(...slopes)));
    if (shortMm > 0) {
      const steeper =
        Math.min(...slopes) > curve.mm ? `, or ${((100 * riseMm) / slopedMm).toFixed(2)} % on this one` : '';
      throw new RangeError(
        `${riseMm} mm at ${gradePercent} % in ${legs} legs want a wall of ${Math.ceil((wallMm + shortMm / legs) / 10) * 10} mm${steeper}.`,
      );
    }
    // All the wall there is makes the climb gentler.
    const grade = riseMm / slopedMm;
    const tracks: SceneTrack[] = [];
    let [heightMm, turnoutAtMm] = [lowMm, 0];
    slopes.forEach((slope, leg) => {
      const [first, last] = [leg === 0, leg === legs - 1];
      const hand: Hand = leg % 2 === 1 ? 'left' : 'right';
      const toMm = heightMm + grade * slope;
      const footMm = first ? lead : curve.mm / 2;
      const headMm = last ? lead : levelMm + stand.mm;
      tracks.push(
        climbTrack(scale, {
          id: legId(leg),
          name: `Leg ${leg + 1}`,
          start: first
            ? { xMm: cornerMm, yMm: cornerMm + (legs - 1) * beside.mm, headingDeg: 0 }
            : { branchOf: legId(leg - 1), atMm: turnoutAtMm, towards: 'start', turnout: turnout.to(hand) },
          before: first ? [] : wayBeside(turnout, hand, beside.mm).elements,
          footMm,
          rising: [{ kind: 'straight', id: 'slope', lengthMm: slope }],
          headMm,
          fromMm: heightMm,
          toMm,
        }),
      );
      turnoutAtMm = (first ? 0 : way.lengthMm) + footMm + slope + levelMm;
      heightMm = toMm;
    });
    const routes = tracks.map(({ id }, leg): SceneLeg[] => [
      ...(leg === 0 ? [] : [{ track: legId(leg - 1), towards: 'start' as const }]),
      { track: id, towards: 'end' },
    ]);
    const scene = shapedScene(scale, {
      name: 'New switchback',
      shows: `A climb of ${riseMm} mm in ${legs} legs at ${(100 * grade).toFixed(2)} per cent.`,
      tracks,
      runs: tracks.map(({ id, name }, leg): ShapeRun => {
        return { id, name: name.toLowerCase(), route: routes[leg], ways: ['up', 'down'] };
      }),
    });
    return {
      scene: { ...scene, trials: [...scene.trials, ...inOneGo(scale, tracks, routes, stand.mm)] },
      promise: { riseMm, gradePercent: 100 * grade, radiusMm: turnout.radiusMm, clearMm: null },
      because: [turnout.because, beside.because, stand.because, curve.because],
    };
  },
};

const legId = (leg: number): string => `leg-${leg + 1}`;

/** One train up all legs, pulled first, and one down again: past each turnout, and back. The driver shuts off when it has gone past by a little of what room there is. */
function inOneGo(
  scale: ShapeScale,
  tracks: readonly SceneTrack[],
  routes: readonly (readonly SceneLeg[])[],
  standMm: number,
): SceneTrial[] {
  if (scale.gaugeMm > stopsWithinMm) return [];
  const shortMm = (1 - pastShare) * (standMm - usualTrainMm(scale, usualCoaches));
  const movements = (way: 'up' | 'down', order: readonly number[]): Movement[] =>
    order.map((leg, index) => {
      const route = way === 'up' ? routes[leg] : reversedRoute(routes[leg]);
      const lengthMm = wayLengthMm(wayOf({ tracks }, { route: [...route] }) ?? []);
      const what = `${tracks[leg].name.toLowerCase()}${index === 0 ? '' : ', set back'}`;
      const movement = { name: `${way === 'up' ? 'Up' : 'Down'} in one go: ${what}`, route };
      return index < order.length - 1 ? { ...movement, stopMm: lengthMm - shortMm } : movement;
    });
  const up = tracks.map((_, leg) => leg);
  return [
    ...oneTrain(scale, tracks, { id: 'climbs', way: 'up', movements: movements('up', up) }),
    ...oneTrain(scale, tracks, {
      id: 'descends',
      way: 'down',
      movements: movements('down', up.toReversed()),
    }),
  ];
}
