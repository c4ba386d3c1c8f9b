import { element, type Markup } from './markup.ts';
import { circle, type Numbered } from './numbered.ts';

/** A coordinate as it stands in a drawing: a tenth of a unit is finer than a printer. */
export const fine = (value: number): number => Math.round(value * 10) / 10;

/** A line through places of the drawing. */
export const path = (places: readonly (readonly [number, number])[]): string =>
  places.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${fine(x)} ${fine(y)}`).join('');

/** Numbers in their circles, with a hair to what they mark. */
export const numbers = (all: readonly Numbered[]): Markup[] =>
  all.map(({ number, at: [x, y], label: [across, down] }) =>
    element(
      'g',
      { class: 'mark' },
      element('path', {
        d: path([
          [x, y],
          [across, down],
        ]),
      }),
      element('circle', { class: 'at', cx: fine(x), cy: fine(y), r: 2.4 }),
      element('circle', { cx: fine(across), cy: fine(down), r: circle / 2 }),
      element('text', { x: fine(across), y: fine(down + 4) }, number),
    ),
  );
