import { inMetres, TrackError } from '../problem.ts';
import type { GradePoint, HeightPieces } from '../types.ts';
import { PieceWriter } from './pieces.ts';

/** Curves may share their ends; an overlap below a nanometre is rounding of lengths given in millimetres. */
const OVERLAP_TOLERANCE = 1e-9;

function checkPoint(point: GradePoint, index: number, points: readonly GradePoint[]): void {
  const at = inMetres(point.chainage);
  if (!Number.isFinite(point.chainage + point.height)) {
    throw new TrackError('bad-grade-point', `Grade point ${index + 1} needs a finite chainage and height.`);
  }
  if (index > 0 && !(point.chainage > points[index - 1].chainage)) {
    const back = points[index - 1].chainage - point.chainage;
    const sentence = `Grade points must rise in chainage: the one at ${at} follows one that is ${inMetres(back)} further on.`;
    throw new TrackError('points-not-rising', sentence, point.chainage, back);
  }
  if (point.curve === undefined) return;
  const size = 'length' in point.curve ? point.curve.length : point.curve.radius;
  if (!(size >= 0) || !Number.isFinite(size)) {
    const sentence = `The vertical curve at chainage ${at} needs a length or radius of 0 or more, not ${size} m.`;
    throw new TrackError('bad-vertical-curve', sentence, point.chainage, size);
  }
}

/**
 * The planned heights over a track of `length`: straight grades between the points, rounded by symmetrical parabolas.
 *
 * The grade before the first and after the last point continues, so a curve there rounds nothing; one point alone is
 * level. A point without a curve counts as a curve of no length. A parabola of length L between grades g₁ and g₂ has d²z/ds² = (g₂-g₁)/L. Throws TrackError when points do not
 * rise, and when curves overlap or reach beyond the track, with the chainage and by how much.
 */
export function gradeLine(points: readonly GradePoint[], length: number): HeightPieces {
  if (points.length === 0) throw new TrackError('no-grade-points', 'A profile needs at least one grade point.');
  points.forEach(checkPoint);
  const line = new PieceWriter();
  const grades = points.slice(1).map((point, i) => {
    return (point.height - points[i].height) / (point.chainage - points[i].chainage);
  });
  line.add(points[0].chainage, points[0].height, grades[0] ?? 0);
  let roundedTo = points[0].chainage;
  for (let i = 1; i < points.length; i++) {
    const { chainage, height, curve } = points[i];
    const before = grades[i - 1];
    const after = grades[i] ?? before;
    const change = after - before;
    const half = change === 0 || curve === undefined ? 0 : halfLength(curve, change);
    if (half > 0) refuseBeyondEnds(chainage, half, length);
    const overlap = roundedTo - (chainage - half);
    if (overlap > OVERLAP_TOLERANCE) refuseOverlap(points[i - 1].chainage, chainage, overlap);
    // Curves that touch leave no straight between them; the run-in before the first point is kept.
    if (overlap >= 0 && i > 1) line.dropLast();
    if (half > 0) line.add(chainage - half, height - before * half, before, change / (4 * half));
    line.add(chainage + half, height + after * half, after);
    roundedTo = chainage + half;
  }
  return line.pieces();
}

function halfLength(curve: NonNullable<GradePoint['curve']>, change: number): number {
  return 'length' in curve ? curve.length / 2 : (curve.radius * Math.abs(change)) / 2;
}

function refuseBeyondEnds(chainage: number, half: number, length: number): void {
  const beyondStart = half - chainage;
  const beyondEnd = chainage + half - length;
  const beyond = Math.max(beyondStart, beyondEnd);
  if (beyond <= OVERLAP_TOLERANCE) return;
  const which = beyondStart >= beyondEnd ? 'start' : 'end';
  const sentence = `The vertical curve at chainage ${inMetres(chainage)} reaches ${inMetres(beyond)} beyond the ${which} of the track.`;
  throw new TrackError('curve-beyond-end', sentence, chainage, beyond);
}

function refuseOverlap(before: number, chainage: number, overlap: number): never {
  const pair = `chainage ${inMetres(before)} and ${inMetres(chainage)}`;
  throw new TrackError(
    'curves-overlap',
    `The vertical curves at ${pair} overlap by ${inMetres(overlap)}.`,
    chainage,
    overlap,
  );
}
