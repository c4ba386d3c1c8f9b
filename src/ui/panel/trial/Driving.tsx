import { addOrder, removeTrial, renameTrial, setTrialEnd } from '../../../state/index.ts';
import { useDesk, useSession } from '../../context.tsx';
import { DimensionField } from '../../controls/DimensionField.tsx';
import { type Act, Refusable } from '../../controls/Refusable.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { mmShown, readMm } from '../../measures.ts';
import { useShow } from '../../show.ts';
import { GoesOn } from './GoesOn.tsx';
import { OrderRow } from './OrderRow.tsx';
import { StopField } from './StopField.tsx';

/** How the trial is driven: where or from which other it begins, where it arrives and whether it stops, each order to the controller, and what it is called. */
export function Driving() {
  const { actions } = useDesk();
  const show = useShow();
  const scene = useSession((state) => state.scene);
  const trial = useSession((state) => state.scene?.trials.find(({ id }) => id === state.trialId));
  const solved = useSession((state) => (state.trial?.id === state.trialId ? state.trial : null));
  if (!scene || !trial || !solved) return null;
  const { path, script } = solved;
  const lengthMm = path.track.length * 1000;
  const attempt = (words: string, make: Parameters<typeof actions.attempt>[1]) =>
    actions.attempt(`${words} of “${trial.name}”`, make);
  const endField = (label: string, end: 'startMm' | 'finishMm', alongPath: number) => {
    const mm = Math.round((path.reversed ? lengthMm - alongPath * 1000 : alongPath * 1000) * 10) / 10;
    return (
      <DimensionField
        label={label}
        value={mm}
        shown={mmShown(mm, show).shown}
        others={trial[end] === undefined ? 'as it comes' : ''}
        read={(text) => readMm(text, show)}
        step={10}
        least={0}
        most={lengthMm}
        onChange={(value) => attempt(label.toLowerCase(), (now) => setTrialEnd(now, trial.id, end, value))}
        onDragStart={actions.beginGesture}
        onDragEnd={actions.settleGesture}
        onDragCancel={actions.bailGesture}
      />
    );
  };
  const endToEnd: Act = {
    words: 'From end to end',
    act: () =>
      attempt('start and arrival', (now) =>
        setTrialEnd(setTrialEnd(now, trial.id, 'startMm', undefined), trial.id, 'finishMm', undefined),
      ),
  };
  const placed = trial.startMm !== undefined || trial.finishMm !== undefined;
  return (
    <div className="driving">
      <h3>How it is driven</h3>
      <GoesOn scene={scene} trial={trial} />
      {trial.follows === undefined && endField('Head starts at', 'startMm', script.start)}
      {endField(trial.follows === undefined ? 'and arrives at' : 'Head arrives at', 'finishMm', script.finish)}
      {placed && <Refusable acts={[endToEnd]} />}
      <StopField trial={trial} />
      <ol aria-label="Orders to the controller">
        {trial.orders.map((_, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: orders are numbered, and the number is their name
          <OrderRow key={index} trial={trial} index={index} middleMm={Math.round(lengthMm / 2)} />
        ))}
      </ol>
      <Refusable
        acts={[{ words: 'One more order', act: () => attempt('an order', (now) => addOrder(now, trial.id)) }]}
      />
      <TypedField
        className="dimension-field text"
        label="Name of the trial"
        value={trial.name}
        onTake={(name) => attempt('name', (now) => renameTrial(now, trial.id, name.trim()))}
      />
      <Refusable
        acts={[{ words: 'Remove the trial', act: () => attempt('removal', (now) => removeTrial(now, trial.id)) }]}
      />
    </div>
  );
}
