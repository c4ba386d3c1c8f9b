import type { Knob, KnobGroup } from '../../../../state/study/index.ts';
import { KnobPicker } from '../KnobPicker.tsx';
import { NumberField } from '../NumberField.tsx';
import { withUnit } from '../words.ts';
import { type Choice, mostNumbers, nextNumber, rangeOf } from './routeNumbers.ts';

interface RouteNumbersProps {
  readonly groups: readonly KnobGroup[];
  readonly trackId: string;
  readonly numbers: readonly (Choice & { readonly knob: Knob })[];
  readonly onChange: (numbers: readonly Choice[]) => void;
}

/** The numbers that a search chooses, each with its range: one to eight. */
export function RouteNumbers({ groups, trackId, numbers, onChange }: RouteNumbersProps) {
  const next = nextNumber(
    groups,
    trackId,
    numbers.map(({ at }) => at),
  );
  const change = (at: number, to: Choice) => onChange(numbers.with(at, { ...numbers[at], ...to }));
  return (
    <>
      {numbers.map((one, k) => {
        const { at, knob } = one;
        const [from, to] = rangeOf(one, knob);
        const label = `Number ${k + 1}`;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a number is its place in the list
          <fieldset key={k} aria-label={label} className="route-number">
            <KnobPicker
              label={label}
              groups={groups}
              chosen={at}
              onChoose={(picked) => change(k, { at: picked, range: null })}
            />
            {numbers.length > 1 && (
              <button
                type="button"
                className="link"
                aria-label={`Take out: ${knob.label}`}
                onClick={() => onChange(numbers.filter((_, other) => other !== k))}
              >
                Take out
              </button>
            )}
            <div className="study-range route-ends">
              <NumberField
                key={`${at} from`}
                label={`From (now ${withUnit(knob.value, knob.unit)})`}
                at={knob.field}
                unit={knob.unit}
                value={from}
                onChange={(value) => change(k, { at, range: [value, to] })}
              />
              <NumberField
                key={`${at} to`}
                label="To"
                at={knob.field}
                unit={knob.unit}
                value={to}
                onChange={(value) => change(k, { at, range: [from, value] })}
              />
            </div>
          </fieldset>
        );
      })}
      {numbers.length < mostNumbers && next !== null && (
        <button type="button" className="link" onClick={() => onChange([...numbers, { at: next, range: null }])}>
          One more number
        </button>
      )}
    </>
  );
}
