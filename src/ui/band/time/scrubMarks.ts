import type { RunEvent } from '../../../core/dynamics/types.ts';
import { eventTitle } from '../../../core/findings/index.ts';
import type { Finding } from '../../../core/findings/types.ts';
import { riskById } from '../../../core/risks/index.ts';
import type { RiskId } from '../../../core/risks/types.ts';
import type { SessionState } from '../../../state/types.ts';
import { LabelRoom } from '../labelRoom.ts';
import { type MeasureText, textWidth } from '../textWidth.ts';
import { marginFigure, type Show } from '../words.ts';

/** Something that happened, named on the scrub. */
export interface ScrubMark {
  readonly time: number;
  readonly name: string;
  /** Needs a hand. */
  readonly marked: boolean;
  /** Heavier marks get their name first. */
  readonly weight: number;
  /** Index of the finding it stands for, or null for a thing of the run. */
  readonly finding: number | null;
}

/** What a failing finding does, in a word or two. */
const failingNames: Readonly<Record<RiskId, string>> = {
  stall: 'stalls',
  wheelspin: 'spins',
  'buffer-lock': 'buffers lock',
  'coupler-swing': 'swings too far',
  override: 'rides up',
  parting: 'lets go',
  'wheel-climb': 'climbs',
  'string-lining': 'string-lines',
  'jack-knife': 'jack-knifes',
  'axle-lift': 'lifts',
  grounding: 'grounds',
  headroom: 'strikes',
  passing: 'fouls',
  overturning: 'tips over',
  'bar-lift': 'bar lifts it',
  structure: 'strikes',
};

/** What there is too little of when it is only near. */
const nearNames: Readonly<Record<RiskId, string>> = {
  stall: 'pull',
  wheelspin: 'grip',
  'buffer-lock': 'overlap',
  'coupler-swing': 'swing',
  override: 'heads',
  parting: 'hold',
  'wheel-climb': 'flange',
  'string-lining': 'string-line',
  'jack-knife': 'jack-knife',
  'axle-lift': 'wheels',
  grounding: 'underside',
  headroom: 'headroom',
  passing: 'side',
  overturning: 'footing',
  'bar-lift': 'bar',
  structure: 'clearance',
};

/** Of what a run reports, what is worth a name; setting off and arriving are where they are expected. */
const worthNaming: ReadonlySet<RunEvent['kind']> = new Set([
  'stall',
  'slip',
  'standstill',
  'run-in',
  'run-out',
  'parting',
  'end-of-track',
]);

/** Happenings of one kind nearer than this are one, s: a run-in is heard joint by joint but is one run-in. */
const ONE_HAPPENING = 1;

function findingName(finding: Finding, show: Show): string {
  if (finding.verdict === 'fails') return failingNames[finding.risk];
  return `${nearNames[finding.risk]} ${marginFigure(finding.margin, riskById(finding.risk).unit, show)}`;
}

/** Everything worth a name on the scrub, in order of time: failing and near findings, and what the run reports. */
export function scrubMarks(result: NonNullable<SessionState['result']>, show: Show): ScrubMark[] {
  const marks: ScrubMark[] = [];
  for (const [index, finding] of result.findings.entries()) {
    if (finding.verdict === 'passes') continue;
    const fails = finding.verdict === 'fails';
    marks.push({
      time: finding.time,
      name: findingName(finding, show),
      marked: fails,
      weight: fails ? 1e6 - index : 1e5 - index,
      finding: index,
    });
  }
  for (const group of happenings(result.run.events)) {
    if (!worthNaming.has(group.kind)) continue;
    const name = eventTitle(group.kind);
    // A failure that has a finding is said once.
    const said = marks.some((mark) => Math.abs(mark.time - group.time) < ONE_HAPPENING && mark.name === name);
    if (said) continue;
    const grave = group.kind === 'stall' || group.kind === 'parting' || group.kind === 'slip';
    marks.push({
      time: group.time,
      name,
      marked: false,
      weight: (grave ? 1e4 : 0) + Math.abs(group.value),
      finding: null,
    });
  }
  return marks.sort((a, b) => a.time - b.time);
}

/** Events of one kind that follow each other closely, as the strongest of them. */
export function happenings(events: readonly RunEvent[]): RunEvent[] {
  const open = new Map<RunEvent['kind'], { strongest: RunEvent; last: number }>();
  const done: RunEvent[] = [];
  for (const event of [...events].sort((a, b) => a.time - b.time)) {
    const group = open.get(event.kind);
    if (group && event.time - group.last <= ONE_HAPPENING) {
      if (Math.abs(event.value) > Math.abs(group.strongest.value)) group.strongest = event;
      group.last = event.time;
      continue;
    }
    if (group) done.push(group.strongest);
    open.set(event.kind, { strongest: event, last: event.time });
  }
  return [...done, ...[...open.values()].map((group) => group.strongest)].sort((a, b) => a.time - b.time);
}

export interface PlacedMark {
  readonly mark: ScrubMark;
  readonly x: number;
  /** Middle of the name; null when there is no room for it. */
  readonly textX: number | null;
}

/** Marks with their names laid out over the scrub, the heaviest first, none over another. */
export function placeMarks(
  marks: readonly ScrubMark[],
  xAt: (time: number) => number,
  width: number,
  font: string,
  measure: MeasureText = textWidth,
): PlacedMark[] {
  const room = new LabelRoom({ left: -40, right: width + 40, top: 0, bottom: 1 });
  const texts = new Map<ScrubMark, number>();
  for (const mark of [...marks].sort((a, b) => b.weight - a.weight)) {
    const half = measure(mark.name, font) / 2;
    const x = Math.min(width - half + 24, Math.max(half - 24, xAt(mark.time)));
    if (room.take({ left: x - half - 4, right: x + half + 4, top: 0, bottom: 1 })) texts.set(mark, x);
  }
  return marks.map((mark) => ({ mark, x: xAt(mark.time), textX: texts.get(mark) ?? null }));
}
