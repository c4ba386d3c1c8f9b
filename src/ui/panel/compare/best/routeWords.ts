import { formatNumber, thinSpace } from '../../../../core/units/index.ts';
import type { Knob, RouteState } from '../../../../state/study/index.ts';
import { distanceShown, gradeShown, lengthShown, percentWords, type Show, type Shown } from '../../../show.ts';
import { areaWords } from '../measureWords.ts';
import { withUnit } from '../words.ts';

type Answer = NonNullable<RouteState['answer']>;
type Found = RouteState['routes'][number];
type Conflict = Found['conflicts'][number];

/** A railway of the search as it is drawn and read: one that no other beats, one that was looked at and is beaten, or the one there is now. */
export interface Traded {
  readonly kind: 'unbeaten' | 'beaten' | 'now';
  readonly values: readonly number[];
  readonly ruling: number;
  readonly across: number;
  readonly along: number;
  readonly area: number;
  /** Least margin as a share of its plenty, in full where it was run so. */
  readonly margin: number;
  readonly inFull: boolean;
  /** The verdict by even running and whether the full run gives the same; null: not run. */
  readonly quickPasses: boolean | null;
  readonly agrees: boolean | null;
}

/** All that a search can show: what no other beats, and once it has ended what is beaten, and what there is now. */
export function tradedOf({ routes, answer }: RouteState): Traded[] {
  const of = (kind: Traded['kind'], one: Found): Traded => ({
    ...{ kind, values: one.values, ruling: one.ruling, across: one.across, along: one.along, area: one.area },
    ...{ margin: one.margin ?? one.quickMargin ?? 0, inFull: one.margin !== null },
    ...{ quickPasses: one.quickPasses, agrees: one.agrees },
  });
  const taken = new Set(routes.map(({ values }) => values.join()));
  const beaten = (answer?.looked ?? []).flatMap((one): Traded[] =>
    taken.has(one.values.join()) || one.quickMargin === null
      ? []
      : [{ ...one, kind: 'beaten', margin: one.quickMargin, inFull: false, quickPasses: null, agrees: null }],
  );
  const now = answer?.present == null ? [] : [of('now', answer.present)];
  return [...beaten, ...now, ...routes.map((one) => of('unbeaten', one))];
}

/** What tells one railway of a search from another. */
export const keyOf = ({ kind, values }: Traded): string => (kind === 'now' ? 'now' : values.join());

/** What can be set against what. Of grade and room less is better, of a margin more. */
export const measures = {
  room: { title: 'room', better: 'less', of: ({ area }: Traded) => area, text: areaWords },
  grade: { title: 'ruling grade', better: 'less', of: ({ ruling }: Traded) => ruling, text: gradeText },
  margin: { title: 'margin, of plenty', better: 'more', of: ({ margin }: Traded) => margin, text: marginText },
} as const;

export type Measure = keyof typeof measures;

function gradeText(grade: number, show: Show): string {
  return joined(gradeShown(grade, show));
}

function marginText(share: number): string {
  return percentWords(share);
}

const joined = ({ shown }: Shown): string => shown.filter((part) => part !== '').join(thinSpace);

/** The numbers of a railway by their names. */
export const valueWords = (values: readonly number[], knobs: readonly (Knob | null)[]): string =>
  values
    .map((value, k) => `${knobs[k]?.label.replace(':', '') ?? ''} ${withUnit(value, knobs[k]?.unit ?? '')}`)
    .join(', ');

/** What a railway comes to in all three measures. */
export const tradeWords = (one: Traded, show: Show): string =>
  [
    `${gradeText(one.ruling, show)} ruling`,
    `${joined(lengthShown(one.across, show))} by ${joined(lengthShown(one.along, show))}`,
    `smallest margin ${marginText(one.margin)} of plenty ${one.inFull ? 'in full' : 'by even running'}`,
  ].join(' · ');

/** Whether the full run says of a railway what the quasi-static pass said. */
export function verdictWords({ kind, inFull, quickPasses, agrees }: Traded): string {
  if (kind === 'beaten') return 'Another beats it in all three. Not run in full.';
  if (!inFull || quickPasses === null) return 'Not run in full.';
  const [quick, full] = [quickPasses, agrees === true ? quickPasses : !quickPasses].map((one) =>
    one ? 'passes' : 'fails',
  );
  return agrees === true
    ? `In full it ${full}, as by even running.`
    : `In full it ${full}, although by even running it ${quick}.`;
}

