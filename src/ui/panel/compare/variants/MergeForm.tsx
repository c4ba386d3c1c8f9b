import { useMemo, useState } from 'react';
import {
  asItIs,
  type MergeConflict,
  type MergeSide,
  mergeConflicts,
  mergeTargets,
  placeWords,
} from '../../../../state/study/index.ts';
import { useSession } from '../../../context.tsx';
import { Segmented } from '../../../controls/Segmented.tsx';
import { useStudy, useStudyActions } from '../useStudy.ts';
import { withUnit } from '../words.ts';

interface MergeFormProps {
  readonly id: string;
  readonly name: string;
  /** What it comes from; null: the railway itself. */
  readonly from: string | null;
  readonly onClose: () => void;
}

/** Puts what a variant differs in into another railway; where both changed a place, the person says whose value stays. */
export function MergeForm({ id, name, from, onClose }: MergeFormProps) {
  const scene = useSession((state) => state.scene);
  const rows = useStudy((state) => state.rows);
  const actions = useStudyActions();
  const [into, setInto] = useState(from);
  const [sides, setSides] = useState<ReadonlyMap<string, MergeSide>>(new Map());
  const found = useMemo(() => lookedAt(scene, id, into), [scene, id, into]);
  if (scene === null) return null;
  const targets = mergeTargets(scene, id);
  const nameOf = (target: string | null) =>
    target === null ? asItIs : (rows.find((row) => row.id === target)?.name ?? target);
  const open = found.conflicts.filter(({ at }) => !sides.has(at)).length;
  const merge = async () => {
    if (await actions.mergeVariant(id, into, sides)) onClose();
  };
  return (
    <fieldset className="merge" aria-label={`Merge ${name}`}>
      <div className="sheet-field">
        <label htmlFor={`merge-${id}`}>Merge “{name}” into</label>
        <select
          id={`merge-${id}`}
          value={into ?? ''}
          onChange={(event) => {
            setInto(event.target.value === '' ? null : event.target.value);
            setSides(new Map());
          }}
        >
          {targets.map((target) => (
            <option key={target ?? ''} value={target ?? ''}>
              {nameOf(target)}
            </option>
          ))}
        </select>
      </div>
      {found.problem !== null && (
        <p className="said wrong" role="alert">
          {found.problem}
        </p>
      )}
      {found.conflicts.length > 0 && (
        <>
          <p className="quiet about">
            Both changed {found.conflicts.length === 1 ? 'this' : `these ${found.conflicts.length}`}. Say whose stays:
          </p>
          <Segmented
            label="Whose stay, all of them"
            choices={[
              { value: 'merged', label: name, spoken: `All as ${name} has them` },
              { value: 'into', label: nameOf(into), spoken: `All as ${nameOf(into)} has them` },
            ]}
            value={sameSide(found.conflicts.map(({ at }) => sides.get(at)))}
            onChange={(side) => {
              if (side !== 'open') setSides(new Map(found.conflicts.map(({ at }) => [at, side])));
            }}
            wide
          />
          <ul className="conflicts" aria-label="Changed on both sides">
            {found.conflicts.map((conflict) => {
              const { words, unit } = placeWords(scene, conflict.at);
              return (
                <li key={conflict.at}>
                  <span>{words}</span>
                  <small>was {valueWords(conflict.was, unit)}</small>
                  <Segmented
                    label={`Whose stays: ${words}`}
                    choices={[choice('merged', name, conflict, unit), choice('into', nameOf(into), conflict, unit)]}
                    value={sides.get(conflict.at) ?? 'open'}
                    onChange={(side) => {
                      if (side !== 'open') setSides(new Map(sides).set(conflict.at, side));
                    }}
                    wide
                  />
                </li>
              );
            })}
          </ul>
        </>
      )}
      <span className="acts">
        <button
          type="button"
          className="study-button"
          disabled={open > 0 || found.problem !== null}
          onClick={() => void merge()}
        >
          {open > 0 ? `${open} to be settled` : 'Merge'}
        </button>
        <button type="button" className="link" onClick={onClose}>
          Not now
        </button>
      </span>
    </fieldset>
  );
}

const choice = (side: MergeSide, name: string, conflict: MergeConflict, unit: string) => ({
  value: side as MergeSide | 'open',
  label: valueWords(conflict[side], unit),
  spoken: `${valueWords(conflict[side], unit)}, as ${name} has it`,
});

/** The side that all are settled for; open where they are not all, or not all for one. */
const sameSide = (sides: readonly (MergeSide | undefined)[]): MergeSide | 'open' =>
  sides.every((side) => side === sides[0]) ? (sides[0] ?? 'open') : 'open';

function lookedAt(scene: Parameters<typeof mergeConflicts>[0] | null, id: string, into: string | null) {
  try {
    return { conflicts: scene === null ? [] : mergeConflicts(scene, id, into), problem: null };
  } catch (error) {
    if (error instanceof RangeError) return { conflicts: [], problem: error.message };
    throw error;
  }
}

/** A value of the file in a word or two. */
function valueWords(value: unknown, unit: string): string {
  if (value === undefined) return 'not there';
  if (typeof value === 'number') return withUnit(value, unit);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return typeof value === 'object' ? 'another' : String(value);
}
