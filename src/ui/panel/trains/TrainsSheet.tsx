import { useMemo, useState } from 'react';
import { trainOfScene } from '../../../state/index.ts';
import { useDesk, useSession } from '../../context.tsx';
import { Fact } from '../../controls/Fact.tsx';
import { counted, lengthShown, massShown, useShow } from '../../show.ts';
import { VehicleRows } from './VehicleRows.tsx';

/** The trains as the scene gives them, to read: each vehicle with its masses and measures. */
export function TrainsSheet() {
  const show = useShow();
  const scene = useSession((state) => state.scene);
  const trialTrain = useSession((state) => state.trial?.trainId ?? '');
  const { actions } = useDesk();
  const leading = useSession((state) => state.compiled?.scene.trials.find(({ id }) => id === state.trial?.id)?.leading);
  const [chosen, setChosen] = useState<string | null>(null);
  const trains = scene?.trains ?? [];
  const current =
    trains.find((train) => train.id === chosen) ?? trains.find((train) => train.id === trialTrain) ?? trains[0];
  const train = useMemo(() => (scene && current ? trainOfScene(scene, current.id) : null), [scene, current]);
  if (!train || !current) return null;
  // A vehicle of the train on the road can be shown there, by the joint behind it.
  const onRoad = current.id === trialTrain && train.vehicles.length > 1;
  const last = train.vehicles.length - 1;
  const jointBehind = (place: number) => Math.min(last - 1, leading === 'first' ? place : last - place);
  const mass = massShown(
    train.vehicles.reduce((sum, vehicle) => sum + vehicle.mass, 0),
    show,
  );
  const length = lengthShown(train.length, show);
  return (
    <section aria-label="Trains">
      <h2>{train.name}</h2>
      <p className="quiet">{counted(train.vehicles.length, 'vehicle')}, to read</p>
      {trains.length > 1 && (
        <ul className="trial-list track-list" aria-label="Trains of this railway">
          {trains.map((one) => (
            <li key={one.id}>
              <button
                type="button"
                aria-current={one === current ? 'true' : undefined}
                onClick={() => setChosen(one.id)}
              >
                {one.name}
              </button>
            </li>
          ))}
        </ul>
      )}
      <Fact name="Mass" shown={mass.shown} others={mass.other} />
      <Fact name="Length coupled up" shown={length.shown} others={length.other} />
      {train.groups.map(({ vehicle, count, from }) => (
        <VehicleRows
          key={from}
          vehicle={vehicle}
          count={count}
          from={from}
          onShow={onRoad ? () => actions.chooseJoint(jointBehind(from - 1)) : null}
        />
      ))}
    </section>
  );
}