/** Exactly what is proven, by what, and what is only the best found. */
export function answerWords({ routes, question }: RouteState, answer: Answer, show: Show): string {
  const { certainty, whole, inFull } = answer;
  const { aim } = question;
  const [looked, settings] = [answer.probes, answer.settings].map((count) => formatNumber(count, { digits: 0 }));
  // A grade is geometry; a margin proven by even running is not yet proven for full runs.
  const by = aim === 'grade' ? '' : inFull ? ' in full' : ' by even running';
  const how = aim === 'grade' ? '' : ' by even running';
  if (!whole) return `Stopped: ${routes.length} found until then, ${looked} of ${settings} settings looked at${how}.`;
  if (routes.length === 0) return `None of the ${looked} settings looked at keeps what is asked.`;
  const lead = {
    'every-setting': `Proven${by}: all ${settings} settings of the ranges were looked at.`,
    'no-better-neighbour': `Best found${by}: ${looked} of ${settings} settings looked at; nothing a step away is better.`,
    'best-found': `Best found${by}: ${looked} of ${settings} settings looked at.`,
  }[certainty];
  const heights = question.heights === null ? '' : ' The heights of each plan are proven best for it.';
  return `${lead} ${foundWords(routes, aim, show)}${heights} ${agreementWords(routes)}`;
}

function foundWords(routes: readonly Found[], aim: RouteState['question']['aim'], show: Show): string {
  const [first] = routes;
  if (aim === 'grade') return `The least ruling grade is ${gradeText(first.ruling, show)}.`;
  if (aim === 'margin')
    return `The greatest smallest margin is ${marginText(first.margin ?? first.quickMargin ?? 0)} of plenty.`;
  return routes.length === 1
    ? 'One is beaten by no other in grade, room and margin together.'
    : `${routes.length} are beaten by no other in grade, room and margin together.`;
}

function agreementWords(routes: readonly Found[]): string {
  const run = routes.filter(({ agrees }) => agrees !== null);
  const passing = run.filter(({ quickPasses, agrees }) => quickPasses === agrees).length;
  const pass = run.length === 1 ? (passing === 1 ? 'It passes.' : 'It fails.') : `${passing} of ${run.length} pass.`;
  const other = run.filter(({ agrees }) => agrees === false).length;
  if (run.length === 0) return 'None was run in full.';
  const verdicts = run.length === 1 ? 'The full run gives the same verdict' : 'Full runs give the same verdicts';
  if (other === 0) return `${pass} ${verdicts} as even running.`;
  return `${pass} Full runs give another verdict than even running for ${other} of ${run.length}, marked with a cross.`;
}

const ways: Readonly<Record<Answer['inTheWay'][number]['miss'], string>> = {
  radius: 'the least radius',
  'vertical-radius': 'the vertical curves',
  steepest: 'the steepest grade',
  headroom: 'the headroom',
  room: 'the walls',
  obstacle: 'an obstacle',
  boards: 'the edge of the boards',
  end: 'the end of the track',
  heights: 'no heights keep what is asked',
  'cannot-be-laid': 'it cannot be laid or run',
};

/** What stood in the way, and how often; nothing where nothing did. */
export const wayWords = ({ inTheWay, reason }: Answer): string =>
  inTheWay.length === 0
    ? ''
    : `In the way: ${inTheWay.map(({ miss, name, times }) => `${name ?? ways[miss]} (${times})`).join(', ')}.${reason === null ? '' : ` First: ${reason}`}`;

/** "runs into the Boiler by 55 mm, 1.24 m along" */
export function conflictWords({ kind, name, chainage, by }: Conflict, show: Show): string {
  const what = {
    room: 'reaches out of the room',
    obstacle: `runs into ${name}`,
    boards: 'hangs over the edge of the boards',
  }[kind];
  return `${what} by ${joined(lengthShown(by, show))}, ${joined(distanceShown(chainage, show))} along`;
}
