import { sin } from '../../core/math/index.ts';
import { chainEnd, type Pose } from '../../core/track/index.ts';
import { planElement } from '../edits/planElements.ts';
import { tidy } from '../edits/tidy.ts';
import { trackLengthMm } from '../places.ts';
import type { SceneElement, SceneTrack } from '../schema/trackSchema.ts';
import { gradeChange, slopeMm } from './climb.ts';
import { cornerMm, easedBend, supportsFor, verticalCurveFor } from './pieces.ts';
import { type Because, clearHeightFor, deckDepthMm, easementFor, type ShapeScale, upTo } from './scales.ts';
import { chosen, inProportion, type ShapeField, type StartingShape, shapedScene, wholeTrack } from './shape.ts';
import { besideClimbFor, straightSpacingFor } from './spacing.ts';
import { roadId, standFor, storageRoads } from './storage.ts';
import { turnoutFor } from './turnouts.ts';

const fields: readonly ShapeField[] = [
  { id: 'riseMm', name: 'From loop to loop', unit: 'mm', low: 5, high: 2000, usual: inProportion(80) },
  { id: 'radiusMm', name: 'Radius of the loops', unit: 'mm', low: 100, high: 5000, usual: inProportion(600) },
  { id: 'gradePercent', name: 'Grade', unit: 'percent', low: 0.5, high: 6, usual: () => 2.5 },
  { id: 'roads', name: 'Storage roads', unit: 'count', low: 1, high: 8, usual: () => 3 },
  { id: 'lowMm', name: 'Height of the lower loop', unit: 'mm', low: -2000, high: 2000, usual: () => 0 },
];

/** Crossings of the turnouts into storage. */
const crossing = 6;

/** Least turn that the line swings out by before it goes round in a loop, degrees; more where the easements alone turn further. */
const leastSwingDeg = 30;

/** Two loops at different heights, joined by a double line that climbs; storage roads beside it at its foot. */
export const dogBoneShape: StartingShape = {
  id: 'dog-bone',
  name: 'Dog-bone with storage',
  about: 'Two loops joined by a double line on a climb: one line up, the other down, and storage at the foot.',
  fields,
  make(scale, values) {
    const [riseMm, radiusMm, gradePercent, roads, lowMm] = fields.map(({ id }) =>
      chosen({ fields }, scale, values, id),
    );
    const curve = verticalCurveFor(scale);
    const slope = slopeMm(scale, riseMm, gradePercent);
    const line = straightSpacingFor(scale, 'line');
    const loop = turningLoop(scale, radiusMm, line.mm);
    const turnout = turnoutFor(scale, crossing);
    const first = besideClimbFor(scale);
    const station = straightSpacingFor(scale, 'station');
    const clear = clearHeightFor(scale);
    const highMm = tidy(lowMm + riseMm);
    const standOffMm = curve.mm / 2;
    const storage = storageRoads(scale, {
      main: 'dog-bone',
      atMm: standOffMm,
      hand: 'right',
      turnout,
      roads,
      clearMm: first.mm,
      spacingMm: station.mm,
      heightMm: lowMm,
    });
    const lowerMm = upTo(standOffMm + turnout.throughMm + curve.mm / 2, 10);
    const storageUnder = standOffMm + storage.alongMm > lowerMm + slope + curve.mm;
    const underMm = riseMm - deckDepthMm(scale);
    if (storageUnder && underMm < clear.mm) {
      const needed = Math.ceil(clear.mm + deckDepthMm(scale));
      throw new RangeError(
        `The storage roads reach under the upper loop, which leaves ${Math.floor(underMm)} mm over the rail of the ${clear.mm} mm they need: a rise of ${needed} mm, or a lesser grade.`,
      );
    }
    const straight = (id: string, lengthMm: number): SceneElement => ({ kind: 'straight', id, lengthMm });
    const track: SceneTrack = {
      id: 'dog-bone',
      name: 'Dog-bone',
      start: {
        xMm: cornerMm + upTo(loop.reachMm, 10),
        yMm: cornerMm + upTo(Math.max(loop.asideMm, storage.asideMm), 10),
        headingDeg: 0,
      },
      alignment: [
        straight('lower', lowerMm),
        straight('slope', slope),
        straight('upper', curve.mm),
        ...loop.elements('upper-loop'),
        straight('upper-back', curve.mm),
        straight('slope-back', slope),
        straight('lower-back', lowerMm),
        ...loop.elements('lower-loop'),
      ],
      profile: [
        { atMm: 0, heightMm: lowMm },
        gradeChange(scale, { endOf: 'lower' }, lowMm),
        gradeChange(scale, { startOf: 'upper' }, highMm),
        gradeChange(scale, { endOf: 'upper-back' }, highMm),
        gradeChange(scale, { startOf: 'lower-back' }, lowMm),
        { at: { endOf: 'track' }, heightMm: lowMm },
      ],
      supports: { everyMm: supportsFor(scale) },
    };
    return {
      scene: shapedScene(scale, {
        name: 'New dog-bone',
        shows: `Two loops of ${radiusMm} mm radius, one ${riseMm} mm above the other, and a double line at ${gradePercent} per cent between them.`,
        tracks: [track, ...storage.tracks],
        runs: [
          wholeTrack(track.id, ['round', 'back']),
          {
            id: 'store',
            name: 'storage',
            // From where the train stands clear on the loop, on past the place where the line closes.
            route: [
              { track: track.id, towards: 'end', fromMm: tidy(trackLengthMm(track) - standFor(scale).mm) },
              { track: track.id, towards: 'end', fromMm: 0 },
              { track: roadId(roads), towards: 'end' },
            ],
            ways: ['in', 'out'],
          },
        ],
      }),
      promise: {
        riseMm,
        gradePercent,
        radiusMm: Math.min(radiusMm, turnout.radiusMm),
        clearMm: storageUnder ? underMm : null,
      },
      because: [
        loop.because,
        line.because,
        first.because,
        turnout.because,
        ...(storageUnder ? [clear.because] : []),
        curve.because,
      ],
    };
  },
};

