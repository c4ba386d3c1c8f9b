import { useMemo, useState } from 'react';
import {
  closersOf,
  type Knob,
  knobAt,
  knobGroups,
  type ProfileAsk,
  type RoomKind,
  roomKept,
  usualRange,
} from '../../../state/study/index.ts';
import type { Scene } from '../../../state/types.ts';
import { Segmented } from '../../controls/Segmented.tsx';
import { GaugePicker } from './GaugePicker.tsx';
import { HeightLimits, LimitField, usualHeights } from './HeightLimits.tsx';
import { firstKnob, KnobPicker, useShownTrial } from './KnobPicker.tsx';
import { NumberField } from './NumberField.tsx';
import { RouteFront } from './RouteFront.tsx';
import { Running } from './Running.tsx';
import { useBaseScene, useStudy, useStudyActions } from './useStudy.ts';
import { withUnit } from './words.ts';

/** Steps of a range at most; and how many railways are looked at at most: all that two ranges have, so that the answer is proven. */
const mostSteps = 11;
const mostProbes = 150;

/** Looks for the best route over two numbers, within the room and what else is held: those that no other beats in grade, room and margin. */
export function RoutePart() {
  const scene = useBaseScene();
  const route = useStudy((state) => state.route);
  const shown = useShownTrial();
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
  const [endKept, setEndKept] = useState(true);
  const [best, setBest] = useState(false);
  const [ticks, setTicks] = useState<Readonly<Partial<Record<RoomKind, boolean>>>>({});
  const [limits, setLimits] = useState<ProfileAsk>(usualHeights);
  const [leastRadiusMm, setLeastRadius] = useState<number | null>(null);
  const [headroomMm, setHeadroom] = useState<number | null>(null);
  const gauge = useStudy((state) => state.gauge);
  const all = groups.flatMap(({ knobs }) => knobs);
  const plan = all.filter(({ at }) => at.startsWith(`tracks/${shown.trackId}/alignment/`));
  const radii = plan.filter(({ at }) => at.endsWith('/radiusMm'));
  const first = (scene && knobAt(scene, one.at)) ?? radii[0] ?? firstKnob(groups, shown);
  const second =
    (scene && knobAt(scene, two.at)) ?? [...radii, ...plan, ...all].find(({ at }) => at !== first?.at) ?? null;
  const end = useMemo(
    () => endWords(scene, shown.trackId, [first?.at ?? '', second?.at ?? '']),
    [scene, shown.trackId, first?.at, second?.at],
  );
  const kept = useMemo(() => (scene === null ? [] : roomKept(scene, shown.id)), [scene, shown.id]);
  if (!scene || !first || !second) return null;
  const within = kept.flatMap(({ kind, kept: now }) => ((ticks[kind] ?? now) ? [kind] : []));
  const ranges = [one.range ?? usualRange(first), two.range ?? usualRange(second)] as const;
  const valid = first.at !== second.at && ranges.every(([from, to]) => from < to);
  const start = () =>
    actions.bestRoute({
      numbers: [first, second].map((knob, k) => {
        const [from, to] = ranges[k];
        return { at: knob.at, from, to, step: stepOf(knob, from, to) };
      }),
      probes: mostProbes,
      endKept: end === null && endKept,
      heights: best ? limits : null,
      within,
      leastRadiusMm,
      headroomMm,
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
      <label className="study-tick">
        <input
          type="checkbox"
          checked={end === null && endKept}
          disabled={end !== null}
          onChange={(event) => setEndKept(event.target.checked)}
        />
        The line ends where it ends now
      </label>
      {end !== null && <p className="quiet about">{end}</p>}
      {kept.map(({ kind, kept: now }) => (
        <label key={kind} className="study-tick">
          <input
            type="checkbox"
            checked={within.includes(kind)}
            onChange={(event) => setTicks({ ...ticks, [kind]: event.target.checked })}
          />
          {roomWords[kind]}
          {now ? '' : ' (it is not now)'}
        </label>
      ))}
      <div className="study-range">
        <LimitField label="No curve under" at="radiusMm" value={leastRadiusMm} onChange={setLeastRadius} />
        <LimitField label="Headroom at least" at="heightMm" value={headroomMm} onChange={setHeadroom} />
      </div>
      <Segmented
        label="Heights"
        choices={[
          { value: 'own', label: 'Heights as they are' },
          { value: 'best', label: 'Best for each plan' },
        ]}
        value={best ? 'best' : 'own'}
        onChange={(value) => setBest(value === 'best')}
        wide
      />
      {best && <HeightLimits limits={limits} onChange={setLimits} />}
      <GaugePicker gauge={gauge} onChoose={actions.setGauge} />
      {route?.stopping && route.answer === null ? (
        <p className="conclusion" role="status">
          Ending with what is done …
        </p>
      ) : route !== null && route.answer === null ? (
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

const roomWords: Readonly<Record<RoomKind, string>> = {
  room: 'Decks stay inside the walls',
  obstacle: 'Decks keep clear of what stands in the room',
  boards: 'Decks stay on the boards',
};

/** Why the line cannot be made to end where it ends now; null where it can. */
function endWords(scene: Scene | null, trackId: string, chosen: readonly string[]): string | null {
  if (scene === null) return '';
  try {
    closersOf(scene, trackId, chosen);
    return null;
  } catch (error) {
    if (error instanceof RangeError) return error.message;
    throw error;
  }
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
