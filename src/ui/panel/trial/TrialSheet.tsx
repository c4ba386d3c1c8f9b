import { useState } from 'react';
import { useSession } from '../../context.tsx';
import { counted, massShown, useShow } from '../../show.ts';
import { Chooser } from './Chooser.tsx';
import { RunState } from './RunState.tsx';
import { SettingField } from './SettingField.tsx';
import { TrainStrip } from './TrainStrip.tsx';
import { TrialFacts } from './TrialFacts.tsx';
import { TrialList } from './TrialList.tsx';
import { WorkingSwitches } from './WorkingSwitches.tsx';
import './trial.css';

/** The trial on show: which train, how it is worked, at what setting, over what. */
export function TrialSheet() {
  const trial = useSession((state) => state.trial);
  const show = useShow();
  const [choosing, setChoosing] = useState(false);
  if (!trial) return null;
  const { vehicles } = trial.train;
  const mass = vehicles.reduce((sum, vehicle) => sum + vehicle.mass, 0);
  return (
    <section className="panel" aria-label="Trial">
      <button
        type="button"
        className="heading-button"
        title="Choose a railway and a trial"
        onClick={() => setChoosing(true)}
      >
        <h2>{trial.train.name}</h2>
        <span aria-hidden="true">▾</span>
      </button>
      <p className="quiet">
        {counted(vehicles.length, 'vehicle')}, {massShown(mass, show).shown.join('\u2009')}
      </p>
      <TrainStrip trial={trial} />
      <WorkingSwitches />
      <SettingField />
      <RunState />
      <TrialFacts trial={trial} />
      <TrialList onChooseScene={() => setChoosing(true)} />
      {choosing && <Chooser onClose={() => setChoosing(false)} />}
    </section>
  );
}
