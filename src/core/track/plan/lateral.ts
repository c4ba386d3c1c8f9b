import { inMetres, TrackError } from '../problem.ts';
import { CHAINAGE_ROUNDING, sumPieces } from '../profile/pieces.ts';
import { bentStrip } from '../strip/strip.ts';
import type { HeightPieces, LateralSpec, PlanElement, RailKink } from '../types.ts';
import { elementStretch, plainElement } from './elementStretch.ts';

/** The elements of the line as laid, and by how much the heading jumps before each, rad. */
export interface LaidElements {
  readonly elements: readonly PlanElement[];
  readonly turns: readonly number[];
}

/** A change of slope smaller than this, rad, is rounding of the beam's solution. */
const TURN_ROUNDING = 1e-12;

function checkLateral({ points, kinks }: LateralSpec, length: number): void {
  const outer = [points[0], points[points.length - 1]];
  if (points.length === 1 || outer.some((point) => point !== undefined && point.offset !== 0)) {
    const sentence = 'Offsets of the rails need a place on the line, offset 0, at either end.';
    throw new TrackError('bad-lateral', sentence, outer[0]?.chainage);
  }
  points.forEach(({ chainage, offset }, index) => {
    const rises = index === 0 || chainage > points[index - 1].chainage;
    if (!Number.isFinite(chainage + offset) || !rises || chainage < 0 || chainage > length + CHAINAGE_ROUNDING) {
      const sentence = `Offset ${index + 1} of the rails, at chainage ${inMetres(chainage)}, must be on the track and further on than the one before.`;
      throw new TrackError('bad-lateral', sentence, chainage);
    }
  });
  for (const { chainage, turn, reach } of kinks) {
    const beyond = Math.max(reach - chainage, chainage + reach - length);
    if (!Number.isFinite(chainage + turn) || !(reach >= 0) || !(beyond <= CHAINAGE_ROUNDING)) {
      const sentence = `The kink at chainage ${inMetres(chainage)} and its reach of ${inMetres(reach)} to either side must lie on the track.`;
      throw new TrackError('bad-lateral', sentence, chainage, beyond);
    }
  }
}

/**
 * The rails to both sides of a joint as beams held at the reach and free at the joint. A cantilever of length r whose end is h off has the slope
 * 3h/2r there, so the joint turns by -3h/r: h = -turn·r/3.
 */
function kinkOffsets({ chainage, turn, reach }: RailKink): HeightPieces {
  const supports = [
    { chainage: chainage - reach, departure: 0 },
    { chainage, departure: (-turn * reach) / 3 },
    { chainage: chainage + reach, departure: 0 },
  ];
  return bentStrip({ supports, hinges: [chainage], clampedStart: true, clampedEnd: true });
}

/**
 * The planned elements as laid. Between holds the rails are weightless beams, so their offset n from the line has n″ linear in chainage;
 * the laid line has the curvature of the plan plus n″, which makes it a chain of clothoids again, exact in every query,
 * and turns at joints by the break of n′. It lies n off the plan
 * to first order: on a straight but for n′²; on a curve the offset also changes the length of the line by ∫κn ds, which is left
 * out, so that what follows lies beside the plan by up to that times the angle turned (0.1 mm for 1.5 mm over half a radian). Throws TrackError when offsets or kinks are not on the track.
 */
export function laidElements(elements: readonly PlanElement[], lateral: LateralSpec, length: number): LaidElements {
  checkLateral(lateral, length);
  const { points, hinges, kinks } = lateral;
  const parts = kinks.filter((kink) => kink.reach > 0).map(kinkOffsets);
  if (points.length > 0) {
    const supports = points.map(({ chainage, offset }) => ({ chainage, departure: offset }));
    parts.push(bentStrip({ supports, hinges, clampedStart: true, clampedEnd: true }));
  }
  const swings = kinks.filter((kink) => kink.reach === 0);
  const offsets = sumPieces(
    parts.length === 0 ? [straightFrom(0)] : parts,
    length,
    swings.map((kink) => kink.chainage),
  );
  const { startChainage, b, c, d } = offsets;
  const laid: PlanElement[] = [];
  const turns: number[] = [];
  startChainage.forEach((start, k) => {
    const end = k + 1 < startChainage.length ? startChainage[k + 1] : length;
    const swing = swings.filter((kink) => Math.abs(kink.chainage - start) <= CHAINAGE_ROUNDING);
    let turn = swing.reduce((sum, kink) => sum + kink.turn, 0);
    if (k > 0) {
      const t = start - startChainage[k - 1];
      const broken = b[k] - (b[k - 1] + t * (2 * c[k - 1] + t * 3 * d[k - 1]));
      if (Math.abs(broken) > TURN_ROUNDING) turn += broken;
    }
    let at = 0;
    for (const element of elementStretch(elements, start, end)) {
      const extra = (t: number): number => 2 * c[k] + 6 * d[k] * t;
      const { length: run, startCurvature, endCurvature } = element;
      const bent = plainElement(run, startCurvature + extra(at), endCurvature + extra(at + run));
      const untouched = c[k] === 0 && d[k] === 0;
      laid.push(untouched ? element : bent);
      turns.push(at === 0 ? turn : 0);
      at += run;
    }
  });
  return { elements: laid, turns };
}

const straightFrom = (chainage: number): HeightPieces => {
  const zero = Float64Array.of(0);
  return { startChainage: Float64Array.of(chainage), a: zero, b: zero, c: zero, d: zero, e: zero };
};
