import { inPage, serialiseScene } from '../../scene/index.ts';
import type { ClubPage } from '../../sim/page/index.ts';
import { element, htmlOf, type Markup } from './markup.ts';
import {
  cautions,
  helixCard,
  markList,
  table,
  testSheet,
  tonnageTable,
  trackWords,
  trialTable,
  verdictWords,
  visitorList,
} from './parts.ts';
import { planDrawing } from './planDrawing.ts';
import { sectionDrawing } from './sectionDrawing.ts';
import { style } from './style.ts';
import { chainage, gradeForms } from './words.ts';

/** Nothing but what is in the file itself may be shown, and nothing in it may run. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

/**
 * The page to pass on as one file of HTML: verdict, cards, every train both ways, drawings with the bad places numbered, ratings, and what all of it rests on. It needs no
 * other file and no script; `date` is written as it is given. The railway's own file stands in it as data, so that it can be opened again from the page.
 */
export function clubPageHtml(page: ClubPage, date: string): string {
  const { scene, show, marks, helices, tracks, visitors, assumptions, whole } = page;
  const units = `${show.lengthUnit === 'mm' ? 'Millimetres' : 'Inches'}, grades ${show.gradeForm === 'percent' ? 'in per cent' : 'as 1 in n'}`;
  const body = element(
    'main',
    {},
    element('h1', {}, scene.name),
    scene.shows !== undefined && element('p', { class: 'quiet' }, scene.shows),
    element('p', { class: 'verdict' }, verdictWords(page)),
    element('p', { class: 'quiet' }, `${date}. ${units}; places are chainages along each track.`),
    !whole &&
      element(
        'p',
        {},
        element('b', {}, 'Not whole: '),
        'it was stopped before the greatest loads were all worked out.',
      ),
    helices.length > 0 && [
      element('h2', {}, helices.length === 1 ? 'The helix on a card' : 'The helices on cards'),
      element(
        'div',
        { class: 'cards' },
        helices.map((card) => helixCard(card, page)),
      ),
    ],
    element('h2', {}, 'Every train, both ways'),
    trialTable(page),
    element('h2', {}, 'Where it goes wrong'),
    marks.length === 0 ? element('p', {}, 'Nowhere.') : markList(marks),
    element('h2', {}, 'From above'),
    planDrawing(tracks, marks, show),
    element('h2', {}, 'Along the track'),
    tracks.map((track): Markup[] => [
      element('h3', {}, track.name),
      element(
        'p',
        { class: 'quiet' },
        `${trackWords(track.rise, track.length, show)}; steepest as built ${gradeForms(track.steepest.grade)} at ${chainage(track.steepest.chainage, show)}.`,
      ),
      sectionDrawing(track, marks, show),
    ]),
    page.tonnage !== null &&
      page.tonnage.rows.length > 0 && [element('h2', {}, 'What each engine takes up'), ...tonnageTable(page.tonnage)],
    marks.length > 0 && [
      element('h2', {}, 'To be tried at the track'),
      element(
        'p',
        { class: 'quiet' },
        'These runs come to every numbered place; each shows what those above it do not.',
      ),
      testSheet(page),
    ],
    visitors.length > 0 && [element('h2', {}, 'For visitors: what keeps off'), visitorList(visitors)],
    element('h2', {}, 'What this rests on'),
    element(
      'div',
      { class: 'box' },
      table(
        ['Number', 'Taken', 'Range', 'Where from'],
        assumptions.map(({ what, value, range, source }) => [what, value, range, source]),
      ),
    ),
    element('h2', {}, 'Before you cut'),
    element('p', {}, cautions),
    element('p', { class: 'quiet' }, 'Made with Gradewright. Drop this page on it, and the railway opens again.'),
  );
  return [
    '<!doctype html>',
    '<html lang="en">',
    htmlOf(
      element(
        'head',
        {},
        element('meta', { charset: 'utf-8' }),
        element('meta', { 'http-equiv': 'Content-Security-Policy', content: policy }),
        element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
        element('title', {}, scene.name),
        { html: `<style>${style}</style>` },
      ),
    ),
    `<body>${htmlOf(body)}${inPage(serialiseScene(scene))}</body>`,
    '</html>',
    '',
  ].join('\n');
}
