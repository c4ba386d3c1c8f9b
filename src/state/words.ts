import { describeCure, describeFinding, type Naming, riskTitle, type Show, type Told } from '../core/findings/index.ts';
import type { Finding, Verdict } from '../core/findings/types.ts';
import { riskById } from '../core/risks/index.ts';
import type { RiskId } from '../core/risks/types.ts';
import { formatLength, formatNumber, thinSpace } from '../core/units/index.ts';
import type { Scene, SceneTrial } from '../scene/index.ts';
import type { TrialResult } from '../sim/types.ts';
import type { Working } from './trialEdits.ts';
import type { SessionState } from './types.ts';
import { readWorking } from './working.ts';

type Shown = Pick<SessionState, 'trial' | 'result' | 'lengthUnit' | 'gradeForm'>;

/** Who is who in the trial on show. */
export function namingOf({ trial, result }: Shown): Naming {
  if (!trial) return { vehicleNames: [] };
  return {
    vehicleNames: trial.train.vehicles.map((vehicle) => vehicle.name),
    ...(result ? { locomotives: result.run.locomotives } : {}),
    propelled: trial.propelled,
    path: { length: trial.path.track.length, reversed: trial.path.reversed },
  };
}

const showOf = ({ lengthUnit, gradeForm }: Shown): Show => ({ lengthUnit, gradeForm });

/** A place along the track in the person's units: `7.42 m`. */
export function placeWords(chainage: number, { lengthUnit }: Show): string {
  return lengthUnit === 'mm'
    ? formatLength(chainage, { unit: 'm', digits: 2 })
    : formatLength(chainage, { unit: 'ft', fraction: 2 });
}

/** A finding in words, with the name of its check and its place. */
export function describeOf(state: Shown, finding: Finding): Told & { readonly title: string; readonly where: string } {
  const told = describeFinding(finding, namingOf(state), showOf(state));
  return { ...told, title: riskTitle(finding.risk), where: `at ${placeWords(finding.chainage, showOf(state))}` };
}

/** The name of a check. */
export const titleOf = (risk: RiskId): string => riskTitle(risk);

/** A margin of a finding's own risk in words. */
export function describeMargin(state: Shown, index: number, margin: number): string {
  const finding = state.result?.findings[index];
  if (!finding) return '';
  const words = describeFinding({ ...finding, margin, range: null }, namingOf(state), showOf(state)).margin;
  // Beside a margin that is below zero the plus says at a glance which side this one is on.
  return finding.verdict === 'fails' && margin > 0 ? `+${words.replace(/^\+/, '')}` : words;
}

const gravity: Readonly<Record<Verdict, number>> = { passes: 0, near: 1, fails: 2 };

/**
 * What a cure does worse elsewhere, as one sentence: the check whose verdict falls furthest, or null when none does. `index` is the
 * finding the cure is for.
 */
export function sideEffectWords(state: Shown, index: number, after: TrialResult): string | null {
  const before = state.result;
  if (!before) return null;
  const own = before.findings[index].risk;
  const fallen = after.findings
    .filter(({ risk }) => risk !== own)
    .map((finding) => {
      const was = before.findings.find(({ risk }) => risk === finding.risk);
      return { finding, fall: gravity[finding.verdict] - (was ? gravity[was.verdict] : 0) };
    })
    .filter(({ fall }) => fall > 0)
    .sort((a, b) => gravity[b.finding.verdict] - gravity[a.finding.verdict] || b.fall - a.fall)[0]?.finding;
  if (!fallen) return null;
  const { title, margin, where } = describeOf(state, fallen);
  return `${title} ${fallen.verdict === 'fails' ? 'then fails' : 'comes near'}: ${margin} ${where}`;
}

/** A cure in words that follow "Undo": `lower support 14 by 2.5 mm`. */
export function cureWords(state: Shown, finding: Finding, cure: number): string {
  const words = describeCure(finding.cures[cure], namingOf(state), showOf(state));
  return words[0].toLowerCase() + words.slice(1);
}

/** A change of the speed setting in words that follow "Undo". */
export const settingWords = (setting: number): string =>
  `setting to ${formatNumber(setting * 100, { digits: 0 })}${thinSpace}%`;

/** A name for a trial worked another way than `like`: `Evening stopper pushed down`. */
export function trialWords(scene: Scene, like: SceneTrial, wanted: Working): string {
  const train = scene.trains.find(({ id }) => id === like.train)?.name ?? like.train;
  const now = readWorking(scene, like.id);
  if (!now) return train;
  const otherEnd = wanted.leading !== like.leading;
  const pushed = now.pushed !== (otherEnd && now.turns);
  const way = wanted.towards === like.towards ? now.way : now.otherWay;
  const facing = now.turns ? (pushed ? 'pushed' : 'pulled') : `${wanted.leading} vehicle ahead,`;
  return `${train} ${facing} ${way}`;
}

/** Joint a finding is about, or null when it is about a vehicle. */
export const jointOf = ({ risk, subject }: Finding): number | null =>
  riskById(risk).subject === 'joint' ? subject : null;
