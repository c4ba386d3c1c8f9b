import { type Standing, standingOf } from '../standing.ts';
import type { Cause, Finding } from '../types.ts';
import { ofTrack, type Show, showForce, showGrade, showRadius, showSmall } from './show.ts';

/** The cause of a kind, if the finding has one. */
export function causeOf<K extends Cause['kind']>(finding: Finding, kind: K): Extract<Cause, { kind: K }> | undefined {
  return finding.causes.find((cause): cause is Extract<Cause, { kind: K }> => cause.kind === kind);
}

/** A sentence with its first letter raised. */
export const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** `support 14 is 2.5 mm high`; empty without one. */
export function supportClause(finding: Finding, show: Show): string {
  const cause = causeOf(finding, 'support-off');
  if (cause === undefined) return '';
  const { support, departure, leg } = cause;
  return `support ${support + 1}${ofTrack(leg, show)} is ${showSmall(Math.abs(departure), show)} ${departure > 0 ? 'high' : 'low'}`;
}

/** `the grade breaks from 1.9 to 2.9 %`, `… from 1 in 52 to 1 in 34`, with the way it goes where that differs or falls. */
export function breakClause(finding: Finding, show: Show): string {
  const cause = causeOf(finding, 'kink');
  if (cause === undefined) return '';
  const { before, after } = cause;
  const way = (grade: number): string => (grade < 0 ? ' down' : ' up');
  const [first, second] = [showGrade(before, show), showGrade(after, show)];
  if (Math.sign(before) * Math.sign(after) < 0) {
    return `the grade breaks from ${first}${way(before)} to ${second}${way(after)}`;
  }
  const short = show.gradeForm === 'percent' ? first.replace(/\D+$/u, '') : first;
  return `the grade breaks from ${short} to ${second}${before + after < 0 ? ' down' : ''}`;
}

/** `in the reverse curve of 438 mm radius`; empty on straight track. */
export function curveClause(finding: Finding, show: Show): string {
  const reverse = causeOf(finding, 'reverse-curve');
  if (reverse !== undefined) return `in the reverse curve of ${showRadius(reverse.radius, show)} radius`;
  const entry = causeOf(finding, 'curve-entry');
  if (entry !== undefined) return `where the curve of ${showRadius(entry.radius, show)} radius begins`;
  const curve = causeOf(finding, 'curve');
  return curve === undefined ? '' : `in the curve of ${showRadius(curve.radius, show)} radius`;
}

/** `as a run-in of 0.55 N arrives`, `pushed with 0.55 N`, `afloat and about to close`; empty where nothing is known. */
export function loadClause(finding: Finding): string {
  const buff = causeOf(finding, 'buff');
  if (buff !== undefined) {
    if (buff.force === 0) return 'while the joint floats and is about to close';
    return buff.sudden ? `as a run-in of ${showForce(buff.force)} arrives` : `under a push of ${showForce(buff.force)}`;
  }
  const draft = causeOf(finding, 'draft');
  if (draft === undefined) return '';
  if (draft.force === 0) return 'while the joint floats and is about to stretch';
  return draft.sudden
    ? `as a run-out of ${showForce(draft.force)} arrives`
    : `under a pull of ${showForce(draft.force)}`;
}

/** `on 1 in 34 up in the curve of 438 mm radius`; empty on the level straight. */
export function routeClause(finding: Finding, show: Show): string {
  const grade = causeOf(finding, 'grade');
  const on = grade === undefined ? '' : `on ${showGrade(grade.grade, show)} ${grade.grade < 0 ? 'down' : 'up'}`;
  return [on, curveClause(finding, show)].filter((part) => part !== '').join(', ');
}

/** `the vertical curve there has a radius of 5.2 m`; empty without one. */
export function verticalCurveClause(finding: Finding, show: Show): string {
  const cause = causeOf(finding, 'vertical-curve');
  return cause === undefined ? '' : `the vertical curve has a radius of ${showRadius(cause.radius, show)}`;
}

/** The form of words for how a finding stands: it fails, may fail as built, comes near, or passes. */
export const byStanding = <T>(finding: Finding, forms: Readonly<Record<Standing, T>>): T => forms[standingOf(finding)];
