import { useMemo, useState } from 'react';
import { knobAt, knobGroups } from '../../../../state/study/index.ts';
import { firstKnob, KnobPicker, useShownTrial } from '../KnobPicker.tsx';
import { NumberField } from '../NumberField.tsx';
import { useBaseScene, useStudyActions } from '../useStudy.ts';
import { withUnit } from '../words.ts';
import { BasePicker } from './BasePicker.tsx';

/** Makes a variant in which one number is another, shows it beside the railway and works both out. */
export function NewVariant() {
  const scene = useBaseScene();
  const shown = useShownTrial();
  const actions = useStudyActions();
  const groups = useMemo(() => (scene ? knobGroups(scene) : []), [scene]);
  const [picked, setPicked] = useState('');
  const [wanted, setWanted] = useState<number | null>(null);
  const [same, setSame] = useState(false);
  const knob = (scene && knobAt(scene, picked)) ?? firstKnob(groups, shown);
  if (knob === null) return null;
  const { at, field, unit, label } = knob;
  const value = wanted ?? knob.value;
  const make = async () => {
    setSame(value === knob.value);
    if (value === knob.value) return;
    setWanted(null);
    const name = `${label.replace(':', '')} ${withUnit(value, unit)}`;
    if (await actions.addVariant(name, [{ at, to: value }], true)) await actions.compare();
  };
  return (
    <>
      <h3>New variant</h3>
      <BasePicker />
      <KnobPicker
        label="What is different"
        groups={groups}
        chosen={at}
        onChoose={(next) => {
          setPicked(next);
          setWanted(null);
        }}
      />
      <p className="quiet about">
        {knob.about} Now {withUnit(knob.value, unit)}.
      </p>
      <NumberField key={at} label="In the variant" at={field} unit={unit} value={value} onChange={setWanted} />
      {/* Never disabled: what was typed is only taken when the field is left, which is by pressing this. */}
      <button type="button" className="study-button" onClick={() => void make()}>
        Make it and show both
      </button>
      {same && (
        <p className="said wrong" role="alert">
          That is what it is now: say what it is to be in the variant.
        </p>
      )}
    </>
  );
}
