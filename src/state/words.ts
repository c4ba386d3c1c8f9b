import {
  describeCure,
  describeFinding,
  type Naming,
  riskTitle,
  type Show,
  type Standing,
  showPlace,
  standingOf,
  standings,
  type Told,
} from '../core/findings/index.ts';
import type { Finding } from '../core/findings/types.ts';
import { riskById } from '../core/risks/index.ts';
import type { RiskId } from '../core/risks/types.ts';
import { formatLength, formatNumber, thinSpace } from '../core/units/index.ts';
import type { Scene, SceneTrial } from '../scene/index.ts';
import { namingOf as namingOfTrial } from '../sim/index.ts';
import type { TrialResult } from '../sim/types.ts';
import type { Working } from './trialEdits.ts';
import type { SessionState } from './types.ts';
import { readWorking } from './working.ts';

type Shown = Pick<SessionState, 'trial' | 'result' | 'lengthUnit' | 'gradeForm'>;

/** Who is who in the trial on show. */
export function namingOf({ trial, result }: Pick<Shown, 'trial' | 'result'>): Naming {
  return trial ? namingOfTrial(trial, result) : { vehicleNames: [] };
}

const showOf = ({ lengthUnit, gradeForm }: Pick<Shown, 'lengthUnit' | 'gradeForm'>): Show => ({
  lengthUnit,
  gradeForm,
});

/** A place along the track in the person's units: `7.42 m`. */
export function placeWords(chainage: number, { lengthUnit }: Show): string {
  return lengthUnit === 'mm'
    ? formatLength(chainage, { unit: 'm', digits: 2 })
    : formatLength(chainage, { unit: 'ft', fraction: 8 });
}

/** A place along the trial on show; along a route by its track too: `7.42 m (0.31 m on Crossover)`. */
export function placeOnTrial(chainage: number, state: Pick<Shown, 'trial' | 'lengthUnit' | 'gradeForm'>): string {
  const legs = state.trial?.legs;
  return showPlace(chainage, { ...showOf(state), ...(legs && { legs }) });
}

/** From here on a radius is given in metres or feet, m. */
const largeRadius = 2;

/** A radius with the letter that says so: `R 600 mm`, `R 7.3 m`; `R 23 1/2″`, `R 24′`. */
export function radiusText(radius: number, { lengthUnit }: Pick<Show, 'lengthUnit'>): string {
  const large = radius >= largeRadius;
  const style =
    lengthUnit === 'mm'
      ? ({ unit: large ? 'm' : 'mm', digits: large ? 1 : 0 } as const)
      : ({ unit: large ? 'ft' : 'in', fraction: large ? 2 : 4 } as const);
  return `R${thinSpace}${formatLength(radius, style)}`;
}

/** A finding in words, with the name of its check and its place. */
export function describeOf(state: Shown, finding: Finding): Told & { readonly title: string; readonly where: string } {
  const told = describeFinding(finding, namingOf(state), showOf(state));
  return { ...told, title: riskTitle(finding.risk), where: `at ${placeOnTrial(finding.chainage, state)}` };
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

/** How grave a finding stands, 0 where it passes. */
const gravityOf = (finding: Finding): number => standings.length - 1 - standings.indexOf(standingOf(finding));

const fallWords: Readonly<Record<Standing, string>> = {
  fails: 'then fails',
  undecided: 'may then fail',
  near: 'comes near',
  passes: 'passes',
};

/**
 * What a cure does worse elsewhere, as one sentence: the check whose standing falls furthest, or null when none does. `index` is the
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
      return { finding, fall: gravityOf(finding) - (was ? gravityOf(was) : 0) };
    })
    .filter(({ fall }) => fall > 0)
    .sort((a, b) => gravityOf(b.finding) - gravityOf(a.finding) || b.fall - a.fall)[0]?.finding;
  if (!fallen) return null;
  const { title, margin, where } = describeOf(state, fallen);
  return `${title} ${fallWords[standingOf(fallen)]}: ${margin} ${where}`;
}

/**
 * What a cure leaves of the trouble it is for, as one sentence: the same check, where it then stands worst. Null where the check passes or
 * only comes near. `index` is the finding the cure is for.
 */
export function remainderWords(state: Shown, index: number, after: TrialResult): string | null {
  const own = state.result?.findings[index].risk;
  const left = after.findings
    .filter(({ risk }) => risk === own)
    .sort((a, b) => gravityOf(b) - gravityOf(a) || a.margin - b.margin)[0];
  if (!left) return null;
  const standing = standingOf(left);
  if (standing !== 'fails' && standing !== 'undecided') return null;
  return `${standing === 'fails' ? 'Still fails' : 'Still undecided'} ${describeOf(state, left).where}`;
}

/** A cure in words that follow "Undo": `lower support 14 by 2.5 mm`. */
export function cureWords(state: Shown, finding: Finding, cure: number): string {
  const words = describeCure(finding.cures[cure], namingOf(state), showOf(state));
  return words[0].toLowerCase() + words.slice(1);
}

/** A change of the speed setting in words that follow "Undo". */
export const settingWords = (setting: number): string =>
  `setting to ${formatNumber(setting * 100, { digits: 0 })}${thinSpace}%`;

/** A name for a trial worked another way than `like`: `Evening stopper propelled down`. */
export function trialWords(scene: Scene, like: SceneTrial, wanted: Working): string {
  const train = scene.trains.find(({ id }) => id === like.train)?.name ?? like.train;
  const now = readWorking(scene, like.id);
  if (!now) return train;
  const otherEnd = wanted.leading !== like.leading;
  const propelled = now.propelled !== (otherEnd && now.turns);
  const way = wanted.towards === now.towards ? now.way : now.otherWay;
  const facing = now.turns ? (propelled ? 'propelled' : 'pulled') : `${wanted.leading} vehicle ahead,`;
  return `${train} ${facing} ${way}`;
}

/** Joint a finding is about, or null when it is about a vehicle. */
export const jointOf = ({ risk, subject }: Finding): number | null =>
  riskById(risk).subject === 'joint' ? subject : null;
