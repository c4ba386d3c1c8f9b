import { type AlignmentFit, fitAlignment, makeTrack, nearestChainage } from '../../core/track/index.ts';
import { mmText, tidy } from '../edits/tidy.ts';
import { parseScene } from '../parse.ts';
import { bounds } from '../schema/bounds.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneElement, SceneProfilePoint, SceneTrack } from '../schema/trackSchema.ts';
import { serialiseScene } from '../serialise.ts';
import { cornerMm, supportsFor } from '../shapes/pieces.ts';
import type { ShapeScale } from '../shapes/scales.ts';
import { shapedScene, usualCoaches, wholeTrack } from '../shapes/shape.ts';
import { usualTrainMm } from '../shapes/stock.ts';
import { chained } from './chained.ts';
import { drawnElements } from './drawnElements.ts';
import { measuredPlaces } from './measuredPlaces.ts';
import { readCentreline } from './readCentreline.ts';
import { CentrelineError, type DrawnLine, type ReadingProblem } from './types.ts';

export interface ImportOptions {
  /** Nothing lies further off the track than this, mm. */
  readonly toleranceMm: number;
  readonly scale: ShapeScale;
  /** Curves are eased by clothoids. */
  readonly eased?: boolean;
}

export interface Imported {
  readonly scene: Scene;
  /** Taken as drawn, or fitted to so many places. */
  readonly from: { readonly kind: 'drawn' } | { readonly kind: 'fitted'; readonly places: number };
  /** Greatest distance of a place from the track, and of a height, mm. */
  readonly distanceMm: number;
  readonly heightDistanceMm: number | null;
  /** Lines of the file that are not in the scene: the longest one is. */
  readonly linesLeft: number;
  readonly problems: readonly ReadingProblem[];
  /** What was assumed or moved, in sentences. */
  readonly notes: readonly string[];
}

/** Places that are fitted: more say no more. */
const mostPlaces = 1000;

/**
 * A railway of one track along the longest line of a file: as drawn where the drawing has arcs that meet as tangents, else the fewest elements found within the
 * tolerance. Throws RangeError in words when the file holds no line, none can be fitted, or no train could run on it.
 */
export function importedScene(
  fileName: string,
  text: string,
  { toleranceMm, scale, eased = false }: ImportOptions,
): Imported {
  const drawing = readCentreline(fileName, text);
  const lines = chained(drawing.lines).sort((a, b) => chordsMm(b) - chordsMm(a));
  if (lines.length === 0) {
    const [first] = drawing.problems;
    throw new CentrelineError(
      `There is no line in ${fileName}${first ? `: line ${first.line} is ${first.found}` : ''}.`,
    );
  }
  const [line] = lines;
  const places = measuredPlaces(line, mostPlaces);
  const drawn = eased ? null : drawnElements(line);
  const fit: Pick<AlignmentFit, 'start' | 'elements' | 'length' | 'profile' | 'heightDistance'> =
    drawn === null
      ? fitAlignment(places, { tolerance: toleranceMm / 1000, eased })
      : {
          start: { x: places[0].x, y: places[0].y, heading: drawn.heading },
          elements: drawn.elements,
          length: drawn.elements.reduce((sum, { length }) => sum + length, 0),
        };
  const trainMm = usualTrainMm(scale, usualCoaches);
  if (fit.length * 1000 < 1.2 * trainMm) {
    throw new RangeError(
      `The line is ${mmText(fit.length * 1000)} long in plan; a train of ${mmText(trainMm)} in ${scale.name} needs 1.2 times its length. Is the unit of the file what was meant?`,
    );
  }
  const notes = [...drawing.assumed];
  const inRoom = line.every(({ xMm, yMm }) => [xMm, yMm].every((mm) => mm >= 0 && mm <= bounds.lengthMm));
  const least = (along: 'x' | 'y'): number => Math.min(...places.map((place) => place[along])) * 1000;
  const shift = inRoom ? [0, 0] : [cornerMm - least('x'), cornerMm - least('y')];
  if (!inRoom) notes.push(`Moved by ${mmText(shift[0])} east and ${mmText(shift[1])} north, into the room.`);
  const track = trackOf(fit, shift, supportsFor(scale));
  const heights = places.flatMap(({ z }) => z ?? []);
  const name = fileName.replace(/^.*[/\\]/, '').slice(0, 80);
  const climbs = heights.length > 0 && Math.max(...heights) - Math.min(...heights) > toleranceMm / 1000;
  const scene = shapedScene(scale, {
    name: `From ${name}`,
    shows: `A railway along a line read from ${name}.`,
    tracks: [track],
    runs: [wholeTrack('line', climbs ? ['up', 'down'] : ['out', 'back'])],
  });
  const checked = parseScene(serialiseScene(scene));
  if (!checked.ok) {
    throw new RangeError(
      checked.problems.map(({ path, found, allowed }) => `${path}: ${found}; ${allowed}.`).join('\n'),
    );
  }
  return {
    scene,
    from: drawn === null ? { kind: 'fitted', places: places.length } : { kind: 'drawn' },
    distanceMm: 1000 * ('distance' in fit ? (fit as AlignmentFit).distance : furthest(fit, places)),
    heightDistanceMm: fit.heightDistance === undefined ? null : fit.heightDistance * 1000,
    linesLeft: lines.length - 1,
    problems: drawing.problems,
    notes,
  };
}

