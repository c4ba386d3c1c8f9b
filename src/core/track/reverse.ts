import { reversedElements } from './plan/elementStretch.ts';
import { trackPoint } from './point.ts';
import { mirroredPieces } from './profile/pieces.ts';
import { stepAt } from './strip/stripSteps.ts';
import { makeTrack } from './track.ts';
import type {
  CantPoint,
  CantSpec,
  HeldHeights,
  LateralSpec,
  ProfileSpec,
  StripSection,
  StripSpec,
  StripStep,
  SupportDeparture,
  Track,
} from './types.ts';

/**
 * The same track run the other way: chainage s becomes length - s, heading gains π, curvature, grade and cant change sign.
 */
export function reverseTrack(track: Track): Track {
  const { spec, length } = track;
  const end = trackPoint(track, length);
  return makeTrack({
    start: { x: end.x, y: end.y, heading: end.heading + Math.PI },
    elements: reversedElements(spec.elements),
    profile: reverseProfile(spec.profile, length),
    ...(spec.cant === undefined ? {} : { cant: reverseCant(spec.cant, length) }),
    ...(spec.lean && { lean: reverseCants(spec.lean, length) }),
    ...(spec.lateral && { lateral: reverseLateral(spec.lateral, length) }),
  });
}

/** The same places counted from the other end. */
const mirror = <T extends { readonly chainage: number }>(places: readonly T[], length: number): T[] =>
  [...places].reverse().map((place) => ({ ...place, chainage: length - place.chainage }));

/** The high rail stays the high rail, but left and right change places. */
const reverseCants = (points: readonly CantPoint[], length: number): CantPoint[] =>
  mirror(points, length).map((point) => ({ ...point, cant: -point.cant }));

const reverseCant = (cant: CantSpec, length: number): CantSpec => ({
  ...cant,
  points: reverseCants(cant.points, length),
});

/** Left and right change places, and with them the signs of offsets and turns. */
const reverseLateral = ({ points, hinges, kinks }: LateralSpec, length: number): LateralSpec => ({
  points: mirror(points, length).map((point) => ({ ...point, offset: 0 - point.offset })),
  hinges: hinges.map((hinge) => length - hinge).reverse(),
  kinks: mirror(kinks, length).map((kink) => ({ ...kink, turn: 0 - kink.turn })),
});

const reverseHeld = ({ from, to, pieces }: HeldHeights, length: number): HeldHeights => ({
  from: length - to,
  to: length - from,
  pieces: mirroredPieces(pieces, length, to),
});

function reverseProfile(profile: ProfileSpec, length: number): ProfileSpec {
  const { strip, measured, held } = profile;
  return {
    points: mirror(profile.points, length),
    ...(strip && { strip: reverseStrip(strip, length) }),
    ...(measured && {
      measured: {
        ...measured,
        heights: mirror(measured.heights, length),
        hinges: measured.hinges.map((hinge) => length - hinge).reverse(),
      },
    }),
    ...(held && { held: held.map((one) => reverseHeld(one, length)).reverse() }),
  };
}

function reverseStrip(strip: StripSpec, length: number): StripSpec {
  const { supports, hinges, steps, sections, loads, creep, clampedStart, clampedEnd } = strip;
  return {
    supports: mirror(
      supports.map((support) => risenSupport(support, steps)),
      length,
    ),
    hinges: hinges.map((hinge) => length - hinge).reverse(),
    ...(steps && { steps: mirror(steps, length).map((step) => ({ ...step, rise: -step.rise })) }),
    ...(sections && { sections: reverseSections(sections, length) }),
    ...(loads && { loads: mirror(loads, length) }),
    ...(creep !== undefined && { creep }),
    ...(clampedEnd !== undefined && { clampedStart: clampedEnd }),
    ...(clampedStart !== undefined && { clampedEnd: clampedStart }),
  };
}

/** A support under a stepped joint says where the strip that came first lies: now that is the other one. */
const risenSupport = (support: SupportDeparture, steps: readonly StripStep[] = []): SupportDeparture => ({
  ...support,
  departure: support.departure + stepAt(steps, support.chainage),
});

/** A section now starts where it used to end; the one that was last holds from the first, wherever that is. */
const reverseSections = (sections: readonly StripSection[], length: number): StripSection[] =>
  sections
    .filter((section, i) => i === 0 || section.from < length)
    .map((section, i, kept) => ({ ...section, from: length - (kept[i + 1]?.from ?? length) }))
    .reverse();
