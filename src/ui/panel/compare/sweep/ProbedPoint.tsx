import { measureById, type Probe, type Settings, type StudyTerms } from '../../../../state/study/index.ts';
import { useShow } from '../../../show.ts';
import { measureWords } from '../measureWords.ts';
import { useStudy, useStudyActions } from '../useStudy.ts';
import { probeWords } from '../words.ts';

interface ProbedPointProps {
  /** The value or values, as written. */
  readonly title: string;
  /** What they came to; null where only its verdict is known, and that is that it passes. */
  readonly probe: Probe | null;
  /** What it was judged by, and where they were turned; only on the railway itself can they simply be used. */
  readonly terms: Pick<StudyTerms, 'gauge' | 'limits' | 'base'>;
  /** What a variant of them is called. */
  readonly name: string;
  readonly settings: Settings;
}

/** One place of a sweep or a map: what it came to, and what can be made of it. */
export function ProbedPoint({ title, probe, terms, name, settings }: ProbedPointProps) {
  const show = useShow();
  const actions = useStudyActions();
  const words = probe === null ? { passes: true, verdict: 'passes', call: '' } : probeWords(probe, terms, show);
  const { base } = terms;
  const drawn = useStudy((state) => state.drawn);
  const measure = drawn === null || probe === null ? null : measureById(drawn);
  return (
    <div className={words.passes ? 'swept-value' : 'swept-value fails'}>
      <b>{title}</b> {words.verdict}
      {words.call !== '' && `: ${words.call}`}
      {measure && probe && ` · ${measure.title} ${measureWords(measure, measure.value(probe), show)}`}
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
