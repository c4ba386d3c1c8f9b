import type { Track } from '../types.ts';

/** A stretch of one planned grade, between the places where grades meet. */
export interface GradeLine {
  readonly from: number;
  readonly to: number;
  /** dz/ds */
  readonly grade: number;
}

/** A place where two planned grades meet. */
export interface PlannedBreak {
  readonly chainage: number;
  /** Height of the vertical intersection, m. */
  readonly height: number;
  /** Plan length of the vertical curve there, m; 0 without one. */
  readonly curve: number;
}

/** Grades that differ by less than this are one: 0.01 mm in a metre, finer than anything that can be built. */
const SAME_GRADE = 1e-5;

/** The planned grades from end to end (m), neighbours of equal grade as one. */
export function gradeLines(track: Track): GradeLine[] {
  const { points } = track.spec.profile;
  const lines: GradeLine[] = [];
  for (let k = 0; k + 1 < points.length; k++) {
    const here = points[k];
    const next = points[k + 1];
    const grade = (next.height - here.height) / (next.chainage - here.chainage);
    const before = lines[lines.length - 1];
    if (before && Math.abs(before.grade - grade) < SAME_GRADE) {
      lines[lines.length - 1] = { ...before, to: next.chainage };
    } else {
      lines.push({ from: here.chainage, to: next.chainage, grade });
    }
  }
  if (lines.length === 0) return [{ from: 0, to: track.length, grade: 0 }];
  // Beyond its first and last point a profile keeps its grade.
  lines[0] = { ...lines[0], from: 0 };
  lines[lines.length - 1] = { ...lines[lines.length - 1], to: track.length };
  return lines.filter((line) => line.to > line.from);
}

/** Where planned grades meet, in order of chainage. */
export function plannedBreaks(track: Track): PlannedBreak[] {
  const lines = gradeLines(track);
  return lines.slice(1).map((line, k) => {
    const point = track.spec.profile.points.find((candidate) => candidate.chainage === line.from);
    const turn = Math.abs(line.grade - lines[k].grade);
    const curve = point?.curve;
    const length = curve === undefined ? 0 : 'length' in curve ? curve.length : curve.radius * turn;
    return { chainage: line.from, height: point?.height ?? Number.NaN, curve: length };
  });
}

/** Turns of the plan between two chainages, all to one side; 0 where the curve changes sides. */
export function turnsBetween(track: Track, from: number, to: number): number {
  const { startChainage, startCurvature, sharpness } = track.plan;
  let left = 0;
  let right = 0;
  for (let k = 0; k < startChainage.length; k++) {
    const start = startChainage[k];
    const a = Math.max(from, start);
    const b = Math.min(to, k + 1 < startChainage.length ? startChainage[k + 1] : track.length);
    if (b <= a) continue;
    const middle = startCurvature[k] + sharpness[k] * ((a + b) / 2 - start);
    if (middle > 0) left += middle * (b - a);
    else right -= middle * (b - a);
  }
  return Math.min(left, right) > 0.1 ? 0 : (left + right) / (2 * Math.PI);
}

/** The steepest place of the track as built, found on a grid of `every` m. */
export function steepest(gradeAt: (chainage: number) => number, length: number, every: number): GradeAtPlace {
  let best: GradeAtPlace = { chainage: 0, grade: gradeAt(0) };
  const count = Math.ceil(length / every);
  for (let k = 1; k <= count; k++) {
    const chainage = Math.min(length, k * every);
    const grade = gradeAt(chainage);
    if (Math.abs(grade) > Math.abs(best.grade) + SAME_GRADE) best = { chainage, grade };
  }
  return best;
}

export interface GradeAtPlace {
  readonly chainage: number;
  readonly grade: number;
}
