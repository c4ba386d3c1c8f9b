import { formatNumber } from '../../../core/units/index.ts';
import { setStop } from '../../../state/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk } from '../../context.tsx';
import { DimensionField } from '../../controls/DimensionField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { readPlain } from './readPlain.ts';

/** The format's own bound, and the hand on the knob that a stop begins with, s. */
const longestS = 600;
const usualS = 1;

/** Whether the train comes to a stand when it has arrived, and over how long its driver shuts off; else the trial is over on arrival. */
export function StopField({ trial }: { readonly trial: Scene['trials'][number] }) {
  const { actions } = useDesk();
  const { stopS } = trial;
  const put = (seconds: number | undefined) =>
    actions.attempt(`stop of “${trial.name}”`, (scene) => setStop(scene, trial.id, seconds));
  if (stopS === undefined) {
    return <Refusable acts={[{ words: 'Come to a stand there', act: () => put(usualS) }]} />;
  }
  return (
    <>
      <DimensionField
        label="and shuts off over"
        value={stopS}
        shown={[formatNumber(stopS, { digits: 1, trim: true }), 's']}
        others="until it stands"
        read={(text) => readPlain(text, 's')}
        step={0.1}
        least={0}
        most={longestS}
        onChange={put}
        onDragStart={actions.beginGesture}
        onDragEnd={actions.settleGesture}
        onDragCancel={actions.bailGesture}
      />
      <Refusable acts={[{ words: 'Be over on arrival', act: () => put(undefined) }]} />
    </>
  );
}
