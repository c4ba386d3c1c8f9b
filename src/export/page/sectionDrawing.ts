import type { Show } from '../../core/findings/index.ts';
import type { PageMark, PageTrack } from '../../sim/page/index.ts';
import { fine, numbers, path } from './drawing.ts';
import { element, type Markup } from './markup.ts';
import { inRow } from './numbered.ts';
import { chainage, grade, length } from './words.ts';

/** Size of the drawing, and the part of it that the line takes, in units of the drawing. */
const width = 1000;
const height = 230;
const [left, right, top, foot, ground] = [16, 984, 66, 164, 188];

/** Least heights that fill the drawing, m: a level line is not blown up to a mountain range. */
const leastRise = 0.02;

/** Grades of stretches shorter than this are not written, in units of the drawing. */
const shortest = 60;

/** Rungs of the scale of chainage, m. */
const rungs = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100];
const mostRungs = 14;

/** The long section of a track: heights as built, the planned grades written along it, bad places numbered. */
export function sectionDrawing(track: PageTrack, marks: readonly PageMark[], show: Show): Markup {
  const heights = track.line.map(({ z }) => z);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const span = Math.max(leastRise, high - low);
  const across = (s: number): number => left + ((right - left) * s) / track.length;
  const up = (z: number): number => foot - ((foot - top) * (z - low)) / span;
  const heightAt = (s: number): number => {
    const k = Math.min(track.line.length - 1, Math.round((s / track.length) * (track.line.length - 1)));
    return track.line[k].z;
  };
  const line = track.line.map(({ chainage: s, z }) => [across(s), up(z)] as const);
  const own = marks.filter(({ trackId }) => trackId === track.id).sort((a, b) => a.chainage - b.chainage);
  const numbered = inRow(
    own.map(({ number, chainage: s, place }) => ({ number, at: [across(s), up(place[2])] as const })),
    22,
    width,
  );
  const exaggeration = (foot - top) / span / ((right - left) / track.length);
  return element(
    'svg',
    { class: 'section', viewBox: `0 0 ${width} ${height}`, role: 'img', 'aria-label': `Long section of ${track.name}` },
    element('path', { class: 'ground', d: `${path([[left, ground], ...line, [right, ground]])}Z` }),
    element('path', { class: 'rail', d: path(line) }),
    track.grades.map(({ from, to, grade: ratio }) => {
      if (across(to) - across(from) < shortest) return null;
      const [x0, y0, x1, y1] = [across(from), up(heightAt(from)), across(to), up(heightAt(to))];
      const lean = (Math.atan2(y1 - y0, x1 - x0) * 180) / Math.PI;
      return element(
        'text',
        {
          class: 'grade',
          transform: `translate(${fine((x0 + x1) / 2)} ${fine((y0 + y1) / 2 + 17)}) rotate(${fine(lean)})`,
        },
        `${grade(ratio, show)}${Math.abs(ratio) < 1e-5 ? '' : ratio > 0 ? ' up' : ' down'}`,
      );
    }),
    [0, track.length].map((s, end) =>
      element(
        'text',
        { class: end === 0 ? 'height start' : 'height end', x: fine(across(s)), y: fine(up(heightAt(s)) - 7) },
        length(heightAt(s), show, 1),
      ),
    ),
    rungsOf(track.length).map((s) => [
      element('path', {
        class: 'tick',
        d: path([
          [across(s), ground],
          [across(s), ground + 6],
        ]),
      }),
      element(
        'text',
        { class: s === 0 ? 'scale first' : 'scale', x: fine(across(s)), y: ground + 19 },
        chainage(s, show),
      ),
    ]),
    element(
      'text',
      { class: 'note', x: left, y: height - 4 },
      `Heights drawn ${Math.round(exaggeration)} times as large as lengths`,
    ),
    numbers(numbered),
  );
}

/** Chainages of the scale, m: as many as can be read. */
function rungsOf(total: number): number[] {
  const every = rungs.find((step) => total / step <= mostRungs) ?? total;
  return Array.from({ length: Math.floor(total / every + 1e-9) + 1 }, (_, k) => k * every);
}
