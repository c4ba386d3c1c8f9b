import type { RefObject } from 'react';
import { type StoreApi, useStore } from 'zustand';
import type { SessionState } from '../../state/types.ts';
import { labelWords } from './words.ts';

interface FindingLabelProps {
  readonly box: RefObject<HTMLDivElement | null>;
  readonly session: StoreApi<SessionState>;
  /** Index of the finding, null for none. */
  readonly index: number | null;
  readonly onChoose: () => void;
  /** Opens the lens; null leaves the button out. */
  readonly onMagnify: (() => void) | null;
}

/** Where the leader's rule lies under the words, px from the label's top. */
const rule = 38;

/** A finding's words on the stage. The lettering puts it in its place. */
export function FindingLabel({ box, session, index, onChoose, onMagnify }: FindingLabelProps) {
  const head = useStore(session, (state) => words(state, index)?.head ?? '');
  const line = useStore(session, (state) => words(state, index)?.line ?? '');
  const fails = useStore(session, (state) => finding(state, index)?.verdict === 'fails');
  return (
    <div className={`stage-label ${fails ? 'stage-label-mark' : ''}`} ref={box} data-rule={rule}>
      {index !== null && (
        <>
          <button type="button" className="stage-label-words" onClick={onChoose}>
            <strong>{head}</strong>
            <span>{line}</span>
          </button>
          {onMagnify !== null && (
            <button type="button" className="stage-magnify" onClick={onMagnify}>
              Magnify
            </button>
          )}
        </>
      )}
    </div>
  );
}

const finding = (state: SessionState, index: number | null) =>
  index === null ? undefined : state.result?.findings[index];

function words(state: SessionState, index: number | null): ReturnType<typeof labelWords> | null {
  const found = finding(state, index);
  return found === undefined ? null : labelWords(state, found);
}
