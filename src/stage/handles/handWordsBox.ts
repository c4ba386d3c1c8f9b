import type { Pixel, Shown } from '../view/shown.ts';
import { areaOf, wordsPlace } from './wordsPlace.ts';

/** How a line at the hand looks: `figure` first, the others under it. */
export type WordsLook = 'figure' | 'more' | 'led' | 'refusal' | 'fails' | 'passes';

/** The words at the hand: beside it, off what else is written on the stage. */
export class HandWordsBox {
  readonly element = document.createElement('p');

  constructor(
    /** What else is written on the stage, which the words leave free. */
    private readonly written: readonly HTMLElement[],
  ) {
    this.element.className = 'stage-hand-words';
    this.element.setAttribute('aria-live', 'polite');
  }

  hide(): void {
    this.element.hidden = true;
  }

  write(lines: readonly (readonly [text: string, look: WordsLook])[], at: Pixel, stage: Shown): void {
    const { element } = this;
    element.hidden = false;
    const text = JSON.stringify(lines);
    if (element.dataset.text !== text) {
      element.dataset.text = text;
      element.replaceChildren(
        ...lines.map(([line, look]) => {
          const span = document.createElement('span');
          span.className = `stage-hand-${look}`;
          span.textContent = line;
          return span;
        }),
      );
    }
    const size = { width: element.offsetWidth, height: element.offsetHeight };
    const { left, top } = wordsPlace(at, size, stage, this.written.map(areaOf));
    element.style.transform = `translate(${left.toFixed(0)}px, ${top.toFixed(0)}px)`;
  }
}
