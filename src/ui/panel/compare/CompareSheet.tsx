import { useSession } from '../../context.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { SweepPart } from './SweepPart.tsx';
import { useStudy, useStudyActions } from './useStudy.ts';
import { VariantList } from './VariantList.tsx';
import './compare.css';

/** Choosing before the wood is cut: variants side by side, and one number swept over a range. */
export function CompareSheet() {
  const trialName = useSession((state) => state.trial?.name ?? '');
  const exactness = useStudy((state) => state.exactness);
  const problem = useStudy((state) => state.problem);
  const actions = useStudyActions();
  return (
    <section className="compare" aria-label="Compare">
      <h2>Compare</h2>
      <p className="quiet">in the trial “{trialName}”</p>
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
      <h3>Variants</h3>
      <VariantList />
      <h3>Sweep</h3>
      <SweepPart />
      {problem !== null && (
        <p className="said wrong" role="alert">
          {problem}
        </p>
      )}
    </section>
  );
}
