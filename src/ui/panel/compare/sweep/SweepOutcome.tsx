import { useState } from 'react';
import { type Knob, measureById, type SweepState } from '../../../../state/study/index.ts';
import { useStudy } from '../useStudy.ts';
import { figure, withUnit } from '../words.ts';
import { MeasureChart } from './MeasureChart.tsx';
import { ProbedPoint } from './ProbedPoint.tsx';
import { SweepChart } from './SweepChart.tsx';

/** What a sweep came to: the curve, the edge in words, and the value that is looked at. */
export function SweepOutcome({ sweep, knob }: { readonly sweep: SweepState; readonly knob: Knob }) {
  const { unit, label } = knob;
  const [chosen, setChosen] = useState<number | null>(null);
  const id = useStudy((state) => state.drawn);
  const drawn = id === null ? null : measureById(id);
  const { ask, line } = sweep;
  // A question has its own answer; a sweep is read at its edge until another place is pressed.
  const edge = sweep.question === null ? (line?.edges[0]?.passes ?? null) : null;
  const value = chosen ?? edge;
  const point = sweep.points.find(({ at }) => at === value);
  const full = sweep.question?.full ?? null;
  const drawing = { sweep, unit, title: label, chosen: value, onChoose: setChosen };
  return (
    <>
      {drawn === null ? <SweepChart {...drawing} /> : <MeasureChart {...drawing} measure={drawn} />}
      <p className="conclusion" role="status">
        {line === null ? `${sweep.points.length} runs so far` : conclusion(sweep, unit)}
      </p>
      {point && (
        <ProbedPoint
          title={withUnit(point.at, unit)}
          probe={point.probe}
          terms={sweep}
          name={`${label.replace(':', '')} ${withUnit(point.at, unit)}`}
          settings={[{ at: ask.at, to: point.at }]}
        />
      )}
      {full !== null && full !== point?.at && (
        <FullAnswer full={full} ask={ask} unit={unit} label={label} sweep={sweep} />
      )}
    </>
  );
}

interface FullAnswerProps {
  readonly full: number;
  readonly ask: SweepState['ask'];
  readonly unit: string;
  readonly label: string;
  readonly sweep: SweepState;
}

/** The answer in whole millimetres, which is none of the values of the curve. */
function FullAnswer({ full, ask, unit, label, sweep }: FullAnswerProps) {
  return (
    <ProbedPoint
      title={withUnit(full, unit)}
      probe={null}
      terms={sweep}
      name={`${label.replace(':', '')} ${withUnit(full, unit)}`}
      settings={[{ at: ask.at, to: full }]}
    />
  );
}

function conclusion(sweep: SweepState, unit: string): string {
  const { line, ask, trialIds, question, points } = sweep;
  if (line === null) return '';
  const runs = `${line.points.length} runs${trialIds.length > 1 ? ` of ${trialIds.length} trials` : ''}`;
  if (!line.whole) return `Stopped after ${runs}.`;
  if (question !== null) return easementWords(question, points, unit, runs);
  if (line.edges.length === 0) {
    return `No change of verdict between ${figure(ask.from)} and ${withUnit(ask.to, unit)} (${runs}).`;
  }
  const sentences = line.edges.map(({ passes, fails }) =>
    passes < fails
      ? `Passes up to ${withUnit(passes, unit)}, fails from ${withUnit(fails, unit)}.`
      : `Fails up to ${withUnit(fails, unit)}, passes from ${withUnit(passes, unit)}.`,
  );
  return `${sentences.join(' ')} (${runs})`;
}

function easementWords(
  { full, trains }: NonNullable<SweepState['question']>,
  points: SweepState['points'],
  unit: string,
  runs: string,
): string {
  const who = trains === 1 ? 'the train passes' : `all ${trains} trains pass`;
  if (full === undefined) return `${runs}; now in full …`;
  if (full === null) {
    const longest = Math.max(...points.map(({ at }) => at));
    return `Not even with easements of ${withUnit(longest, unit)} does every train pass propelled (${runs}).`;
  }
  return `Shortest easement with which ${who} propelled: ${withUnit(full, unit)}, confirmed in full (${runs}).`;
}
