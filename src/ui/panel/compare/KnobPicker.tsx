import { useId } from 'react';
import type { Knob, KnobGroup } from '../../../state/study/index.ts';
import { useSession } from '../../context.tsx';

/** The first thing worth turning: all easements of the track or route on show, else a measure of its alignment, else whatever there is. */
export const firstKnob = (groups: readonly KnobGroup[], { trackId, id }: ShownTrial): Knob | null => {
  const all = groups.flatMap(({ knobs }) => knobs);
  const route = all.find(({ at }) => at === `trials/${id}/easements`);
  if (route !== undefined) return route;
  const own = all.filter(({ at }) => at.startsWith(`tracks/${trackId}/`));
  const first =
    own.find(({ at }) => at.endsWith('/easements')) ?? own.find(({ at }) => at.includes('/alignment/')) ?? all[0];
  return first ?? null;
};

interface ShownTrial {
  readonly trackId: string;
  readonly id: string;
}

const none: ShownTrial = { trackId: '', id: '' };

/** The trial on show, as far as it says what is worth turning. */
export const useShownTrial = (): ShownTrial => useSession((state) => state.trial) ?? none;

interface KnobPickerProps {
  readonly label: string;
  readonly groups: readonly KnobGroup[];
  readonly chosen: string;
  readonly onChoose: (at: string) => void;
}

/** Picks what of the railway is varied, under what it belongs to. */
export function KnobPicker({ label, groups, chosen, onChoose }: KnobPickerProps) {
  const id = useId();
  return (
    <div className="sheet-field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={chosen} onChange={(event) => onChoose(event.target.value)}>
        {groups.map(({ name, knobs }) => (
          <optgroup key={name} label={name}>
            {knobs.map((knob) => (
              <option key={knob.at} value={knob.at}>
                {knob.label}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
    </div>
  );
}
