import { useMemo, useState } from 'react';
import { type Knob, knobAt, knobGroups, usualRange } from '../../../../state/study/index.ts';
import { Segmented } from '../../../controls/Segmented.tsx';
import { GaugePicker } from '../GaugePicker.tsx';
import { firstKnob, KnobPicker, useShownTrial } from '../KnobPicker.tsx';
import { MapOutcome } from '../map/MapOutcome.tsx';
import { NumberField } from '../NumberField.tsx';
import { Running } from '../Running.tsx';
import { useBaseScene, useStudy, useStudyActions } from '../useStudy.ts';
import { BasePicker } from '../variants/BasePicker.tsx';
import { figure, withUnit } from '../words.ts';
import { GradeAnswer } from './GradeAnswer.tsx';
import { LimitRows } from './LimitRows.tsx';
import { MeasurePicker } from './MeasurePicker.tsx';
import { Questions } from './Questions.tsx';
import { SweepOutcome } from './SweepOutcome.tsx';

/** Even runs of a sweep, and of each side of a map; the edges come on top. */
const evenRuns = 9;
const mapRuns = 6;

/** An edge is pinned down to this share of the range. */
const edgeShare = 1 / 64;

/** Halvings of the sides of cells that a map's border runs through: to a share of 1/40 of its range. */
const mapRefine = 3;

/** Varies one number along a curve, or two over a map; two questions are asked so often that they are ready. */
export function SweepPart() {
  const scene = useBaseScene();
  const sweep = useStudy((state) => state.sweep);
  const map = useStudy((state) => state.map);
  const grade = useStudy((state) => state.grade);
  const gauge = useStudy((state) => state.gauge);
  const shown = useShownTrial();
  const actions = useStudyActions();
  const groups = useMemo(() => (scene ? knobGroups(scene) : []), [scene]);
  const [two, setTwo] = useState(false);
  const [across, setAcross] = useState<Side>({ at: '', range: null });
  const [up, setUp] = useState<Side>({ at: '', range: null });
  const asked = sweep?.question ? sweep : null;
  const first = (scene && knobAt(scene, across.at)) ?? firstKnob(groups, shown);
  const second = (scene && knobAt(scene, up.at)) ?? secondOf(groups, first);
  if (!scene || !first || !second) return null;
  const [from, to] = across.range ?? usualRange(first);
  const [low, high] = up.range ?? usualRange(second);
  const running =
    sweep !== null && (sweep.line === null || (sweep.question !== null && waitsForFull(sweep)))
      ? sweep
      : map !== null && map.area === null
        ? map
        : null;
  const start = () => {
    if (two) {
      const side = (knob: Knob, ends: readonly [number, number]) => {
        const [least, most] = [Math.min(...ends), Math.max(...ends)];
        return { at: knob.at, from: least, to: most, points: knob.whole ? Math.max(2, most - least + 1) : mapRuns };
      };
      const refine = first.whole || second.whole ? 0 : mapRefine;
      void actions.map({ across: side(first, [from, to]), up: side(second, [low, high]), refine });
    } else {
      void actions.sweep({ at: first.at, from, to, points: evenRuns, edgeWithin: Math.abs(to - from) * edgeShare });
    }
  };
  return (
    <>
      <Questions />
      {grade !== null && <GradeAnswer grade={grade} />}
      {asked !== null && <SweepOutcome sweep={asked} knob={knobAt(scene, asked.ask.at) ?? first} />}
      {asked !== null && running === asked && <Running label="Sweep" progress={asked.progress} />}
      <BasePicker />
      <Segmented
        label="How many numbers"
        choices={[
          { value: 'one', label: 'One number' },
          { value: 'two', label: 'Two numbers' },
        ]}
        value={two ? 'two' : 'one'}
        onChange={(value) => setTwo(value === 'two')}
        wide
      />
      <SideFields
        label={two ? 'Across' : 'What is varied'}
        groups={groups}
        knob={first}
        range={[from, to]}
        onChange={setAcross}
      />
      {two && <SideFields label="Up" groups={groups} knob={second} range={[low, high]} onChange={setUp} />}
      <GaugePicker gauge={gauge} onChoose={actions.setGauge} />
      <LimitRows />
      <MeasurePicker />
      {running !== null && running !== asked ? (
        <Running label={two ? 'Map' : 'Sweep'} progress={running.progress} />
      ) : (
        <button
          type="button"
          className="study-button"
          disabled={from === to || (two && (low === high || first.at === second.at))}
          onClick={start}
        >
          {two ? 'Map the two' : `Sweep from ${figure(from)} to ${withUnit(to, first.unit)}`}
        </button>
      )}
      {sweep && sweep !== asked && !two && sweep.ask.at === first.at && sweep.points.length > 0 && (
        <SweepOutcome key={sweep.ask.at} sweep={sweep} knob={first} />
      )}
      {map && two && map.points.length > 0 && <MapOutcome map={map} scene={scene} />}
    </>
  );
}

/** A knob that was picked, by its key, and the range given for it. */
interface Side {
  readonly at: string;
  readonly range: readonly [number, number] | null;
}

const waitsForFull = ({ line, question }: NonNullable<ReturnType<typeof useSweep>>): boolean =>
  line?.whole === true && question !== null && question.full === undefined;

const useSweep = () => useStudy((state) => state.sweep);

/** A second number worth mapping against the first: a radius of the alignment, else another number. */
const secondOf = (groups: ReturnType<typeof knobGroups>, first: Knob | null): Knob | null => {
  const others = groups.flatMap(({ knobs }) => knobs).filter(({ at }) => at !== first?.at);
  const track = first?.at.split('/', 2).join('/') ?? '';
  return others.find(({ at }) => at.startsWith(`${track}/`) && at.endsWith('radiusMm')) ?? others[0] ?? null;
};

interface SideFieldsProps {
  readonly label: string;
  readonly groups: ReturnType<typeof knobGroups>;
  readonly knob: Knob;
  readonly range: readonly [number, number];
  readonly onChange: (side: Side) => void;
}

/** One number that is varied, and between what. */
function SideFields({ label, groups, knob, range: [from, to], onChange }: SideFieldsProps) {
  const { at, field, unit } = knob;
  return (
    <>
      <KnobPicker label={label} groups={groups} chosen={at} onChoose={(next) => onChange({ at: next, range: null })} />
      <p className="quiet about">
        {knob.about} Now {withUnit(knob.value, unit)}.
      </p>
      <div className="study-range">
        <NumberField
          key={`${at} from`}
          label="From"
          at={field}
          unit={unit}
          value={from}
          onChange={(value) => onChange({ at, range: [value, to] })}
        />
        <NumberField
          key={`${at} to`}
          label="To"
          at={field}
          unit={unit}
          value={to}
          onChange={(value) => onChange({ at, range: [from, value] })}
        />
      </div>
    </>
  );
}
