import { pieceAt } from '../profile/pieces.ts';
import type { HeightPieces, StripSpec } from '../types.ts';
import { bentStrip, HINGE_AT_SUPPORT, unbridgedStrip } from './strip.ts';

/** What a strip is doing at one place. */
export interface BeamState {
  /** Departure from the plan, m, up; its slope. */
  readonly departure: number;
  readonly slope: number;
  /** Bending moment, N·m, positive where the strip is hollow (its underside stretched); shear d(moment)/ds, N. */
  readonly moment: number;
  readonly shear: number;
}

function stateOf(strip: StripSpec, pieces: HeightPieces, k: number, s: number): BeamState {
  const t = s - pieces.startChainage[k];
  const [a, b, c, d, e] = [pieces.a[k], pieces.b[k], pieces.c[k], pieces.d[k], pieces.e[k]];
  const { sections = [] } = strip;
  const started = sections.filter((section) => section.from <= pieces.startChainage[k] + HINGE_AT_SUPPORT);
  const stiffness = (started[started.length - 1] ?? sections[0])?.stiffness ?? Number.NaN;
  return {
    departure: a + t * (b + t * (c + t * (d + t * e))),
    slope: b + t * (2 * c + t * (3 * d + t * 4 * e)),
    moment: stiffness * (2 * c + t * (6 * d + t * 12 * e)),
    shear: stiffness * (6 * d + t * 24 * e),
  };
}

/**
 * Departure, slope, moment and shear of a strip at chainage `s`, m, as it is soon after loading: without creep. Moment and
 * shear are NaN for a strip without sections, which has no stiffness. Throws TrackError as `bentStrip` does.
 */
export function beamState(strip: StripSpec, s: number): BeamState {
  const short = { ...strip, creep: 0 };
  const pieces = bentStrip(short);
  return stateOf(short, pieces, pieceAt(pieces, s), s);
}

/**
 * What every support carries, N, upward, in their order; negative where it has to hold the strip down. Creep is left out: it
 * deepens the sag, but in a strip of one material it moves no load. Throws RangeError when the strip has no sections.
 */
export function beamReactions(strip: StripSpec): number[] {
  if (strip.sections === undefined || strip.sections.length === 0) {
    throw new RangeError('Only a strip with a stiffness has reactions: give it a section.');
  }
  const short = { ...strip, creep: 0 };
  const pieces = unbridgedStrip(short);
  return strip.supports.map(({ chainage }) => {
    const k = pieceAt(pieces, chainage);
    const standing = (strip.loads ?? []).filter((load) => load.chainage === chainage);
    const onIt = standing.reduce((sum, load) => sum + load.force, 0);
    return stateOf(short, pieces, k, chainage).shear - stateOf(short, pieces, k - 1, chainage).shear + onIt;
  });
}

/**
 * How far a weight of `force`, N, presses the strip down where it stands, chainage `s`, m: m, positive. Throws TrackError
 * when the strip has no sections or holds nothing there.
 */
export function beamSag(strip: StripSpec, force: number, s: number): number {
  const { steps: _steps, ...plain } = strip;
  const supports = strip.supports.map(({ chainage }) => ({ chainage, departure: 0 }));
  const sections = strip.sections?.map((section) => ({ ...section, weight: 0 }));
  const pressed = { ...plain, supports, ...(sections && { sections }), loads: [{ chainage: s, force }] };
  return 0 - beamState(pressed, s).departure;
}
