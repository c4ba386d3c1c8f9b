import { standingOf, vehicleName } from '../../core/findings/index.ts';
import { describeOf, namingOf, openKept, placesOf } from '../../state/index.ts';
import { commands } from '../chapters/index.ts';
import type { Desk } from '../context.tsx';
import { runCommand } from '../context.tsx';

/** One thing the palette offers. */
export interface Entry {
  readonly id: string;
  readonly group: 'Findings' | 'To do' | 'Places' | 'Vehicles' | 'Trials' | 'Railways';
  readonly text: string;
  /** Key, or where it is. */
  readonly note: string;
  readonly run: () => void;
}

/** Everything that can be found or done now, in the order it is listed before anything is typed. */
export function entriesOf(desk: Desk): Entry[] {
  return [...findings(desk), ...todo(desk), ...trials(desk), ...places(desk), ...vehicles(desk), ...railways(desk)];
}

function findings({ session, actions }: Desk): Entry[] {
  const state = session.getState();
  return (state.result?.findings ?? []).map((finding, index) => ({
    id: `finding-${index}`,
    group: 'Findings',
    text: describeOf(state, finding).headline,
    note: standingOf(finding),
    run: () => actions.seekToFinding(index),
  }));
}

function todo(desk: Desk): Entry[] {
  return commands
    .filter((command) => command.id !== 'open-palette' && command.canRun(desk))
    .map((command) => ({
      id: command.id,
      group: 'To do',
      text: command.label(desk),
      note: [command.shownKey, command.fieldKey?.shown].filter((key) => key !== undefined).join(' or '),
      run: () => runCommand(desk, command),
    }));
}

function trials({ session, actions }: Desk): Entry[] {
  const { scene, trialId } = session.getState();
  return (scene?.trials ?? [])
    .filter((trial) => trial.id !== trialId)
    .map((trial) => ({
      id: `trial-${trial.id}`,
      group: 'Trials',
      text: `Trial: ${trial.name}`,
      note: '',
      run: () => void actions.chooseTrial(trial.id),
    }));
}

function places({ session, actions }: Desk): Entry[] {
  const state = session.getState();
  return placesOf(state).map((place) => ({
    id: place.id,
    group: 'Places',
    text: place.name,
    note: place.where,
    run: () => actions.goToPlace(place.chainage),
  }));
}

function vehicles({ session, actions }: Desk): Entry[] {
  const state = session.getState();
  const { trial } = state;
  if (!trial) return [];
  const naming = namingOf(state);
  return trial.train.vehicles.map((vehicle, index) => ({
    id: `vehicle-${index}`,
    group: 'Vehicles',
    text: vehicleName(naming, index),
    note: vehicle.kind,
    run: () => {
      actions.chooseJoint(Math.min(index, trial.train.vehicles.length - 2));
      actions.setCamera('follow');
    },
  }));
}

function railways(desk: Desk): Entry[] {
  const { bundled, kept, actions, session } = desk;
  const own = kept.list().map(
    (entry): Entry => ({
      id: `kept-${entry.id}`,
      group: 'Railways',
      text: `Railway: ${entry.name}, yours`,
      note: 'kept here',
      run: () => void openKept(desk, entry, kept),
    }),
  );
  const examples = bundled
    .filter((entry) => entry.scene !== session.getState().scene)
    .map(
      (entry): Entry => ({
        id: `scene-${entry.id}`,
        group: 'Railways',
        text: `Railway: ${entry.scene.name}, the example`,
        note: counted(entry.scene.trials.length),
        run: () => void actions.openScene(entry.scene),
      }),
    );
  return [...own, ...examples];
}

const counted = (trials: number): string => (trials === 1 ? '1 trial' : `${trials} trials`);
