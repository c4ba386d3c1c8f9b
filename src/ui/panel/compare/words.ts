import { riskTitle, showAmount } from '../../../core/findings/index.ts';
import { closestCall, type Gauge, type Probe, passesBy } from '../../../state/study/index.ts';
import type { Show } from '../../show.ts';

/** What a probe came to: a word, and its closest call in a few more. */
export interface ProbeWords {
  readonly passes: boolean;
  readonly verdict: string;
  readonly call: string;
}

export function probeWords(probe: Probe, gauge: Gauge, show: Show): ProbeWords {
  if (!probe.ok) return { passes: false, verdict: 'cannot be run', call: probe.reason };
  const passes = passesBy(gauge)(probe);
  const verdict = passes ? 'passes' : 'fails';
  const stopped = probe.trials.find(({ outcome }) => outcome !== 'arrived');
  const call = closestCall(probe, gauge);
  if (call === null) return { passes, verdict, call: stopped === undefined ? '' : outcomeWords[stopped.outcome] };
  const words = `${riskTitle(call.risk)} ${showAmount(call.margin, call.unit, show)}`;
  return { passes, verdict, call: stopped === undefined ? words : `${words}, ${outcomeWords[stopped.outcome]}` };
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