/** Greatest distance of places from a track as drawn, m: what was let pass where pieces do not quite meet. */
function furthest(
  { start, elements }: Pick<AlignmentFit, 'start' | 'elements'>,
  places: ReturnType<typeof measuredPlaces>,
): number {
  const track = makeTrack({ start, elements, profile: { points: [{ chainage: 0, height: 0 }] } });
  return places.reduce((most, { x, y }) => Math.max(most, nearestChainage(track, [x, y, 0]).distance), 0);
}

const chordsMm = (line: DrawnLine): number =>
  line.reduce((sum, { xMm, yMm }, i) => {
    const before = line[i - 1] ?? line[0];
    return sum + Math.sqrt((xMm - before.xMm) * (xMm - before.xMm) + (yMm - before.yMm) * (yMm - before.yMm));
  }, 0);

function trackOf(
  { start, elements, length, profile }: Pick<AlignmentFit, 'start' | 'elements' | 'length' | 'profile'>,
  [east, north]: readonly number[],
  everyMm: number,
): SceneTrack {
  const heading = (start.heading * 180) / Math.PI;
  return {
    id: 'line',
    name: 'Line',
    start: {
      xMm: tidy(start.x * 1000 + east),
      yMm: tidy(start.y * 1000 + north),
      headingDeg: tidy(heading - 360 * Math.round(heading / 360)),
    },
    alignment: elements.map(({ length: m, startCurvature, endCurvature }): SceneElement => {
      const lengthMm = tidy(m * 1000);
      if (startCurvature !== endCurvature) {
        return { kind: 'transition', lengthMm, from: bendOf(startCurvature), to: bendOf(endCurvature) };
      }
      if (startCurvature === 0) return { kind: 'straight', lengthMm };
      const { radiusMm, turn } = curveOf(startCurvature);
      // From half a turn on an arc is a helix, whose turns are not bounded by a circle.
      return Math.abs(m * startCurvature) > Math.PI
        ? { kind: 'helix', radiusMm, turn, turns: tidy(Math.abs(m * startCurvature) / (2 * Math.PI)) }
        : { kind: 'arc', radiusMm, turn, lengthMm };
    }),
    profile:
      profile === undefined
        ? [{ atMm: 0, heightMm: 0 }]
        : profile.map((point, i) => profilePoint(point, i, profile.length, length)),
    supports: { everyMm },
  };
}

function profilePoint(
  { chainage, height, curve }: NonNullable<AlignmentFit['profile']>[number],
  index: number,
  count: number,
  length: number,
): SceneProfilePoint {
  const heightMm = tidy(height * 1000);
  if (index > 0 && (index === count - 1 || chainage >= length)) return { at: { endOf: 'track' }, heightMm };
  const atMm = tidy(chainage * 1000);
  // Rounded down, so that neighbouring curves do not overlap.
  const curveMm = curve === undefined || !('length' in curve) ? 0 : Math.floor(curve.length * 1e6) / 1000;
  return { atMm, heightMm, ...(curveMm > 0.01 && { verticalCurveLengthMm: curveMm }) };
}

const curveOf = (curvature: number): { readonly radiusMm: number; readonly turn: 'left' | 'right' } => ({
  radiusMm: tidy(1000 / Math.abs(curvature)),
  turn: curvature > 0 ? 'left' : 'right',
});

const bendOf = (curvature: number) => (curvature === 0 ? ('straight' as const) : curveOf(curvature));
