import { useState } from 'react';
import type { CompareRow, StudyState } from '../../../../state/study/index.ts';
import { useShow } from '../../../show.ts';
import { useStudy, useStudyActions } from '../useStudy.ts';
import { probeWords } from '../words.ts';
import { MergeForm } from './MergeForm.tsx';

interface VariantItemProps {
  readonly row: CompareRow;
  /** It is asked for beside the railway. */
  readonly beside: StudyState['beside'];
}

/** One railway of the comparison: its name, its verdict, and what can be done with it. */
export function VariantItem({ row: { id, name, from, scene, compared }, beside }: VariantItemProps) {
  const show = useShow();
  const actions = useStudyActions();
  const gauge = useStudy((state) => state.gauge);
  const parent = useStudy((state) => state.rows.find((one) => one.id === from)?.name ?? '');
  const [merging, setMerging] = useState(false);
  const words = compared && probeWords(compared.probe, { gauge, limits: [] }, show);
  return (
    <li className={words && !words.passes ? 'fails' : undefined} data-shown={beside !== null || undefined}>
      {id === null ? <span className="name">{name}</span> : <VariantName id={id} name={name} />}
      <b>{words === null ? 'not worked out' : words.verdict}</b>
      {words !== null && words.call !== '' && <span className="call">{words.call}</span>}
      {from !== null && <small>a variant of {parent}</small>}
      {id !== null && (
        <span className="acts">
          {scene !== null && (
            <>
              <button
                type="button"
                className="link"
                aria-label={beside === null ? `Show beside: ${name}` : `Hide: ${name}`}
                onClick={() => (beside === null ? void actions.showBeside(id) : actions.hideBeside())}
              >
                {beside === null ? 'Show beside' : 'Hide'}
              </button>
              <button type="button" className="link" onClick={() => void actions.adoptVariant(id)}>
                Make it the railway
              </button>
              <button
                type="button"
                className="link"
                aria-expanded={merging}
                aria-label={`Merge: ${name}`}
                onClick={() => setMerging(!merging)}
              >
                Merge …
              </button>
            </>
          )}
          <button type="button" className="link" onClick={() => void actions.dropVariant(id)}>
            Take out
          </button>
        </span>
      )}
      {id !== null && merging && <MergeForm id={id} name={name} from={from} onClose={() => setMerging(false)} />}
    </li>
  );
}

/** The name of a variant, which can be typed anew. */
function VariantName({ id, name }: { readonly id: string; readonly name: string }) {
  const actions = useStudyActions();
  const [typed, setTyped] = useState<string | null>(null);
  if (typed === null) {
    return (
      <button type="button" className="name" title="Give it another name" onClick={() => setTyped(name)}>
        {name}
      </button>
    );
  }
  const take = () => {
    setTyped(null);
    const wanted = typed.trim();
    if (wanted !== '' && wanted !== name) void actions.renameVariant(id, wanted);
  };
  return (
    <input
      className="name"
      type="text"
      aria-label={`Name of ${name}`}
      value={typed}
      // biome-ignore lint/a11y/noAutofocus: the button that was pressed became this field
      autoFocus
      onFocus={(event) => event.target.select()}
      onChange={(event) => setTyped(event.target.value)}
      onBlur={take}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === 'Enter') take();
        if (event.key === 'Escape') setTyped(null);
      }}
    />
  );
}
