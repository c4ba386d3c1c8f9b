import type { Coupling } from '../../stock/types.ts';
import type { RiskContext, ValuePart } from '../types.ts';

/** The two halves of every joint of a train: rear of the leading vehicle, front of the trailing one. */
export function couplingHalves({ train: { vehicles } }: RiskContext): readonly (readonly [Coupling, Coupling])[] {
  return vehicles.slice(1).map((trailing, j) => [vehicles[j].rear.coupling, trailing.front.coupling] as const);
}

/**
 * What a height difference between two heads is made of, m: the heads as fitted, the track for the rest (pitch, overhang,
 * kink, vertical curve), and beside them what fitting and play may add or take.
 */
export function mismatchParts(verticalOffset: number, [leading, trailing]: readonly [Coupling, Coupling]): ValuePart[] {
  const fitted = Math.sign(verticalOffset || 1) * (leading.headHeight - trailing.headHeight);
  return [
    { label: 'fitted-heads', value: fitted },
    { label: 'track-geometry', value: Math.abs(verticalOffset) - fitted },
    { label: 'tolerance', value: leading.headHeightTolerance + trailing.headHeightTolerance },
  ];
}
