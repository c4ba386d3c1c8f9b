import type { Vehicle } from '../../stock/types.ts';
import { ofLeg, type Part, partsNear } from '../part.ts';
import { jointReach, type Situation } from '../situation.ts';
import { type Candidate, settableAlong } from './explainer.ts';
import { bestSupportNear } from './supports.ts';
import { marginIf } from './whatIf.ts';

/** Lengths of vertical curve tried, in lengths of the longer vehicle. Source: common practice, 1 to 1.5 lengths and up. */
const curveLengths = [1, 1.5, 2, 3];

/** A builder sets out curves in these steps, m. */
const roundTo = 0.05;

/** What can bring two heads nearer to level: a support, a spliced strip joint, a vertical curve, or the heads themselves. */
export function headCures(situation: Situation): Candidate[] {
  const { context, worst } = situation;
  const vehicles = context.train.vehicles.slice(worst.subject, worst.subject + 2);
  const longest = Math.max(...vehicles.map((vehicle) => vehicle.bodyLength));
  return [...heightCures(situation, jointReach(situation), longest), ...matchCure(situation)];
}

/** What in the track's heights within `reach` (m) of the place can be mended for a vehicle of a length (m): a support, a strip joint, a vertical curve. */
export function heightCures(situation: Situation, reach: number, longest: number): Candidate[] {
  const parts = partsNear(situation.trial.parts, situation.worst.chainage, reach);
  return [
    ...supportCure(situation, reach),
    ...parts.flatMap((part) => spliceCures(situation, part, reach)),
    ...parts.flatMap((part) => curveCure(situation, part, reach, longest)),
  ];
}

function supportCure(situation: Situation, reach: number): Candidate[] {
  const best = bestSupportNear(situation, reach);
  if (best === null) return [];
  const { part, error, by, expected } = best;
  return [{ cure: { kind: 'set-support', support: error.number, by, ...ofLeg(part) }, expected }];
}

function spliceCures(situation: Situation, part: Part, reach: number): Candidate[] {
  const { profile } = part.track.spec;
  const { strip } = profile;
  if (strip === undefined) return [];
  const place = part.own(situation.worst.chainage);
  const near = strip.hinges.filter((hinge) => Math.abs(hinge - place) <= reach);
  return near.flatMap((chainage) => {
    const hinges = strip.hinges.filter((hinge) => hinge !== chainage);
    const expected = marginIf(situation, { part, profile: { ...profile, strip: { ...strip, hinges } } }, reach);
    if (expected === null) return [];
    return [{ cure: { kind: 'splice-joint', chainage: part.told(chainage), ...ofLeg(part) }, expected }];
  });
}

/** The shortest curve at the nearest grade point that lets the place pass, else the one that helps most. */
function curveCure(situation: Situation, part: Part, reach: number, longest: number): Candidate[] {
  const { profile } = part.track.spec;
  const place = part.own(situation.worst.chainage);
  let index = -1;
  let away = reach;
  profile.points.forEach((point, i) => {
    const apart = Math.max(0, Math.abs(point.chainage - place) - curveLength(profile.points, i) / 2);
    if (i > 0 && i + 1 < profile.points.length && apart <= away) {
      away = apart;
      index = i;
    }
  });
  if (index < 0) return [];
  const chainage = part.told(profile.points[index].chainage);
  let best: Candidate | null = null;
  for (const times of curveLengths) {
    const length = Math.ceil((times * longest) / roundTo - 1e-9) * roundTo;
    if (length < curveLength(profile.points, index) + settableAlong) continue;
    const points = profile.points.map((point, i) => (i === index ? { ...point, curve: { length } } : point));
    const expected = marginIf(situation, { part, profile: { ...profile, points } }, reach);
    if (expected === null) break;
    if (best === null || expected > best.expected)
      best = { cure: { kind: 'vertical-curve', chainage, length, ...ofLeg(part) }, expected };
    if (expected >= situation.definition.near) break;
  }
  return best === null ? [] : [best];
}

/** Plan length of the vertical curve at an inner grade point, m; 0 where the grade breaks. */
function curveLength(points: Part['track']['spec']['profile']['points'], index: number): number {
  const { curve, chainage, height } = points[index];
  if (curve === undefined) return 0;
  if ('length' in curve) return curve.length;
  const before = points[index - 1];
  const after = points[index + 1];
  if (before === undefined || after === undefined) return 0;
  const change =
    (after.height - height) / (after.chainage - chainage) - (height - before.height) / (chainage - before.chainage);
  return curve.radius * Math.abs(change);
}

/** Both heads of the joint brought to the height between them. */
function matchCure(situation: Situation): Candidate[] {
  const { context, worst } = situation;
  const { vehicles } = context.train;
  const j = worst.subject;
  const height = (vehicles[j].rear.coupling.headHeight + vehicles[j + 1].front.coupling.headHeight) / 2;
  if (vehicles[j].rear.coupling.headHeight === height) return [];
  const set = (vehicle: Vehicle, end: 'front' | 'rear'): Vehicle => ({
    ...vehicle,
    [end]: { ...vehicle[end], coupling: { ...vehicle[end].coupling, headHeight: height } },
  });
  const matched = vehicles.map((vehicle, i) => {
    if (i === j) return set(vehicle, 'rear');
    return i === j + 1 ? set(vehicle, 'front') : vehicle;
  });
  const expected = marginIf(situation, { vehicles: matched }, jointReach(situation));
  return expected === null ? [] : [{ cure: { kind: 'match-heads', joint: j }, expected }];
}
