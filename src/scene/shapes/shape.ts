import { trackProblems } from '../checks/trackChecks.ts';
import { formatVersion, type Scene } from '../schema/schema.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import type { SceneLeg, SceneTrial } from '../schema/trialSchema.ts';
import { reversedRoute, wayLengthMm, wayOf } from '../way.ts';
import { type Because, deckFor, type ShapeScale } from './scales.ts';
import { usualStock } from './stock.ts';

/** A number that the person may choose. Lengths in mm, grades in per cent, angles in degrees. */
export interface ShapeField {
  readonly id: string;
  readonly name: string;
  readonly unit: 'mm' | 'percent' | 'count' | 'degrees' | 'turns';
  readonly low: number;
  readonly high: number;
  /** What it is unless the person says otherwise. */
  readonly usual: (scale: ShapeScale) => number;
}

export type ShapeValues = Readonly<Record<string, number>>;

/** What a shape was made to have: tests hold it to these. */
export interface ShapePromise {
  /** From the lowest rail to the highest, mm. */
  readonly riseMm: number;
  /** Greatest grade of the plan anywhere, per cent. */
  readonly gradePercent: number;
  /** Tightest curve of the running lines, mm; Infinity on straight track. */
  readonly radiusMm: number;
  /** Clear over the rail wherever one track lies over another, mm; null where none does. */
  readonly clearMm: number | null;
}

export interface ShapedScene {
  readonly scene: Scene;
  readonly promise: ShapePromise;
  /** Where the numbers come from that nobody chose. */
  readonly because: readonly Because[];
}

/** A railway to start from, made of a few numbers. */
export interface StartingShape {
  readonly id: string;
  readonly name: string;
  /** One sentence. */
  readonly about: string;
  readonly fields: readonly ShapeField[];
  /** Throws RangeError, saying what would do, when these numbers make no railway. */
  make(scale: ShapeScale, values: ShapeValues): ShapedScene;
}

/** The values that a shape has before anyone changes one. */
export const usualValues = (shape: StartingShape, scale: ShapeScale): ShapeValues =>
  Object.fromEntries(shape.fields.map((field) => [field.id, field.usual(scale)]));

/** A chosen number within its bounds. Throws RangeError in words. */
export function chosen(
  shape: Pick<StartingShape, 'fields'>,
  scale: ShapeScale,
  values: ShapeValues,
  id: string,
): number {
  const field = shape.fields.find((one) => one.id === id);
  if (field === undefined) throw new RangeError(`There is no number "${id}" here.`);
  const value = values[id] ?? field.usual(scale);
  if (!(value >= field.low && value <= field.high)) {
    const unit = field.unit === 'mm' ? ' mm' : field.unit === 'percent' ? ' %' : '';
    throw new RangeError(`${field.name}: ${field.low} to ${field.high}${unit}, not ${value}.`);
  }
  return value;
}

/** A length of a shape for 16.5 mm gauge, mm, at another gauge: rounded to a whole `step`. */
export const inProportion =
  (mm: number, step = 10) =>
  ({ gaugeMm }: ShapeScale): number =>
    Math.max(step, Math.round((mm * gaugeMm) / 16.5 / step) * step);

/** Greatest speed of the usual engine, mm/s at 16.5 mm gauge, and the share of it that new trials are run at. */
const freeSpeedMmPerS = 600;
const setting = 0.6;

/** Coaches of the train that a new railway comes with. */
export const usualCoaches = 3;

/** Height of the scene's zero over the floor, mm: a table to stand at. Common practice, no source. */
const datumAboveFloorMm = 950;

/** A way that the usual train is tried on, there and back, pulled and propelled. */
export interface ShapeRun {
  /** What tells its trials from those of other ways, in their ids and names; left out for the only one. */
  readonly id?: string;
  readonly name?: string;
  /** The tracks it runs over. */
  readonly route: readonly SceneLeg[];
  /** What running it that way and the other way is called. */
  readonly ways: readonly [there: string, back: string];
}

interface ShapeParts {
  readonly name: string;
  readonly shows: string;
  readonly tracks: readonly SceneTrack[];
  readonly runs: readonly ShapeRun[];
  /** Of its train; left out for the usual number. */
  readonly coaches?: number;
}

/** The whole of one track as a way, from its start to its end. */
export const wholeTrack = (track: string, ways: ShapeRun['ways']): ShapeRun => ({
  route: [{ track, towards: 'end' }],
  ways,
});

/** A whole scene of some tracks: typical vehicles, one train, and four trials on each way. Throws RangeError in words when a track cannot be. */
export function shapedScene(scale: ShapeScale, parts: ShapeParts): Scene {
  const { name, shows, tracks, runs, coaches = usualCoaches } = parts;
  for (const track of tracks) {
    const problem = trackProblems(track, 'track')[0];
    if (problem !== undefined) throw new RangeError(`${track.name}: ${problem.found}; ${problem.allowed}.`);
  }
  const { couplings, stock, train } = usualStock(scale, coaches);
  return {
    gradewright: formatVersion,
    name,
    shows,
    scale: { name: scale.name, gaugeMm: scale.gaugeMm, ratio: scale.ratio },
    deck: { ...deckFor(scale), material: 'birch-ply' },
    room: { datumAboveFloorMm },
    tracks: [...tracks],
    couplings,
    stock,
    trains: [train],
    trials: runs.flatMap((run) => fourTrials(scale, tracks, run)),
  };
}

/** How a new trial over a way this long is driven, and how long it may take. */
export function drivenFor(scale: ShapeScale, lengthMm: number): Pick<SceneTrial, 'timeLimitS' | 'orders'> {
  const speed = (setting * freeSpeedMmPerS * scale.gaugeMm) / 16.5;
  return {
    // A train on a grade goes at half of what it does on the level, and slower before it stalls.
    timeLimitS: Math.min(3600, Math.ceil(30 + (3 * lengthMm) / speed)),
    orders: [{ atS: 0.5, setting, rampS: 3 }],
  };
}

/** There and back, pulled and propelled; the engine stands at the end of the train called "first". */
function fourTrials(
  scale: ShapeScale,
  tracks: readonly SceneTrack[],
  { id, name, route, ways }: ShapeRun,
): SceneTrial[] {
  const driven = drivenFor(scale, wayLengthMm(wayOf({ tracks }, { route: [...route] }) ?? []));
  const [only] = route;
  const whole = route.length === 1 && only.fromMm === undefined && only.toMm === undefined;
  return ([route, reversedRoute(route)] as const).flatMap((legs, way) =>
    (['first', 'last'] as const).map((leading): SceneTrial => {
      const working = leading === 'first' ? 'pulled' : 'propelled';
      return {
        id: `${id === undefined ? '' : `${id}-`}${working}-${ways[way]}`,
        name: `${working === 'pulled' ? 'Pulled' : 'Propelled'} ${ways[way]}${name === undefined ? '' : `, ${name}`}`,
        ...(whole ? { track: only.track, towards: legs[0].towards } : { route: [...legs] }),
        train: 'train',
        leading,
        ...driven,
      };
    }),
  );
}
