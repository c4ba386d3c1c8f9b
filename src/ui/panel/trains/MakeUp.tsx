import { useId, useState } from 'react';
import type { VehicleGroup } from '../../../state/index.ts';
import { addVehicle, moveEntry, removeEntry, setEntry } from '../../../state/stock/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk } from '../../context.tsx';
import { type Act, Refusable } from '../../controls/Refusable.tsx';

interface MakeUpProps {
  readonly scene: Scene;
  readonly train: Scene['trains'][number];
  /** One group an entry, in order. */
  readonly groups: readonly VehicleGroup[];
  /** Index of an entry. */
  readonly chosen: number;
  readonly onChoose: (entry: number) => void;
}

/** The vehicles of a train from its end called "first": what stands where, and how it is put together otherwise. */
export function MakeUp({ scene, train, groups, chosen, onChoose }: MakeUpProps) {
  const { actions } = useDesk();
  const id = useId();
  const [stock, setStock] = useState(scene.stock[0].id);
  const kind = scene.stock.find((one) => one.id === stock) ?? scene.stock[0];
  const put = (words: string, make: Parameters<typeof actions.attempt>[1], next = chosen) => {
    const why = actions.attempt(`${train.name}: ${words}`, make);
    if (why === null) onChoose(next);
    return why;
  };
  const actsOn = (index: number): readonly Act[] => {
    const { count = 1, turned = false } = train.vehicles[index];
    const { name } = groups[index].vehicle;
    const change = (words: string, to: Parameters<typeof setEntry>[3]) => () =>
      put(words, (now) => setEntry(now, train.id, index, to));
    const move = (by: -1 | 1) => () => put(`${name} moved`, (now) => moveEntry(now, train.id, index, by), index + by);
    return [
      { words: 'One more', act: change(`one ${name} more`, { count: count + 1 }) },
      ...(count > 1 ? [{ words: 'One fewer', act: change(`one ${name} fewer`, { count: count - 1 }) }] : []),
      ...(index > 0 ? [{ words: 'Ahead', spoken: 'Put it ahead of the one before', act: move(-1) }] : []),
      ...(index < train.vehicles.length - 1
        ? [{ words: 'Back', spoken: 'Put it behind the one after', act: move(1) }]
        : []),
      { words: 'Turn round', act: change(`${name} turned round`, { turned: !turned }) },
      {
        words: 'Take out',
        act: () => put(`without ${name}`, (now) => removeEntry(now, train.id, index), Math.max(0, index - 1)),
      },
    ];
  };
  return (
    <>
      <h3 id="make-up">Make-up</h3>
      <ol className="edit-rows" aria-labelledby="make-up">
        {groups.map(({ vehicle, count, from }, index) => (
          <li key={from} className={index === chosen ? 'edit-row chosen' : 'edit-row'}>
            <button type="button" className="row-head" aria-pressed={index === chosen} onClick={() => onChoose(index)}>
              <i>{count === 1 ? from : `${from}–${from + count - 1}`}</i>
              <b>{vehicle.name}</b>
              <small className="place">
                {[count > 1 && `${count} alike`, train.vehicles[index].turned && 'turned round']
                  .filter(Boolean)
                  .join(', ')}
              </small>
            </button>
            {index === chosen && <Refusable acts={actsOn(index)} />}
          </li>
        ))}
      </ol>
      <div className="add-row put-vehicle">
        <label htmlFor={id}>Add</label>
        <select id={id} value={kind.id} onChange={(event) => setStock(event.target.value)}>
          {scene.stock.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}
            </option>
          ))}
        </select>
        <Refusable
          acts={[
            {
              words: 'At the end',
              spoken: `Add ${kind.name} at the end`,
              act: () => put(`and ${kind.name}`, (now) => addVehicle(now, train.id, kind.id), groups.length),
            },
            {
              words: 'Ahead of this',
              spoken: `Add ${kind.name} ahead of the chosen one`,
              act: () => put(`and ${kind.name}`, (now) => addVehicle(now, train.id, kind.id, chosen)),
            },
          ]}
        />
      </div>
    </>
  );
}
