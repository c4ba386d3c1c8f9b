import { trackPoint } from '../point.ts';
import { inMetres, TrackError } from '../problem.ts';
import { CHAINAGE_ROUNDING, PieceWriter } from '../profile/pieces.ts';
import type { CantPoint, HeightPieces, HeldHeights, PlanElement, Track, TrackSpec } from '../types.ts';
import { elementStretch, plainElement } from './elementStretch.ts';
import type { Turnout } from './turnout.ts';

/** Where a branch begins and what its main track fixes of it. */
export interface BranchStart {
  readonly start: TrackSpec['start'];
  /** The diverging track of the turnout, bent with the main track. */
  readonly elements: readonly PlanElement[];
  /** Heights as built over the turnout. */
  readonly held: HeldHeights;
  /** Cant over the turnout; none when the main track has none. */
  readonly cant: readonly CantPoint[];
}

/**
 * The start of a track that leaves `main` at chainage `at`, m, in the direction of growing chainage, through a turnout. (For the other
 * direction give the reversed track.) The turnout bends with the main track: curvatures add, lengths along the diverging track
 * shrink to those along the main by the ratio they have on straight track. Heights and cant are the main track's, opposite. Throws
 * TrackError when the turnout does not lie on the main track.
 */
export function branchStart(main: Track, at: number, turnout: Turnout): BranchStart {
  const beyond = Math.max(-at, at + turnout.through - main.length);
  if (!(beyond <= CHAINAGE_ROUNDING)) {
    const sentence = `The turnout at chainage ${inMetres(at)} reaches ${inMetres(beyond)} beyond the track it lies in.`;
    throw new TrackError('bad-branch', sentence, at, beyond);
  }
  const ratio = turnout.through / turnout.diverging;
  const { x, y, heading } = trackPoint(main, at);
  const under = elementStretch(main.plan.elements, at, at + turnout.through).map((element) => ({
    ...element,
    length: element.length / ratio,
  }));
  return {
    start: { x, y, heading },
    elements: addedCurvatures(turnout.elements, under),
    held: { from: 0, to: turnout.diverging, pieces: scaledPieces(main.profile, at, ratio) },
    cant: cantOpposite(main, at, turnout.diverging, ratio),
  };
}

/** Two chains of one length as one whose curvature is the sum. */
function addedCurvatures(chain: readonly PlanElement[], under: readonly PlanElement[]): PlanElement[] {
  const ends = [chain, under].flatMap((elements) => {
    let end = 0;
    return elements.map((element) => (end += element.length));
  });
  const added: PlanElement[] = [];
  let from = 0;
  for (const to of ends.sort((p, q) => p - q)) {
    if (to - from <= CHAINAGE_ROUNDING) continue;
    const [one] = elementStretch(chain, from, to);
    const [other] = elementStretch(under, from, to);
    if (one !== undefined && other !== undefined) {
      added.push(
        plainElement(to - from, one.startCurvature + other.startCurvature, one.endCurvature + other.endCurvature),
      );
    }
    from = to;
  }
  return added;
}

/** The heights of a profile by t, where its own chainage is `at` + ratio·t. */
function scaledPieces(profile: HeightPieces, at: number, ratio: number): HeightPieces {
  const scaled = new PieceWriter();
  const { startChainage, a, b, c, d, e } = profile;
  for (let k = 0; k < startChainage.length; k++) {
    const r2 = ratio * ratio;
    scaled.add((startChainage[k] - at) / ratio, a[k], b[k] * ratio, c[k] * r2, d[k] * r2 * ratio, e[k] * r2 * r2);
  }
  return scaled.pieces();
}

function cantOpposite(main: Track, at: number, length: number, ratio: number): CantPoint[] {
  if (main.cant === null) return [];
  const knots = [...main.cant.startChainage].map((s) => (s - at) / ratio);
  const inside = knots.filter((t) => t > CHAINAGE_ROUNDING && t < length - CHAINAGE_ROUNDING);
  return [0, ...inside, length].map((t) => ({ chainage: t, cant: trackPoint(main, at + ratio * t).cant }));
}
