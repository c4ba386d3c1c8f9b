import { standingWords } from '../../core/findings/index.ts';
import { formatNumber } from '../../core/units/index.ts';
import {
  type ClubPage,
  type HelixCard,
  type PageMark,
  type RailState,
  railStates,
  type Tonnage,
  testsToMake,
  type Visitor,
} from '../../sim/page/index.ts';
import { type Content, element, type Markup } from './markup.ts';
import { chainage, count, gradeForms, grams, length } from './words.ts';

type Cell = Content | { readonly number: Content };

const cell = (name: 'td' | 'th', content: Cell): Markup =>
  typeof content === 'object' && content !== null && 'number' in content
    ? element(name, { class: 'number' }, content.number)
    : element(name, {}, content);

/** A table whose first column names its rows. */
export function table(heads: readonly Cell[], rows: readonly (readonly Cell[])[]): Markup {
  return element(
    'table',
    {},
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        heads.map((head) => cell('th', head)),
      ),
    ),
    element(
      'tbody',
      {},
      rows.map(([first, ...rest]) =>
        element(
          'tr',
          {},
          cell('th', first),
          rest.map((one) => cell('td', one)),
        ),
      ),
    ),
  );
}

const pair = (what: string, value: string): [string, string] => [what, value];

/** Whether a railway takes its trains, in a sentence. */
export function verdictWords({ trials }: Pick<ClubPage, 'trials'>): string {
  const of = (standing: string): number => trials.filter((trial) => trial.standing === standing).length;
  const [fails, undecided] = [of('fails'), of('undecided')];
  const passes = trials.length - fails - undecided;
  const every = count(trials.length, 'way of working', 'ways of working');
  if (trials.length === 0) return 'No train is put to a trial yet.';
  if (fails + undecided === 0)
    return `Every train passes in all ${every}${of('near') > 0 ? `, ${of('near')} of them only just` : ''}.`;
  const parts = [
    ...(fails > 0 ? [`${fails} ${fails === 1 ? 'fails' : 'fail'}`] : []),
    ...(undecided > 0 ? [`${undecided} may fail by how the parts are made`] : []),
    passes === 0 ? 'none passes' : `${passes} ${passes === 1 ? 'passes' : 'pass'}`,
  ];
  return `Of ${every}, ${parts.join(', ')}.`;
}

export function trialTable({ trials }: ClubPage): Markup {
  return table(
    ['Train and working', 'Verdict', 'What comes of it', 'Place'],
    trials.map(({ name, own, standing, words, marks }) => [
      [name, !own && element('span', { class: 'quiet' }, ' (driven like the others)')],
      element('span', { class: standing }, standingWords[standing]),
      words,
      marks.join(', '),
    ]),
  );
}

export function markList(marks: readonly PageMark[]): Markup {
  return element(
    'ol',
    { class: 'marks' },
    marks.map(({ number, standing, headline, cause, margin, cures, trials }) =>
      element(
        'li',
        {},
        element('i', {}, number),
        element('b', { class: standing }, headline),
        ` Margin ${margin}.`,
        element('p', {}, cause),
        cures.length > 0 && element('p', {}, element('b', {}, 'Try: '), `${cures.join('; ')}.`),
        element('p', { class: 'quiet' }, trials.join(' · ')),
      ),
    ),
  );
}

export function helixCard(card: HelixCard, { show, scene }: ClubPage): Markup {
  const { radius, turns, rise, perTurn, grade, clear, tallest, longest } = card;
  const { name, gaugeMm } = scene.scale;
  const rows: [string, string][] = [
    ['Scale and gauge', `${name === undefined ? '' : `${name}, `}${length(gaugeMm / 1000, show, 1)}`],
    ['Radius, middle of the track', length(radius, show)],
    ['Turns', formatNumber(turns, { digits: 2 })],
    ['Rise', `${length(rise, show, 1)}, ${length(perTurn, show, 1)} a turn`],
    ['Mean grade', gradeForms(grade)],
    [
      'Clear height, least',
      clear === null ? 'nothing over it' : `${length(clear.height, show, 1)} at ${chainage(clear.chainage, show)}`,
    ],
    ...(tallest === null ? [] : [pair('Tallest vehicle', `${tallest.name}, ${length(tallest.height, show, 1)}`)]),
    ...(tallest === null || clear === null
      ? []
      : [pair('Left over it', length(clear.height - tallest.height, show, 1))]),
    ...(longest === null
      ? []
      : [
          pair('Longest vehicle', `${longest.name}, ${length(longest.length, show)}`),
          pair('Radius over that', `${formatNumber(radius / longest.length, { digits: 1 })} times`),
        ]),
  ];
  return element(
    'article',
    { class: 'card' },
    element('h3', {}, `Helix of ${card.track}`),
    element(
      'dl',
      {},
      rows.map(([what, value]) => [element('dt', {}, what), element('dd', {}, value)]),
    ),
  );
}

const railWords: Readonly<Record<RailState, string>> = {
  clean: 'Clean rails',
  average: 'Average',
  dirty: 'Dirty rails',
};

export function tonnageTable({ rows, taken }: Tonnage): Markup[] {
  return [
    table(
      ['Engine', 'pulls up', 'of', ...railStates.map((state) => ({ number: railWords[state] }))],
      rows.map(({ engine, kind, track, loads }) => [
        engine,
        track,
        kind,
        ...railStates.map((state) => {
          const { vehicles, mass, all } = loads[state];
          if (vehicles < 0) return { number: 'not itself' };
          return { number: `${vehicles}${all ? ' or more' : ''} · ${grams(mass)}` };
        }),
      ]),
    ),
    element(
      'p',
      { class: 'quiet' },
      'Greatest number that gets up, and its weight without the engine, by pull alone: whether couplings and buffers bear it is in the table of trains. ',
      railStates
        .map(
          (state) =>
            `${railWords[state]}: grip ${taken[state].adhesion} where the engine says nothing of its own, curve drag ${taken[state].curveDrag}`,
        )
        .join('; '),
      '.',
    ),
  ];
}

/** A sheet to fill in at the track: which runs to make, what to expect, room for what was found. */
export function testSheet({ trials }: ClubPage): Markup {
  return table(
    ['Run', 'Look at', 'Expect', 'Found, and the date'],
    testsToMake(trials).map(({ trial: { name, words }, shows }) => [
      name,
      shows.join(', '),
      words,
      element('span', { class: 'blank' }),
    ]),
  );
}

export function visitorList(visitors: readonly Visitor[]): Markup {
  return element(
    'ul',
    { class: 'stickers' },
    visitors.map(({ vehicle, not }) =>
      element(
        'li',
        {},
        element('b', {}, vehicle),
        not.map(({ working, why, standing }) =>
          element(
            'p',
            {},
            element('span', { class: standing }, `${standing === 'fails' ? 'Not' : 'Perhaps not'} ${working}: `),
            why,
          ),
        ),
      ),
    ),
  );
}

export const cautions =
  'Whatever carries trains over a drop needs a guard at its edge. Shelves want fixings made for that wall. Dust of MDF and plywood stays out of lungs; saws have their guards on. ' +
  'Anything on the mains is for qualified people. Local rules come first.';

/** How long a track is and what it climbs, in words. */
export const trackWords = (rise: number, total: number, show: ClubPage['show']): string =>
  `${chainage(total, show)} long, ${Math.abs(rise) < 5e-4 ? 'level from end to end' : `${rise > 0 ? 'rises' : 'falls'} ${length(Math.abs(rise), show, 1)}`}`;
