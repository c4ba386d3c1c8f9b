import { describeFinding, describePass, type Show } from '../../core/findings/index.ts';
import { formatNumber } from '../../core/units/index.ts';
import type { SessionState } from '../types.ts';
import { namingOf } from '../words.ts';
import type { Caption } from './types.ts';

type Told = Pick<SessionState, 'scene' | 'trial' | 'result' | 'chosenFinding' | 'lengthUnit' | 'gradeForm'>;

/** What a picture of the stage says under it: the railway, the trial at its moment (s), and the finding that is chosen, else the gravest, else that it passes. */
export function captionOf(state: Told, time: number): Caption {
  const { scene, trial, result, chosenFinding, lengthUnit, gradeForm } = state;
  const show: Show = { lengthUnit, gradeForm };
  const moment = `${formatNumber(time, { digits: 1 })} s`;
  const title = trial === null ? (scene?.name ?? '') : `${scene?.name}: ${trial.name}, ${moment}`;
  if (trial === null || result === null || result.trialId !== trial.id) return { title, words: '' };
  const naming = namingOf(state);
  const finding = chosenFinding === null ? undefined : result.findings[chosenFinding];
  const pass = finding === undefined ? describePass(result.findings, naming, show) : null;
  const told = finding ?? result.findings[0];
  if (pass !== null || told === undefined) return { title, words: pass ?? '' };
  const { headline, margin, standing } = describeFinding(told, naming, show);
  return { title, words: `${headline} Margin ${margin}: ${standing}.` };
}
