import { riskTitle, showAmount } from '../../../core/findings/index.ts';
import {
  closestCall,
  measureById,
  missedLimits,
  type Probe,
  passesBy,
  type StudyTerms,
} from '../../../state/study/index.ts';
import type { Show } from '../../show.ts';
import { limitWords, measureWords } from './measureWords.ts';

/** What a probe came to: a word, and its closest call in a few more. */
export interface ProbeWords {
  readonly passes: boolean;
  readonly verdict: string;
  readonly call: string;
}

export function probeWords(
  probe: Probe,
  { gauge, limits }: Pick<StudyTerms, 'gauge' | 'limits'>,
  show: Show,
): ProbeWords {
  if (!probe.ok) return { passes: false, verdict: 'cannot be run', call: probe.reason };
  const passes = passesBy(gauge, limits)(probe);
  const verdict = passes ? 'passes' : 'fails';
  const stopped = probe.trials.find(({ outcome }) => outcome !== 'arrived');
  const call = closestCall(probe, gauge);
  const said = [
    ...missedLimits(probe, limits).map((limit) => {
      const measure = measureById(limit.measure);
      return `${measure.title.toLowerCase()} ${measureWords(measure, measure.value(probe), show)}, not ${limitWords(limit, show)}`;
    }),
    ...(call === null ? [] : [`${riskTitle(call.risk)} ${showAmount(call.margin, call.unit, show)}`]),
    ...(stopped === undefined ? [] : [outcomeWords[stopped.outcome]]),
  ];
  return { passes, verdict, call: said.join(', ') };
}

const outcomeWords = {
  arrived: 'arrives',
  stalled: 'stalls',
  parted: 'parts',
  'end-of-track': 'runs off the end',
  'time-limit': 'does not arrive in time',
} as const;

/** Four significant digits, without an exponent: as a number of the file is written. */
export const figure = (value: number): string => String(Number(value.toPrecision(4)));

/** A figure with the unit of its field. */
export const withUnit = (value: number, unit: string): string =>
  unit === '' ? figure(value) : `${figure(value)}\u2009${unit}`;
