import { newTrackPoint, trackPoint } from '../../../core/track/index.ts';
import type { Track, TrackPoint } from '../../../core/track/types.ts';
import type { Surveyed } from '../../../state/types.ts';
import type { Comb, Tooth } from './comb.ts';
import type { Ground } from './ground.ts';
import { surveyReach } from './surveyMarks.ts';

/** The profile in pixels of its row. */
export interface ProfileDrawing {
  readonly line: string;
  /** The area from the line to the datum. */
  readonly fill: string;
  /** The same stretch of another track, or null. */
  readonly ghost: string | null;
  /** The line of another railway to the same scale, as far as it goes, or null. */
  readonly beside: string | null;
  readonly datum: number;
  /** y of the line at every whole pixel. */
  readonly ys: Float64Array;
  yAtX(x: number): number;
  /** y of a height in m. */
  yOf(height: number): number;
  /** Pixels a metre of height. */
  readonly perMetre: number;
}

/** From the top of the row to the highest rail: room for lettering. */
const HEADROOM = 26;
/** From the foot of the row up to the datum: the comb's room. */
const COMB_ROOM = 24;
/** The same where a survey marks its estimates over it. */
const SURVEYED_COMB_ROOM = 44;
/** The same without a comb. */
const FOOT = 8;
/** The lowest rail stands this far above the datum line, so that it is never mistaken for it. */
const STAND = 5;
/** Height differences below this are not stretched over the whole row, or a level track would look like a mountain. m */
const LEAST_RELIEF = 0.008;

const point: TrackPoint = newTrackPoint();

function heightsOf(track: Track, places: Float64Array): Float64Array {
  return places.map((place) => trackPoint(track, place, point).z);
}

/** Heights where the track is, NaN beyond its ends. */
const heightsAlong = (track: Track, places: Float64Array): Float64Array =>
  places.map((place) => (place >= 0 && place <= track.length ? trackPoint(track, place, point).z : Number.NaN));

/**
 * The rail as built over the ground, fitted to the row's height; `other` is drawn to the same scale. `fitted`, where it is given, is the track whose heights
 * fill the row instead: under a hand that drags, the scale must stay.
 */
export function profileOf(
  track: Track,
  ground: Ground,
  height: number,
  other: Track | null,
  fitted: Track = track,
  surveyed: Surveyed | null = null,
  beside: Track | null = null,
): ProfileDrawing {
  const heights = heightsOf(track, ground.places);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const besides = beside && heightsAlong(beside, ground.places);
  for (const z of [...(fitted === track ? heights : heightsOf(fitted, ground.places)), ...(besides ?? [])]) {
    if (Number.isNaN(z)) continue;
    low = Math.min(low, z);
    high = Math.max(high, z);
  }
  const datum = height - (hasComb(track) ? combRoom(surveyed) : FOOT);
  const lowest = datum - STAND;
  const perMetre = (lowest - HEADROOM) / Math.max(high - low, LEAST_RELIEF);
  const yOf = (z: number) => lowest - (z - low) * perMetre;
  const ys = heights.map(yOf);
  const last = ys.length - 1;
  const line = pathOf(ys);
  const yAtX = (x: number) => {
    const at = Math.min(last, Math.max(0, x));
    const below = Math.min(Math.max(0, last - 1), Math.floor(at));
    return ys[below] + (ys[Math.min(last, below + 1)] - ys[below]) * (at - below);
  };
  return {
    line,
    fill: `${line}L${last},${datum}L0,${datum}Z`,
    ghost: other ? pathOf(heightsOf(other, ground.places).map(yOf)) : null,
    beside: besides && pathOf(besides.map(yOf)),
    datum,
    ys,
    yAtX,
    yOf,
    perMetre,
  };
}

/** Points closer than this to the line between those kept are left out, px. */
const SMOOTH = 0.04;

function pathOf(ys: Float64Array): string {
  const first = ys.findIndex((y) => !Number.isNaN(y));
  if (first < 0) return '';
  const parts = [`M${first},${ys[first].toFixed(2)}`];
  let kept = first;
  for (let x = first + 1; x < ys.length && !Number.isNaN(ys[x]); x++) {
    const next = x + 1 < ys.length ? ys[x + 1] : Number.NaN;
    const straight = ys[kept] + ((next - ys[kept]) * (x - kept)) / (x + 1 - kept);
    // A long flat curve drifts by less than each point shows, so no stretch is longer than 16 px.
    if (Math.abs(straight - ys[x]) < SMOOTH && x - kept < 16) continue;
    parts.push(`L${x},${ys[x].toFixed(2)}`);
    kept = x;
  }
  return parts.join('');
}

const PER_MILLIMETRE = 6;
/** Between the datum and the longest tooth, and from the lowest tooth to the foot of the row. */
const COMB_GAP = 2;
/** Room below the baseline when nothing needs more. */
const BELOW = 5;
/** Even a support built to the hair is there. */
const LEAST_TOOTH = 0.5;

const hasComb = (track: Track): boolean => (track.spec.profile.strip?.supports.length ?? 0) > 0;

const combRoom = (surveyed: Surveyed | null): number => (surveyed === null ? COMB_ROOM : SURVEYED_COMB_ROOM);

/** Null for a track that names no supports. Drawn to the scale of another comb if one is given, so that the two can be compared. */
export function combOf(
  track: Track,
  ground: Ground,
  height: number,
  surveyed: Surveyed | null = null,
  scaled: Pick<Comb, 'baseline' | 'perMillimetre'> | null = null,
): Comb | null {
  const supports = track.spec.profile.strip?.supports;
  if (!supports || !hasComb(track)) return null;
  const { baseline, perMillimetre } = scaled ?? combScale(supports, height, surveyed);
  const teeth = supports.flatMap(({ chainage, departure }, index) =>
    ground.xsOf(chainage).map((x, turn): Tooth => {
      const size = Math.max(LEAST_TOOTH, Math.abs(departure) * 1000 * perMillimetre);
      return {
        key: `${index}.${turn}`,
        x,
        chainage,
        departure,
        top: departure > 0 ? baseline - size : baseline,
        height: size,
      };
    }),
  );
  return { baseline, perMillimetre, teeth };
}

function combScale(supports: readonly { readonly departure: number }[], height: number, surveyed: Surveyed | null) {
  const reach = surveyReach(surveyed);
  let up = reach.up * 1000;
  let down = reach.down * 1000;
  for (const { departure } of supports) {
    up = Math.max(up, departure * 1000);
    down = Math.max(down, -departure * 1000);
  }
  const room = combRoom(surveyed) - 2 * COMB_GAP + 1;
  const perMillimetre = Math.min(PER_MILLIMETRE, room / Math.max(up + down, 1e-9));
  // The baseline sits as on a desk drawing unless departures downward need more room.
  const below = Math.min(Math.max(BELOW, down * perMillimetre), room - up * perMillimetre);
  return { baseline: height - 1 - below, perMillimetre };
}
