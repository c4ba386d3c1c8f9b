import { useMemo, useState } from 'react';
import { type Knob, knobAt, knobGroups, usualRange } from '../../../state/study/index.ts';
import { useSession } from '../../context.tsx';
import { firstKnob, KnobPicker } from './KnobPicker.tsx';
import { NumberField } from './NumberField.tsx';
import { RouteFront } from './RouteFront.tsx';
import { Running } from './Running.tsx';
import { useBaseScene, useStudy, useStudyActions } from './useStudy.ts';
import { withUnit } from './words.ts';

/** Steps of a range at most, and how many railways are looked at at most. */
const mostSteps = 12;
const mostProbes = 80;

/** Looks for the best route over two numbers: those that no other beats in grade, room and margin. */
export function RoutePart() {
  const scene = useBaseScene();
  const route = useStudy((state) => state.route);
  const trackId = useSession((state) => state.trial?.trackId ?? '');
  const actions = useStudyActions();
  // Every number of the file; all easements at once are none of them.
  const groups = useMemo(
    () =>
      (scene ? knobGroups(scene) : []).flatMap(({ name, knobs }) => {
        const own = knobs.filter(({ at }) => !at.endsWith('/easements'));
        return own.length === 0 ? [] : [{ name, knobs: own }];
      }),
    [scene],
  );
  const [one, setOne] = useState<Choice>({ at: '', range: null });
  const [two, setTwo] = useState<Choice>({ at: '', range: null });
  const radii = groups
    .flatMap(({ knobs }) => knobs)
    .filter(({ at }) => at.startsWith(`tracks/${trackId}/alignment/`) && at.endsWith('/radiusMm'));
  const first = (scene && knobAt(scene, one.at)) ?? radii[0] ?? firstKnob(groups, trackId);
  const second =
    (scene && knobAt(scene, two.at)) ??
    [...radii, ...groups.flatMap(({ knobs }) => knobs)].find(({ at }) => at !== first?.at) ??
    null;
  if (!scene || !first || !second) return null;
  const ranges = [one.range ?? usualRange(first), two.range ?? usualRange(second)] as const;
  const valid = first.at !== second.at && ranges.every(([from, to]) => from < to);
  const start = () =>
    actions.bestRoute({
      numbers: [first, second].map((knob, k) => {
        const [from, to] = ranges[k];
        return { at: knob.at, from, to, step: stepOf(knob, from, to) };
      }),
      probes: mostProbes,
    });
  return (
    <>
      <h3>Best route</h3>
      <p className="quiet about">
        Turns two numbers at once and keeps every railway that no other beats in grade, room and margin together, in the
        trial on show.
      </p>
      <ChoiceFields label="The one" groups={groups} knob={first} range={ranges[0]} onChange={setOne} />
      <ChoiceFields label="The other" groups={groups} knob={second} range={ranges[1]} onChange={setTwo} />
      {route !== null && route.answer === null ? (
        <Running label="Best route" progress={route.progress} />
      ) : (
        <button type="button" className="study-button" disabled={!valid} onClick={() => void start()}>
          Find the best routes
        </button>
      )}
      {route !== null && <RouteFront route={route} knobs={route.ask.numbers.map(({ at }) => knobAt(scene, at))} />}
    </>
  );
}

interface Choice {
  readonly at: string;
  readonly range: readonly [number, number] | null;
}

/** A step that divides a range into at most a dozen settings: 1, 2 or 5 times a power of ten, as a builder sets it. */
function stepOf({ whole }: Knob, from: number, to: number): number {
  const least = (to - from) / mostSteps;
  let power = 1;
  while (power > least) power /= 10;
  while (power * 10 <= least) power *= 10;
  const step = [1, 2, 5, 10].map((times) => times * power).find((one) => one >= least) ?? least;
  return whole ? Math.max(1, Math.round(step)) : step;
}

interface ChoiceFieldsProps {
  readonly label: string;
  readonly groups: ReturnType<typeof knobGroups>;
  readonly knob: Knob;
  readonly range: readonly [number, number];
  readonly onChange: (choice: Choice) => void;
}

function ChoiceFields({ label, groups, knob: { at, field, unit, value }, range, onChange }: ChoiceFieldsProps) {
  const [from, to] = range;
  return (
    <>
      <KnobPicker label={label} groups={groups} chosen={at} onChoose={(next) => onChange({ at: next, range: null })} />
      <div className="study-range">
        <NumberField
          key={`${at} from`}
          label={`From (now ${withUnit(value, unit)})`}
          at={field}
          unit={unit}
          value={from}
          onChange={(next) => onChange({ at, range: [next, to] })}
        />
        <NumberField
          key={`${at} to`}
          label="To"
          at={field}
          unit={unit}
          value={to}
          onChange={(next) => onChange({ at, range: [from, next] })}
        />
      </div>
    </>
  );
}
