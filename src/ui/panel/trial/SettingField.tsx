import { presentSetting } from '../../../state/index.ts';
import { useDesk, useSession } from '../../context.tsx';
import { DimensionField } from '../../controls/DimensionField.tsx';
import { percentWords, speedWords, useShow } from '../../show.ts';
import { readSetting } from './readSetting.ts';

/** The speed setting the trial runs at: per cent of full, or the speed a light engine would reach with it. */
export function SettingField() {
  const { actions } = useDesk();
  const show = useShow();
  const setting = useSession(presentSetting);
  const ratio = useSession((state) => state.scene?.scale.ratio);
  const freeSpeed = useSession((state) => freeSpeedOf(state.trial?.train.vehicles ?? []));
  const ghost = useSession((state) => {
    const cure = state.ghost && state.result?.findings[state.ghost.finding].cures[state.ghost.cure];
    return cure?.kind === 'setting' ? cure.to : null;
  });
  if (setting === null || freeSpeed === null) return null;
  return (
    <DimensionField
      label="Speed setting"
      value={setting}
      shown={[percentWords(setting).split('\u2009')[0], '%']}
      others={speedWords(setting * freeSpeed, ratio, show)}
      read={(text) => readSetting(text, freeSpeed, ratio)}
      step={0.01}
      least={0.01}
      most={1}
      onChange={(value) => void actions.setSetting(value)}
      onDragStart={actions.beginGesture}
      onDragEnd={actions.settleGesture}
      onDragCancel={actions.bailGesture}
      ghost={ghost === null ? undefined : percentWords(ghost)}
    />
  );
}

/** Speed of the slowest engine with no load at full setting, m/s. */
function freeSpeedOf(vehicles: readonly { readonly drive: { readonly freeSpeed: number } | null }[]): number | null {
  const speeds = vehicles.flatMap((vehicle) => (vehicle.drive ? [vehicle.drive.freeSpeed] : []));
  return speeds.length > 0 ? Math.min(...speeds) : null;
}
