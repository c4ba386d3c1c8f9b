import type { SceneTrack } from '../trackSchema.ts';
import type { SceneLeg } from '../trialSchema.ts';
import { climbTrack } from './climb.ts';
import { cornerMm, leadFor, verticalCurveFor } from './pieces.ts';
import { chosen, inProportion, type ShapeField, type ShapeRun, type StartingShape, shapedScene } from './shape.ts';
import { besideClimbFor } from './spacing.ts';
import { standFor } from './storage.ts';
import { type Hand, turnoutFor, wayBeside } from './turnouts.ts';

const fields: readonly ShapeField[] = [
  { id: 'riseMm', name: 'Rise in all', unit: 'mm', low: 10, high: 3000, usual: inProportion(220) },
  { id: 'legs', name: 'Legs', unit: 'count', low: 2, high: 3, usual: () => 3 },
  { id: 'gradePercent', name: 'Grade at most', unit: 'percent', low: 0.5, high: 8, usual: () => 2.5 },
  { id: 'wallMm', name: 'Length of the wall', unit: 'mm', low: 500, high: 60_000, usual: inProportion(7000, 100) },
  { id: 'lowMm', name: 'Height at its foot', unit: 'mm', low: -2000, high: 2000, usual: () => 0 },
];

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
    return {
      scene: shapedScene(scale, {
        name: 'New switchback',
        shows: `A climb of ${riseMm} mm in ${legs} legs at ${(100 * grade).toFixed(2)} per cent.`,
        tracks,
        runs: tracks.map(({ id, name }, leg): ShapeRun => {
          const from: SceneLeg[] = leg === 0 ? [] : [{ track: legId(leg - 1), towards: 'start' }];
          return {
            id,
            name: name.toLowerCase(),
            route: [...from, { track: id, towards: 'end' }],
            ways: ['up', 'down'],
          };
        }),
      }),
      promise: { riseMm, gradePercent: 100 * grade, radiusMm: turnout.radiusMm, clearMm: null },
      because: [turnout.because, beside.because, stand.because, curve.because],
    };
  },
};

const legId = (leg: number): string => `leg-${leg + 1}`;
