import { addOrder, removeTrial, renameTrial, setTrialEnd } from '../../../state/index.ts';
import { useDesk, useSession } from '../../context.tsx';
import { DimensionField } from '../../controls/DimensionField.tsx';
import { type Act, Refusable } from '../../controls/Refusable.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { mmShown, readMm } from '../../measures.ts';
import { useShow } from '../../show.ts';
import { OrderRow } from './OrderRow.tsx';

/** How the trial is driven: where it begins and arrives, each order to the controller, and what the trial is called. */
export function Driving() {
  const { actions } = useDesk();
  const show = useShow();
  const trial = useSession((state) => state.scene?.trials.find(({ id }) => id === state.trialId));
  const solved = useSession((state) => (state.trial?.id === state.trialId ? state.trial : null));
  if (!trial || !solved) return null;
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
        onChange={(value) => attempt(label.toLowerCase(), (scene) => setTrialEnd(scene, trial.id, end, value))}
        onDragStart={actions.beginGesture}
        onDragEnd={actions.settleGesture}
        onDragCancel={actions.bailGesture}
      />
    );
  };
  const endToEnd: Act = {
    words: 'From end to end',
    act: () =>
      attempt('start and arrival', (scene) =>
        setTrialEnd(setTrialEnd(scene, trial.id, 'startMm', undefined), trial.id, 'finishMm', undefined),
      ),
  };
  const placed = trial.startMm !== undefined || trial.finishMm !== undefined;
  return (
    <div className="driving">
      <h3>How it is driven</h3>
      {endField('Head starts at', 'startMm', script.start)}
      {endField('and arrives at', 'finishMm', script.finish)}
      {placed && <Refusable acts={[endToEnd]} />}
      <ol aria-label="Orders to the controller">
        {trial.orders.map((_, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: orders are numbered, and the number is their name
          <OrderRow key={index} trial={trial} index={index} middleMm={Math.round(lengthMm / 2)} />
        ))}
      </ol>
      <Refusable
        acts={[{ words: 'One more order', act: () => attempt('an order', (scene) => addOrder(scene, trial.id)) }]}
      />
      <TypedField
        className="dimension-field text"
        label="Name of the trial"
        value={trial.name}
        onTake={(name) => attempt('name', (scene) => renameTrial(scene, trial.id, name.trim()))}
      />
      <Refusable
        acts={[{ words: 'Remove the trial', act: () => attempt('removal', (scene) => removeTrial(scene, trial.id)) }]}
      />
    </div>
  );
}
