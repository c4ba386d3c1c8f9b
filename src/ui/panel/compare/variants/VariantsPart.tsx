import { sameRailway } from '../../../../state/study/index.ts';
import { useHistory, useSession } from '../../../context.tsx';
import { Running } from '../Running.tsx';
import { CompareTable } from '../table/CompareTable.tsx';
import { useStudy, useStudyActions } from '../useStudy.ts';
import { BesidePart } from './BesidePart.tsx';
import { NewVariant } from './NewVariant.tsx';
import { VariantItem } from './VariantItem.tsx';
import './variants.css';

/** The railway as it is and its variants: what each comes to and what it takes, and two of them in one picture. */
export function VariantsPart() {
  const rows = useStudy((state) => state.rows);
  const comparing = useStudy((state) => state.comparing);
  const beside = useStudy((state) => state.beside);
  const scene = useSession((state) => state.scene);
  const last = useHistory((state) => state.past.at(-1) ?? null);
  const lastChange = last !== null && scene !== null && !sameRailway(last.scene, scene) ? last.label : null;
  const actions = useStudyActions();
  return (
    <>
      <ul className="variants" aria-label="Variants">
        {rows.map((row) => (
          <VariantItem key={row.id ?? ''} row={row} beside={beside?.id === row.id ? beside : null} />
        ))}
      </ul>
      {lastChange !== null && (
        <button
          type="button"
          className="link"
          title="The railway goes back to what it was before it"
          onClick={() => void actions.keepLastChange()}
        >
          Keep the last change ({lastChange}) as a variant
        </button>
      )}
      {rows.length < 2 && (
        <p className="quiet about">
          A variant is this railway with a few differences. Make one here, from a change just made on any chapter (a
          cure that was kept is one), or from a value of a sweep.
        </p>
      )}
      <BesidePart />
      {comparing === null ? (
        <button type="button" className="study-button" onClick={() => void actions.compare()}>
          {rows.length > 1 ? `Work out all ${rows.length}` : 'Work it out'}
        </button>
      ) : (
        <Running label="Comparison" progress={comparing} />
      )}
      <CompareTable />
      <NewVariant />
    </>
  );
}
