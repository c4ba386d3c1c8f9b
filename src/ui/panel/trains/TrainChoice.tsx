import { copyTrain, removeTrain } from '../../../state/stock/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk } from '../../context.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { freeName } from '../freeName.ts';

interface TrainChoiceProps {
  readonly trains: Scene['trains'];
  readonly train: Scene['trains'][number];
  readonly onChoose: (trainId: string) => void;
}

/** The trains of the railway: which is on the sheet, and further ones. */
export function TrainChoice({ trains, train, onChoose }: TrainChoiceProps) {
  const { actions, session } = useDesk();
  const copy = () => {
    const name = freeName(trains, train.name);
    const why = actions.attempt(`copy of ${train.name}`, (scene) => copyTrain(scene, train.id, name));
    const made = session.getState().scene?.trains.find((one) => one.name === name);
    if (why === null && made) onChoose(made.id);
    return why;
  };
  const remove = () => {
    const other = trains.find(({ id }) => id !== train.id);
    const why = actions.attempt(`removal of ${train.name}`, (scene) => removeTrain(scene, train.id));
    if (why === null && other) onChoose(other.id);
    return why;
  };
  return (
    <>
      {trains.length > 1 && (
        <ul className="trial-list track-list" aria-label="Trains of this railway">
          {trains.map((one) => (
            <li key={one.id}>
              <button type="button" aria-current={one === train ? 'true' : undefined} onClick={() => onChoose(one.id)}>
                {one.name}
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className="add-row">
        <Refusable
          acts={[
            { words: 'Another like it', spoken: `Another train like ${train.name}`, act: copy },
            ...(trains.length > 1 ? [{ words: 'Remove', spoken: `Remove ${train.name}`, act: remove }] : []),
          ]}
        />
      </div>
    </>
  );
}
