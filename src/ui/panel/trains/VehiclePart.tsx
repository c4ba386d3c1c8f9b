import {
  copyVehicle,
  removeVehicle,
  type SceneVehicle,
  type StockNumber,
  setBogies,
  setBuffers,
  setEntry,
  setVehicleField,
  vehicleNumbers,
} from '../../../state/stock/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk } from '../../context.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { counted } from '../../show.ts';
import { freeName } from '../freeName.ts';
import { NumberFields } from './NumberFields.tsx';

interface VehiclePartProps {
  readonly scene: Scene;
  readonly kind: SceneVehicle;
  readonly train: Scene['trains'][number];
  /** Index of the entry of the train it stands in. */
  readonly entry: number;
}

/** The numbers of the chosen vehicle's kind: they hold for all of that kind, in every train. */
export function VehiclePart({ scene, kind, train, entry }: VehiclePartProps) {
  const { actions, session } = useDesk();
  const attempt = (words: string, make: Parameters<typeof actions.attempt>[1]) =>
    actions.attempt(`${words} of ${kind.name}`, make);
  const put = ({ field, label }: StockNumber, value: number | undefined) =>
    attempt(label.toLowerCase(), (now) => setVehicleField(now, kind.id, field, value));
  const copy = () => {
    const name = freeName(scene.stock, kind.name);
    return actions.attempt(`${name} in ${train.name}`, (now) => {
      const more = copyVehicle(now, kind.id, name);
      const made = more.stock.find((one) => one.name === name);
      return made === undefined ? more : setEntry(more, train.id, entry, { stock: made.id });
    });
  };
  const inAll = session
    .getState()
    .scene?.trains.flatMap(({ vehicles }) => vehicles)
    .reduce((sum, { stock, count = 1 }) => sum + (stock === kind.id ? count : 0), 0);
  return (
    <>
      <h3>{kind.name}</h3>
      <p className="quiet">
        {counted(inAll ?? 0, 'vehicle')} of this kind in all trains. Lighter figures are the usual ones; an empty field
        brings them back.
      </p>
      <TypedField
        className="dimension-field text"
        label="Name"
        value={kind.name}
        onTake={(name) => attempt('name', (now) => setVehicleField(now, kind.id, 'name', name.trim()))}
      />
      <div className="switches">
        <Segmented
          label="Stands on"
          value={kind.bogies === undefined ? 'frame' : 'bogies'}
          onChange={(on) => void attempt('running gear', (now) => setBogies(now, kind.id, on === 'bogies'))}
          choices={[
            { value: 'frame', label: 'Rigid frame' },
            { value: 'bogies', label: 'Bogies' },
          ]}
        />
        <Segmented
          label="Buffers"
          value={kind.buffers === undefined ? 'none' : 'some'}
          onChange={(on) => void attempt('buffers', (now) => setBuffers(now, kind.id, on === 'some'))}
          choices={[
            { value: 'some', label: 'Buffers' },
            { value: 'none', label: 'None' },
          ]}
        />
        {kind.drive && (
          <Segmented
            label="Worm"
            value={kind.drive.worm === false ? 'free' : 'holds'}
            onChange={(on) =>
              void attempt('worm', (now) =>
                setVehicleField(now, kind.id, 'drive/worm', on === 'holds' ? undefined : false),
              )
            }
            choices={[
              { value: 'holds', label: 'Worm holds' },
              { value: 'free', label: 'Runs free' },
            ]}
          />
        )}
      </div>
      {vehicleNumbers(scene, kind).map(({ name, numbers }) => (
        <div key={name}>
          <h4>{name}</h4>
          <NumberFields numbers={numbers} put={put} />
        </div>
      ))}
      <Refusable
        acts={[
          { words: 'Make this one a kind of its own', act: copy },
          {
            words: 'Remove the kind',
            act: () => actions.attempt(`removal of ${kind.name}`, (now) => removeVehicle(now, kind.id)),
          },
        ]}
      />
    </>
  );
}
