import { log } from '../../math/index.ts';
import { easementLength, gaugeMm, lengthOverBuffers, type Scale } from '../../stock/index.ts';
import { type PlanElement, straight, transition } from '../../track/index.ts';
import { ofLeg, type Part, partsNear } from '../part.ts';
import { jointReach, type Situation } from '../situation.ts';
import type { Cause } from '../types.ts';
import { type CurveChange, curveChangeNear } from './curves.ts';
import { type Candidate, settableAlong } from './explainer.ts';
import { marginIf } from './whatIf.ts';

/** Easements are set out in these steps, m. */
const easementStep = 0.05;

/** Easements tried, in lengths of the standard's, the shortest first. */
const easementLengths = [1, 1.5, 2];

/**
 * An easement where the curvature changes, and where two opposite curves meet a straight as long as the longest vehicle. Both are
 * tried on the spot: room for them is taken from the elements on either side in equal parts. Nothing where the two
 * vehicles stand in one plain curve: only a wider one would help there.
 */
export function curveCures(situation: Situation, causes: readonly Cause[]): Candidate[] {
  if (!causes.some(({ kind }) => kind === 'reverse-curve' || kind === 'curve-entry')) return [];
  const { trial, worst } = situation;
  const reach = 2 * jointReach(situation);
  return partsNear(trial.parts, worst.chainage, reach).flatMap((part) => {
    const change = curveChangeNear(part.track, part.own(worst.chainage), reach);
    if (change === null) return [];
    return [...easement(situation, part, change), ...straightBetween(situation, part, change)];
  });
}

/** The shortest easement, from the length of NEM 113 (2016) up, that lets the joint pass with something left, else the one that helps most. */
function easement(situation: Situation, part: Part, change: CurveChange): Candidate[] {
  const { context, worst, definition } = situation;
  const sharpest = Math.max(Math.abs(change.before), Math.abs(change.after));
  const standard = easementLength(nearestScale(context.train.vehicles[worst.subject].gauge), 1 / sharpest);
  let best: Candidate | null = null;
  for (const times of easementLengths) {
    const length = Math.round((times * standard) / easementStep) * easementStep;
    if (length < change.length + settableAlong) continue;
    const expected = marginWith(situation, part, change, transition(length, change.before, change.after));
    if (expected === null) break;
    const chainage = part.told(change.chainage);
    if (best === null || expected > best.expected)
      best = { cure: { kind: 'easement', chainage, length, ...ofLeg(part) }, expected };
    if (expected >= definition.near) break;
  }
  return best === null ? [] : [best];
}

/** The scale whose gauge is nearest to this one (m), in proportion. */
function nearestScale(gauge: number): Scale {
  const off = (scale: Scale): number => Math.abs(log((gauge * 1000) / gaugeMm[scale]));
  return (Object.keys(gaugeMm) as Scale[]).reduce((best, scale) => (off(scale) < off(best) ? scale : best));
}

function straightBetween(situation: Situation, part: Part, change: CurveChange): Candidate[] {
  // Where a transition runs from curve to curve there is no place for a straight, and none is needed.
  if (change.length > 0 || change.before * change.after >= 0) return [];
  const longest = Math.max(...situation.context.train.vehicles.map(lengthOverBuffers));
  const length = Math.ceil(longest / settableAlong - 1e-9) * settableAlong;
  const expected = marginWith(situation, part, change, straight(length));
  if (expected === null) return [];
  const chainage = part.told(change.chainage);
  return [{ cure: { kind: 'straight-between', chainage, length, ...ofLeg(part) }, expected }];
}

/** Margin with `piece` laid over the change of curvature; null where its neighbours have no room for it. */
function marginWith(situation: Situation, part: Part, change: CurveChange, piece: PlanElement): number | null {
  const { elements } = part.track.plan;
  const first = change.element - 1;
  const last = change.length > 0 ? change.element + 1 : change.element;
  const taken = (piece.length - change.length) / 2;
  const before = elements[first];
  const after = elements[last];
  if (before === undefined || after === undefined) return null;
  if (!canGive(before, taken) || !canGive(after, taken)) return null;
  const changed = [
    ...elements.slice(0, first),
    { ...before, length: before.length - taken },
    piece,
    { ...after, length: after.length - taken },
    ...elements.slice(last + 1),
  ];
  return marginIf(situation, { part, elements: changed }, jointReach(situation) + piece.length / 2);
}

/** A transition cannot be cut without changing its curve. */
const canGive = (element: PlanElement, length: number): boolean =>
  element.startCurvature === element.endCurvature && element.length > length;
