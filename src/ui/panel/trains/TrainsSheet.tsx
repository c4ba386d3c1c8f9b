import { useMemo, useState } from 'react';
import { trainOfScene } from '../../../state/index.ts';
import { renameTrain } from '../../../state/stock/index.ts';
import { useDesk, useSession } from '../../context.tsx';
import { Fact } from '../../controls/Fact.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { counted, lengthShown, massShown, useShow } from '../../show.ts';
import { CouplingPart } from './CouplingPart.tsx';
import { LoadPart } from './LoadPart.tsx';
import { MakeUp } from './MakeUp.tsx';
import { MakeUpDrawing } from './MakeUpDrawing.tsx';
import { TrainChoice } from './TrainChoice.tsx';
import { TrialsPart } from './TrialsPart.tsx';
import { VehiclePart } from './VehiclePart.tsx';
import '../editSheet.css';
import './trains.css';

/** The collection: how each train is made up, the numbers of each vehicle and of what couples them, and the trials they are put to. */
export function TrainsSheet() {
  const show = useShow();
  const { actions } = useDesk();
  const scene = useSession((state) => state.scene);
  const onRoad = useSession((state) => state.trial?.trainId ?? '');
  const [wanted, setWanted] = useState<string | null>(null);
  const [entry, setEntry] = useState(0);
  const trains = scene?.trains ?? [];
  const file = trains.find(({ id }) => id === wanted) ?? trains.find(({ id }) => id === onRoad) ?? trains[0];
  const train = useMemo(() => (scene && file ? trainOfScene(scene, file.id) : null), [scene, file]);
  if (!scene || !file || !train) return null;
  const chosen = Math.min(entry, file.vehicles.length - 1);
  const kind = scene.stock.find(({ id }) => id === file.vehicles[chosen].stock);
  const mass = massShown(
    train.vehicles.reduce((sum, vehicle) => sum + vehicle.mass, 0),
    show,
  );
  const length = lengthShown(train.length, show);
  const choose = (id: string) => {
    setWanted(id);
    setEntry(0);
  };
  return (
    <section className="edit-sheet trains-sheet" aria-label="Trains">
      <h2>{train.name}</h2>
      <p className="quiet">{counted(train.vehicles.length, 'vehicle')}</p>
      <MakeUpDrawing train={train} chosen={chosen} onChoose={setEntry} />
      <div className="train-facts">
        <Fact name="Mass" shown={mass.shown} others={mass.other} />
        <Fact name="Length coupled up" shown={length.shown} others={length.other} />
      </div>
      <MakeUp scene={scene} train={file} groups={train.groups} chosen={chosen} onChoose={setEntry} />
      <LoadPart scene={scene} train={file} />
      {kind && <VehiclePart key={kind.id} scene={scene} kind={kind} train={file} entry={chosen} />}
      {kind && <CouplingPart scene={scene} kind={kind} />}
      <TrialsPart scene={scene} train={file} />
      <h3>Trains</h3>
      <TypedField
        className="dimension-field text"
        label="Name of the train"
        value={file.name}
        onTake={(name) => actions.attempt('name of the train', (now) => renameTrain(now, file.id, name.trim()))}
      />
      <TrainChoice trains={trains} train={file} onChoose={choose} />
    </section>
  );
}
