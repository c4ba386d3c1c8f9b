import { showAmount } from '../../core/findings/index.ts';
import type { Glimpse } from '../../sim/glance/index.ts';
import type { SessionState } from '../types.ts';
import { placeWords, titleOf } from '../words.ts';
import type { DraftVerdict } from './types.ts';

type Show = Pick<SessionState, 'lengthUnit' | 'gradeForm'>;

/** A verdict on the railway as it is being changed, in one line. */
export interface VerdictWords {
  readonly words: string;
  readonly fails: boolean;
}

/** How the smallest margin now compares with that of the same trial before the change: `before: headroom 4.1 mm at 3.20 m`; null where nothing is known or nothing changed. */
export function beforeWords(verdict: DraftVerdict, before: Glimpse | null, show: Show): string | null {
  if (before === null) return null;
  const was = verdictWords({ ok: true, scene: verdict.scene, measure: before }, show).words;
  if (was === verdictWords(verdict, show).words) return 'as before the change';
  return `before: ${was.charAt(0).toLowerCase()}${was.slice(1)}`;
}

/** The closest call of the quasi-static pass: what, by how much, where. */
export function verdictWords(verdict: DraftVerdict, show: Show): VerdictWords {
  if (!verdict.ok) return { words: verdict.reason, fails: true };
  const { measure } = verdict;
  const [least] = measure.risks;
  if (measure.outcome !== 'arrived') {
    const stalls = measure.risks.find(({ risk }) => risk === 'stall');
    if (stalls === undefined) return { words: 'The train does not arrive', fails: true };
    return { words: `Does not arrive: stalls at ${placeWords(stalls.chainage, show)}`, fails: true };
  }
  if (least === undefined) return { words: 'Nothing can happen here', fails: false };
  const margin = showAmount(least.margin, least.unit, show);
  const where = `${titleOf(least.risk)} ${margin} at ${placeWords(least.chainage, show)}`;
  return { words: measure.passes ? `Passes; closest: ${where}` : `Fails: ${where}`, fails: !measure.passes };
}
