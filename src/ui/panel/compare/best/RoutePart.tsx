import { useMemo, useState } from 'react';
import { formatNumber } from '../../../../core/units/index.ts';
import {
  knobAt,
  knobGroups,
  type ProfileAsk,
  type RoomKind,
  type RouteAim,
  roomKept,
} from '../../../../state/study/index.ts';
import { Segmented } from '../../../controls/Segmented.tsx';
import { GaugePicker } from '../GaugePicker.tsx';
import { useShownTrial } from '../KnobPicker.tsx';
import { Running } from '../Running.tsx';
import { useBaseScene, useStudy, useStudyActions } from '../useStudy.ts';
import { HeightLimits, LimitField, usualHeights } from './HeightLimits.tsx';
import { RouteEnd } from './RouteEnd.tsx';
import { RouteFront } from './RouteFront.tsx';
import { RouteNumbers } from './RouteNumbers.tsx';
import { type Choice, freeNumbers, looksOf, nextNumber, proposedClosers, rangeOf, stepOf } from './routeNumbers.ts';

const aims: readonly { readonly value: RouteAim; readonly label: string }[] = [
  { value: 'front', label: 'All three' },
  { value: 'grade', label: 'Least grade' },
  { value: 'margin', label: 'Most margin' },
];

const aimWords: Readonly<Record<RouteAim, string>> = {
  front: 'Keeps every railway that no other beats in grade, room and margin together, in the trial on show.',
  grade: 'Looks for the railway with the least ruling grade, curves counted.',
  margin: 'Looks for the railway whose smallest margin, of all risks in the trial on show, is greatest.',
};

/** Looks for the best route over some numbers, within the room and what else is held. */
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
  const [aim, setAim] = useState<RouteAim>('front');
  const [choices, setChoices] = useState<readonly Choice[] | null>(null);
  const [picked, setPicked] = useState<readonly string[] | null>(null);
  const [endKept, setEndKept] = useState<boolean | null>(null);
  const [best, setBest] = useState(false);
  const [ticks, setTicks] = useState<Readonly<Partial<Record<RoomKind, boolean>>>>({});
  const [limits, setLimits] = useState<ProfileAsk>(usualHeights);
  const [leastRadiusMm, setLeastRadius] = useState<number | null>(null);
  const [headroomMm, setHeadroom] = useState<number | null>(null);
  const gauge = useStudy((state) => state.gauge);
  const numbers = useMemo(() => {
    const all = groups.flatMap(({ knobs }) => knobs);
    const known = (list: readonly Choice[]) =>
      list.flatMap((one) => {
        const knob = all.find(({ at }) => at === one.at);
        return knob === undefined ? [] : [{ ...one, knob }];
      });
    const own = known(choices ?? []);
    if (own.length > 0) return own;
    const first = nextNumber(groups, shown.trackId, []);
    const second = first === null ? null : nextNumber(groups, shown.trackId, [first]);
    return known([first, second].flatMap((at) => (at === null ? [] : [{ at, range: null }])));
  }, [groups, choices, shown.trackId]);
  const chosen = numbers.map(({ at }) => at);
  const key = chosen.join(' ');
  const proposed = useMemo(
    () => (scene === null ? none : proposedClosers(scene, shown.trackId, key.split(' '))),
    [scene, shown.trackId, key],
  );
  const kept = useMemo(() => (scene === null ? [] : roomKept(scene, shown.id)), [scene, shown.id]);
  if (!scene || numbers.length === 0) return null;
  const free = freeNumbers(groups, shown.trackId, chosen);
  const solved = picked?.filter((at) => free.some((one) => one.at === at)) ?? proposed.solved;
  const held = endKept ?? proposed.why === null;
  const within = kept.flatMap(({ kind, kept: now }) => ((ticks[kind] ?? now) ? [kind] : []));
  const asked = numbers.map((one) => {
    const [from, to] = rangeOf(one, one.knob);
    return { at: one.at, from, to, step: stepOf(one.knob, from, to) };
  });
  const valid =
    new Set(chosen).size === chosen.length &&
    asked.every(({ from, to, step }) => from < to && step <= to - from) &&
    (!held || solved.length > 0);
  const { all, looked } = looksOf(valid ? asked : []);
  const start = () =>
    actions.bestRoute({
      numbers: asked,
      aim,
      probes: looked,
      endKept: held,
      solved: held ? solved : [],
      heights: best ? limits : null,
      within,
      leastRadiusMm,
      headroomMm,
    });
  return (
    <>
      <h3>Best route</h3>
      <Segmented label="What for" choices={aims} value={aim} onChange={setAim} wide />
      <p className="quiet about">{aimWords[aim]}</p>
      <RouteNumbers groups={groups} trackId={shown.trackId} numbers={numbers} onChange={setChoices} />
      <RouteEnd kept={held} onKeep={setEndKept} why={proposed.why} solved={solved} free={free} onSolve={setPicked} />
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
        <>
          <button type="button" className="study-button" disabled={!valid} onClick={() => void start()}>
            {aim === 'front' ? 'Find the best routes' : 'Find the best route'}
          </button>
          {valid && <p className="quiet about">{looksWords(all, looked)}</p>}
        </>
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

const none = { solved: [], why: null } as const;

/** Whether what will be found is proven. */
const looksWords = (all: number, looked: number): string => {
  const settings = formatNumber(all, { digits: 0 });
  return all <= looked
    ? `All ${settings} settings are looked at.`
    : `${looked} of ${settings} settings are looked at: the best found, not proven.`;
};
