import { useSession } from '../../context.tsx';
import { counted, massShown, useShow } from '../../show.ts';
import { Driving } from './Driving.tsx';
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
  if (!trial) return null;
  const { vehicles } = trial.train;
  const mass = vehicles.reduce((sum, vehicle) => sum + vehicle.mass, 0);
  return (
    <section aria-label="Trial">
      <h2>{trial.train.name}</h2>
      <p className="quiet">
        {counted(vehicles.length, 'vehicle')}, {massShown(mass, show).shown.join('\u2009')}
      </p>
      <TrainStrip trial={trial} />
      <WorkingSwitches />
      <SettingField />
      <RunState />
      <TrialList />
      <TrialFacts trial={trial} />
      <Driving />
    </section>
  );
}
