import type { Gauge, Probe, Settings } from '../../../state/study/index.ts';
import { useShow } from '../../show.ts';
import { useStudyActions } from './useStudy.ts';
import { probeWords } from './words.ts';

interface ProbedPointProps {
  /** The value or values, as written. */
  readonly title: string;
  /** What they came to; null where only its verdict is known, and that is that it passes. */
  readonly probe: Probe | null;
  readonly gauge: Gauge;
  /** Where they were turned; only on the railway itself can they simply be used. */
  readonly base: string | null;
  /** What a variant of them is called. */
  readonly name: string;
  readonly settings: Settings;
}

/** One place of a sweep or a map: what it came to, and what can be made of it. */
export function ProbedPoint({ title, probe, gauge, base, name, settings }: ProbedPointProps) {
  const show = useShow();
  const actions = useStudyActions();
  const words = probe === null ? { passes: true, verdict: 'passes', call: '' } : probeWords(probe, gauge, show);
  return (
    <div className={words.passes ? 'swept-value' : 'swept-value fails'}>
      <b>{title}</b> {words.verdict}
      {words.call !== '' && `: ${words.call}`}
      {(probe?.ok ?? true) && (
        <span className="acts">
          {base === null && (
            <button type="button" className="link" onClick={() => void actions.keepValue(settings)}>
              Use it
            </button>
          )}
          <button type="button" className="link" onClick={() => void actions.addVariant(name, settings)}>
            Keep as a variant
          </button>
          <button
            type="button"
            className="link"
            title="Keeps it as a variant and shows it beside the railway"
            onClick={() => void actions.addVariant(name, settings, true)}
          >
            Try beside
          </button>
        </span>
      )}
    </div>
  );
}
