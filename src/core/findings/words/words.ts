import { riskById } from '../../risks/index.ts';
import type { RiskId, RiskUnit } from '../../risks/types.ts';
import { standingOf, standingWords } from '../standing.ts';
import type { Finding } from '../types.ts';
import { engineName, jointNumber, vehicleName } from './naming.ts';
import type { RiskWords } from './riskWords.ts';
import { type Naming, type Show, showAmount, showOf, showPlace } from './show.ts';
import { barLiftWords } from './wordsBarLift.ts';
import { bufferLockWords } from './wordsBufferLock.ts';
import { couplerSwingWords } from './wordsCouplerSwing.ts';
import { describeCure } from './wordsCures.ts';
import { headroomWords } from './wordsHeadroom.ts';
import { overrideWords, partingWords } from './wordsHeads.ts';
import { overturningWords } from './wordsOverturning.ts';
import { passingWords } from './wordsPassing.ts';
import { stallWords, wheelspinWords } from './wordsPull.ts';
import { jackKnifeWords, stringLiningWords, wheelClimbWords } from './wordsSideways.ts';

import { structureWords } from './wordsStructure.ts';
import { axleLiftWords, groundingWords } from './wordsUnderneath.ts';

export type { Naming, Show } from './show.ts';

const words: Readonly<Record<RiskId, RiskWords>> = {
  stall: stallWords,
  wheelspin: wheelspinWords,
  override: overrideWords,
  'buffer-lock': bufferLockWords,
  'coupler-swing': couplerSwingWords,
  parting: partingWords,
  'wheel-climb': wheelClimbWords,
  'string-lining': stringLiningWords,
  'jack-knife': jackKnifeWords,
  overturning: overturningWords,
  'axle-lift': axleLiftWords,
  grounding: groundingWords,
  'bar-lift': barLiftWords,
  headroom: headroomWords,
  passing: passingWords,
  structure: structureWords,
};

/** A finding in words, every number with its unit. */
export interface Told {
  /** Name of the risk. */
  readonly title: string;
  /** Where it is nearest: `joint 6, 7.42 m`. */
  readonly where: string;
  readonly headline: string;
  readonly cause: string;
  readonly margin: string;
  /** How it stands, tolerances counted: `fails`, `may fail`, `near`, `passes`. */
  readonly standing: string;
  /** Least to greatest margin over the tolerances, with its plus where it spans zero: `−0.2 to +0.9 mm`; null where the risk has none. */
  readonly range: string | null;
  readonly value: string;
  readonly limit: string;
  /** In the order of the finding's cures. */
  readonly cures: readonly string[];
}

/** Says a finding in the person's units: headline with place, cause, numbers, and what can be tried. */
export function describeFinding(finding: Finding, naming: Naming, units: Show): Told {
  const show = showOf(naming, units);
  const { unit } = riskById(finding.risk);
  const amounts = findingUnit(finding);
  const { headline, cause } = words[finding.risk];
  const { range } = finding;
  return {
    title: riskTitle(finding.risk),
    where: where(finding, naming, show),
    headline: headline(finding, naming, show),
    cause: cause(finding, naming, show),
    margin: showAmount(finding.margin, unit, show),
    standing: standingWords[standingOf(finding)],
    range: range === null ? null : rangeWords(range, unit, show),
    value: showAmount(finding.value, amounts, show),
    limit: showAmount(finding.limit, amounts, show),
    cures: finding.cures.map((cure) => describeCure(cure, naming, show)),
  };
}

function where({ risk, subject, chainage }: Finding, naming: Naming, show: Show): string {
  const kind = riskById(risk).subject;
  const place = showPlace(chainage, show);
  if (kind === 'joint') return `joint ${jointNumber(naming, subject)}, ${place}`;
  return `${kind === 'vehicle' ? vehicleName(naming, subject) : engineName(naming, subject)}, ${place}`;
}

/** Name of the row that plots a risk's margin. */
export const riskTitle = (risk: RiskId): string => words[risk].title;

/** The unit of that row. */
export function riskUnitLabel(risk: RiskId, show: Show): string {
  const labels: Readonly<Record<RiskUnit, string>> = { length: show.lengthUnit, force: 'N', share: '%', angle: '°' };
  return labels[riskById(risk).unit];
}

/** What a finding's value and limit are in: a lifted end and a release force speak of forces where the risk itself speaks of heights. */
export function findingUnit({ risk, governing }: Pick<Finding, 'risk' | 'governing'>): RiskUnit {
  if (governing === 'lift' || governing === 'release') return 'force';
  const { unit, valueUnit } = riskById(risk);
  return valueUnit ?? unit;
}

/** A range as `−0.2 to +0.9 mm`; null where both ends read the same. */
function rangeWords([least, greatest]: readonly [number, number], unit: RiskUnit, show: Show): string | null {
  const [low, high] = [showAmount(least, unit, show), showAmount(greatest, unit, show)];
  return low === high ? null : `${withoutUnit(low)} to ${least < 0 && greatest > 0 ? '+' : ''}${high}`;
}

/** The number of an amount, sign included, without the unit after it. */
const withoutUnit = (amount: string): string => /^[−+]?[\d.]+/.exec(amount)?.[0] ?? amount;
