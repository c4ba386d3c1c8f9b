import { inMetres, TrackError } from '../problem.ts';
import { PieceWriter, pieceAt } from '../profile/pieces.ts';
import type { HeightPieces, StripStep } from '../types.ts';

/** A step this near a hinge, m, is at it. */
const STEP_AT_HINGE = 1e-6;

/** Refuses steps that are at no hinge, have no length to be bridged over, or run into each other. */
export function checkSteps(steps: readonly StripStep[], hinges: readonly number[]): void {
  steps.forEach(({ chainage, rise, over }, index) => {
    const at = inMetres(chainage);
    if (!Number.isFinite(chainage + rise) || !(over > 0) || !Number.isFinite(over)) {
      throw new TrackError(
        'bad-step',
        `The step at chainage ${at} needs a finite rise and a length over 0 m.`,
        chainage,
      );
    }
    if (!hinges.some((hinge) => Math.abs(hinge - chainage) <= STEP_AT_HINGE)) {
      throw new TrackError('bad-step', `The step at chainage ${at} is at no joint of the strip.`, chainage);
    }
    if (index === 0) return;
    const last = steps[index - 1];
    const overlap = last.chainage + last.over / 2 - (chainage - over / 2);
    if (overlap > 0) {
      const sentence = `The steps at chainage ${inMetres(last.chainage)} and ${at} are bridged over lengths that overlap by ${inMetres(overlap)}.`;
      throw new TrackError('bad-step', sentence, chainage, overlap);
    }
  });
}

/** How much higher the strip goes on after a joint at `chainage`, m. */
export const stepAt = (steps: readonly StripStep[], chainage: number): number =>
  steps.find((step) => Math.abs(step.chainage - chainage) <= STEP_AT_HINGE)?.rise ?? 0;

/**
 * The pieces with every step bridged: rail and sleepers lie on both strips but not on the step itself, so between the two
 * ends of the bridge the line is the cubic that meets height and slope of both: a beam clamped to either strip. Its greatest
 * slope is 1.5 times the rise over the length, and the grade has no break left at the joint.
 */
export function bridgeSteps(pieces: HeightPieces, steps: readonly StripStep[]): HeightPieces {
  const bridged = new PieceWriter();
  const { startChainage, a, b, c, d, e } = pieces;
  const sorted = [...steps].sort((p, q) => p.chainage - q.chainage);
  const at = (k: number, s: number): readonly number[] => {
    const t = s - startChainage[k];
    return [
      a[k] + t * (b[k] + t * (c[k] + t * (d[k] + t * e[k]))),
      b[k] + t * (2 * c[k] + t * (3 * d[k] + t * 4 * e[k])),
      c[k] + t * (3 * d[k] + t * 6 * e[k]),
      d[k] + t * 4 * e[k],
      e[k],
    ];
  };
  let k = 0;
  for (const { chainage, over } of sorted) {
    const [from, to] = [chainage - over / 2, chainage + over / 2];
    for (; k < startChainage.length && startChainage[k] < from; k++) {
      bridged.add(startChainage[k], a[k], b[k], c[k], d[k], e[k]);
    }
    const [y0, g0] = at(pieceAt(pieces, from), from);
    const after = pieceAt(pieces, to);
    const [y1, g1, c1, d1, e1] = at(after, to);
    const rise = (y1 - y0) / over;
    bridged.add(from, y0, g0, (3 * rise - 2 * g0 - g1) / over, (g0 + g1 - 2 * rise) / (over * over));
    bridged.add(to, y1, g1, c1, d1, e1);
    k = after + 1;
  }
  for (; k < startChainage.length; k++) bridged.add(startChainage[k], a[k], b[k], c[k], d[k], e[k]);
  return bridged.pieces();
}
