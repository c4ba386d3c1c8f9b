import { extremeGrades, type LimitSet, limitSet } from './limitRows.ts';
import { type LineInput, lineShape } from './lineShape.ts';
import type { Limits } from './types.ts';

/**
 * Steeper or flatter than the plan by this much is let pass where nothing is said: half a per cent, what a curve of 20 in radius
 * is said to add to a train's drag (common practice, no source).
 */
const gradeAllowance = 0.005;

/** A gap of 1/16 in under a straightedge of 12 in, c²/8s (a modular group's guideline; common practice, no source), m. */
const straightedgeRadius = (0.3048 * 0.3048) / (8 * 0.0015875);

/**
 * Limits for a line of which only the plan is known: grades within half a per cent of the plan's steepest and flattest, no grade
 * against a climb that is steady, vertical curves no sharper than 7.3 m or the plan's own, changes of at most 10 mm.
 */
export function usualLimits(input: LineInput): Limits {
  const shape = lineShape(input);
  const level = new Float64Array(input.supports.length);
  const plan: LimitSet = limitSet(shape, { leastRadius: 1 }, []);
  const greatest = extremeGrades(plan, level, 1).reduce((most, { grade }) => Math.max(most, grade), -1);
  const least = extremeGrades(plan, level, -1).reduce((most, { grade }) => Math.min(most, grade), 1);
  const sharpest = plan.rows.reduce((most, { planned }) => Math.max(most, Math.abs(planned)), 0);
  const against = gradeAgainst(greatest, least);
  return {
    greatestGrade: Math.min(greatest + gradeAllowance, against.greatest),
    leastGrade: Math.max(least - gradeAllowance, against.least),
    leastRadius: sharpest > 0 ? Math.min(straightedgeRadius, 1 / sharpest) : straightedgeRadius,
    largestRise: 0.01,
    largestDrop: 0.01,
  };
}

/** Where the plan climbs throughout (or falls throughout), nothing may run against it. */
function gradeAgainst(greatest: number, least: number): { greatest: number; least: number } {
  const none = { greatest: Number.POSITIVE_INFINITY, least: Number.NEGATIVE_INFINITY };
  if (least > 0) return { ...none, least: 0 };
  if (greatest < 0) return { ...none, greatest: 0 };
  return none;
}
