import { memo } from 'react';
import { placeWords } from '../../../state/index.ts';
import { moveSupport } from '../../../state/routeEdits/index.ts';
import { useDesk } from '../../context.tsx';
import { EditField } from '../../controls/EditField.tsx';
import { offShown } from '../../measures.ts';
import { useShow } from '../../show.ts';

interface SupportRowProps {
  readonly trackId: string;
  /** Its number, counted from 0. */
  readonly index: number;
  readonly atMm: number;
  readonly offMm: number;
  /** Of the planned rail, as it is shown; empty while it is not known. */
  readonly height: string;
  readonly chosen: boolean;
}

/** The format's bound, mm. */
export const mostOffMm = 100;

/** One support's place and height, and how far it stands off its plan. Most stay as they are while a hand drags. */
export const SupportRow = memo(function SupportRow(props: SupportRowProps) {
  const { trackId, index, atMm, offMm, height, chosen } = props;
  const { actions, route } = useDesk();
  const show = useShow();
  return (
    <li className={[offMm !== 0 && 'off', chosen && 'taken'].filter(Boolean).join(' ') || undefined}>
      <button
        type="button"
        title="Go there; with Shift, choose all up to it"
        aria-pressed={chosen || undefined}
        onClick={(event) => {
          if (event.shiftKey || route.route.getState().takesSeveral) route.actions.chooseSupport(index, true);
          else actions.goToPlace(atMm / 1000);
        }}
      >
        <i>{index + 1}</i>
        <small>{placeWords(atMm / 1000, show)}</small>
        <b>{height}</b>
      </button>
      <div className="fields">
        <EditField
          label={`Support ${index + 1} off its plan`}
          measures="length"
          value={offMm}
          step={0.1}
          least={-mostOffMm}
          most={mostOffMm}
          shown={offMm === 0 ? ['as planned', ''] : offShown(offMm, show)}
          onChange={(value) =>
            actions.attempt(`support ${index + 1} off its plan`, (scene) => moveSupport(scene, trackId, index, value))
          }
        />
      </div>
    </li>
  );
});
