import type { ComponentType } from 'react';
import type { StudyPart } from '../../../state/study/index.ts';
import { useSession } from '../../context.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { BestPart } from './best/BestPart.tsx';
import { ChancePart } from './chance/ChancePart.tsx';
import { SweepPart } from './sweep/SweepPart.tsx';
import { useStudy, useStudyActions } from './useStudy.ts';
import { VariantsPart } from './variants/VariantsPart.tsx';
import './compare.css';

const parts: readonly { readonly value: StudyPart; readonly label: string }[] = [
  { value: 'variants', label: 'Variants' },
  { value: 'sweep', label: 'Sweep' },
  { value: 'chance', label: 'Chance' },
  { value: 'best', label: 'Best' },
];

const sheets: Readonly<Record<StudyPart, ComponentType>> = {
  variants: VariantsPart,
  sweep: SweepPart,
  chance: ChancePart,
  best: BestPart,
};

/** Choosing before the wood is cut: variants side by side, numbers swept over a range, how sure it is, and what is best. */
export function CompareSheet() {
  const trialName = useSession((state) => state.trial?.name ?? '');
  const part = useStudy((state) => state.part);
  const exactness = useStudy((state) => state.exactness);
  const problem = useStudy((state) => state.problem);
  const actions = useStudyActions();
  const Part = sheets[part];
  return (
    <section className="compare" aria-label="Compare">
      <h2>Compare</h2>
      <p className="quiet">in the trial “{trialName}”</p>
      <Segmented label="Part of the chapter" choices={parts} value={part} onChange={actions.setPart} wide />
      {part !== 'best' && (
        <Segmented
          label="How exactly"
          choices={[
            { value: 'steady', label: 'Quick: even running' },
            { value: 'run', label: 'In full' },
          ]}
          value={exactness}
          onChange={actions.setExactness}
          wide
        />
      )}
      <Part />
      {problem !== null && (
        <p className="said wrong" role="alert">
          {problem}
        </p>
      )}
    </section>
  );
}