interface TurningLoop {
  /** From one line round to the other, tangent to both, with their ends opposite each other. */
  elements(id: string): SceneElement[];
  /** How far it reaches beyond those ends, and at most to the side of either line, mm. */
  readonly reachMm: number;
  readonly asideMm: number;
  readonly because: Because;
}

/**
 * A loop that joins two lines `spacingMm` apart: it swings out, goes round by half a turn and twice the swing, and swings back. The straights
 * between make it meet the other line. Throws RangeError, in words, where the radius leaves them no length.
 */
function turningLoop(scale: ShapeScale, radiusMm: number, spacingMm: number): TurningLoop {
  const easedDeg = ((easementFor(scale, radiusMm).mm / radiusMm) * 180) / Math.PI;
  const swing = (Math.max(leastSwingDeg, Math.ceil(easedDeg + 1)) * Math.PI) / 180;
  const out = easedBend(scale, radiusMm, swing, 'right');
  const round = easedBend(scale, radiusMm, Math.PI + 2 * swing, 'left');
  const elements = (betweenMm: number, id?: string): SceneElement[] => {
    const between: SceneElement = { kind: 'straight', lengthMm: betweenMm };
    const named = round.elements.map((element) =>
      id !== undefined && element.kind === 'helix' ? { ...element, id } : element,
    );
    return [...out.elements, between, ...named, between, ...out.elements];
  };
  // Without the straights the lines end further apart than they lie; each straight takes its share.
  const apartMm = endOf(elements(1e-3)).y * 1000;
  const betweenMm = tidy(1e-3 + (apartMm - spacingMm) / (2 * sin(swing)));
  if (!(betweenMm > 0)) {
    throw new RangeError(`A loop of ${radiusMm} mm is too tight to join lines ${spacingMm} mm apart: a larger radius.`);
  }
  // The loop is the same either side of its middle, which is the furthest place of it.
  const [ease, arc] = round.elements;
  const halfArc: SceneElement = arc.kind === 'helix' ? { ...arc, turns: arc.turns / 2 } : arc;
  const middle = endOf([...out.elements, { kind: 'straight', lengthMm: betweenMm }, ease, halfArc]);
  return {
    elements: (id) => elements(betweenMm, id),
    reachMm: middle.x * 1000,
    asideMm: roundMm(radiusMm),
    because: out.because,
  };
}

/** The side of a loop lies an easement's shift, at most a tenth, further out than its radius from between the lines. */
const roundMm = (radiusMm: number): number => 1.1 * radiusMm;

const endOf = (alignment: readonly SceneElement[]): Pose => chainEnd({ x: 0, y: 0, heading: 0 }, planOf(alignment));

/** Elements in SI. */
function planOf(alignment: readonly SceneElement[]) {
  const track: SceneTrack = {
    id: 'loop',
    name: 'Loop',
    start: { xMm: 0, yMm: 0, headingDeg: 0 },
    alignment: [...alignment],
    profile: [{ atMm: 0, heightMm: 0 }],
  };
  return alignment.map((_, index) => planElement(track, index));
}
