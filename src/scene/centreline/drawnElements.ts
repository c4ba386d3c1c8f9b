import { atan, atan2, hypot, sin } from '../../core/math/index.ts';
import type { PlanElement } from '../../core/track/types.ts';
import type { DrawnLine, DrawnPoint } from './types.ts';

/** Pieces whose directions differ by less than this are tangent, rad: 0.06°, what a drawing with two decimals of a mm leaves on 20 mm. */
const tangentWithin = 1e-3;

/** A piece of a drawn line, m and rad. */
interface Piece {
  readonly length: number;
  readonly curvature: number;
  readonly heading: number;
  readonly turn: number;
}

/** A drawn line as it stands, when it has arcs, or is one straight, and its pieces meet as tangents; null when it has to be fitted. Heights are fitted too. */
export function drawnElements(
  line: DrawnLine,
): { readonly heading: number; readonly elements: readonly PlanElement[] } | null {
  if (line.some(({ zMm }) => zMm !== undefined)) return null;
  const pieces = line.slice(1).flatMap((point, i) => pieceOf(line[i], point) ?? []);
  if (pieces.length === 0 || (pieces.length > 1 && pieces.every(({ turn }) => turn === 0))) return null;
  const tangent = pieces.every(
    ({ heading }, i) =>
      i === 0 || Math.abs(aside(heading - pieces[i - 1].heading - pieces[i - 1].turn)) < tangentWithin,
  );
  if (!tangent) return null;
  const elements: PlanElement[] = [];
  for (const { length, curvature } of pieces) {
    const before = elements[elements.length - 1];
    // Halves of one arc, and straights in one line, are one element.
    if (before !== undefined && Math.abs(before.startCurvature - curvature) < 1e-6) {
      elements[elements.length - 1] = { ...before, length: before.length + length };
    } else {
      elements.push({
        kind: curvature === 0 ? 'straight' : 'arc',
        length,
        startCurvature: curvature,
        endCurvature: curvature,
      });
    }
  }
  return { heading: pieces[0].heading, elements };
}

function pieceOf(from: DrawnPoint, to: DrawnPoint): Piece | null {
  const chord = hypot(to.xMm - from.xMm, to.yMm - from.yMm) / 1000;
  if (chord === 0) return null;
  const turn = 4 * atan(from.bulge ?? 0);
  const along = atan2(to.yMm - from.yMm, to.xMm - from.xMm);
  if (turn === 0) return { length: chord, curvature: 0, heading: along, turn };
  const curvature = (2 * sin(turn / 2)) / chord;
  return { length: turn / curvature, curvature, heading: along - turn / 2, turn };
}

/** An angle from -π to π. */
const aside = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
