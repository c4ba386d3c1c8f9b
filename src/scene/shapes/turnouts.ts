import { cos, sin } from '../../core/math/index.ts';
import { leastRadiusH0Mm } from '../../core/stock/standards/index.ts';
import { crossingAngle, turnout } from '../../core/track/index.ts';
import { tidy } from '../edits/tidy.ts';
import type { SceneBranch, SceneElement } from '../schema/trackSchema.ts';
import type { Because, ShapeScale } from './scales.ts';

/** A turnout with a straight crossing of 1 in so many, of the largest radius that ends at its nose. */
export interface ShapeTurnout {
  readonly angle: number;
  readonly radiusMm: number;
  /** Straight before the curve. */
  readonly frontMm: number;
  /** Along the straight track, and along the diverging one, from the front joint to the heel. */
  readonly throughMm: number;
  readonly divergingMm: number;
  /** Between the two at the heel. */
  readonly offsetMm: number;
  readonly because: Because;
  /** The turnout as the file has it. */
  to(hand: 'left' | 'right'): SceneBranch['turnout'];
}

export type Hand = 'left' | 'right';

export const otherHand = (hand: Hand): Hand => (hand === 'left' ? 'right' : 'left');

/** Straight before the curve and diverging track beyond the nose, in gauges: 20 and 40 mm at 16.5 mm. Common practice, no source. */
const frontInGauges = 20 / 16.5;
const heelInGauges = 40 / 16.5;

const tenth = (mm: number): number => Math.round(mm * 10) / 10;

/** 1 - cos x without the loss of digits at small angles. */
const versine = (x: number): number => 2 * sin(x / 2) * sin(x / 2);

/** A turnout of a scale with a crossing of 1 in `oneIn`, measured square to one leg. */
export function turnoutFor(scale: Pick<ShapeScale, 'gaugeMm'>, oneIn: number): ShapeTurnout {
  const { gaugeMm } = scale;
  const angle = crossingAngle(oneIn, 'right-angle');
  // The outer rail has crossed the gauge just at the nose.
  const radiusMm = Math.floor(gaugeMm / versine(angle) - gaugeMm / 2);
  const frontMm = tenth(frontInGauges * gaugeMm);
  const heelMm = tenth(heelInGauges * gaugeMm);
  const made = turnout({
    hand: 'left',
    gauge: gaugeMm / 1000,
    radius: radiusMm / 1000,
    crossingAngle: angle,
    front: frontMm / 1000,
    heel: heelMm / 1000,
  });
  const leastMm = Math.round((leastRadiusH0Mm['station-side'].A * gaugeMm) / 16.5);
  return {
    angle,
    radiusMm,
    frontMm,
    throughMm: made.through * 1000,
    divergingMm: made.diverging * 1000,
    offsetMm: made.offset * 1000,
    because: {
      what: `Turnouts of 1 in ${oneIn} and ${radiusMm} mm radius`,
      source: `tan α = 1/${oneIn}, the largest radius that ends at the nose; NEM 111 (a club's print): ${leastMm} mm or more in stations, by gauge`,
    },
    to: (hand) => ({ hand, radiusMm, gaugeMm, crossing: { oneIn }, frontMm, heelMm }),
  };
}

/** The way from the heel of a turnout to a track parallel to the one it left. */
export interface WayBeside {
  readonly elements: readonly SceneElement[];
  /** Along the track it left, from the front joint to where it is parallel, and the length run by then, mm. */
  readonly alongMm: number;
  readonly lengthMm: number;
}

/**
 * From the heel straight on at the angle of the crossing, and back by a curve of the turnout's radius: parallel at `asideMm`. Throws RangeError, in words, where the
 * two curves alone take more.
 */
export function wayBeside(turnout: ShapeTurnout, hand: Hand, asideMm: number): WayBeside {
  const { angle, radiusMm, frontMm, throughMm, divergingMm, offsetMm } = turnout;
  const leftMm = (asideMm - offsetMm - radiusMm * versine(angle)) / sin(angle);
  if (leftMm < 0) {
    const least = Math.ceil(offsetMm + radiusMm * versine(angle));
    throw new RangeError(
      `Turnouts of ${radiusMm} mm radius that begin ${frontMm} mm ahead need tracks ${least} mm apart or more.`,
    );
  }
  const straight: SceneElement[] = leftMm > 0 ? [{ kind: 'straight', lengthMm: tidy(leftMm) }] : [];
  return {
    elements: [...straight, { kind: 'arc', radiusMm, turn: otherHand(hand), angleDeg: (angle * 180) / Math.PI }],
    alongMm: throughMm + leftMm * cos(angle) + radiusMm * sin(angle),
    lengthMm: divergingMm + leftMm + radiusMm * angle,
  };
}
