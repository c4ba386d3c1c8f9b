import type { Page } from 'playwright-core';

/** What happened in the page since it was last asked, in ms of the page's own clock; null where it has not. */
export interface Seen {
  /** When the last move of the pointer came in. */
  readonly moved: number | null;
  /** When the words of the verdict first changed after it. */
  readonly told: number | null;
  /** When the page had next drawn itself after that. */
  readonly drawn: number | null;
  /** React commits since. */
  readonly commits: number;
}

/** When the page first showed a verdict and when it first moved a train, ms from when its address was opened. */
export interface FirstSeen {
  readonly verdict: number | null;
  readonly moves: number | null;
}

declare global {
  interface Window {
    __watch?: { since(): Seen; first: { verdict: number | null; moves: number | null } };
  }
}

/**
 * Put into a page before its own scripts. React tells every commit to a hook of this name, also where it was built for use;
 * words are watched for changes in the page, pointers where they come in.
 */
export function watchPage(): void {
  // What runs this file as it is written marks functions with their names, by a function that the page has not.
  Object.assign(window, { __name: Object });
  let now = { moved: null as number | null, told: null as number | null, drawn: null as number | null, commits: 0 };
  const first = { verdict: null as number | null, moves: null as number | null };
  const hook = {
    renderers: new Map<number, unknown>(),
    supportsFiber: true,
    inject: (renderer: unknown) => hook.renderers.set(hook.renderers.size + 1, renderer).size,
    onCommitFiberRoot: () => {
      now.commits++;
    },
    onCommitFiberUnmount: () => {},
    onPostCommitFiberRoot: () => {},
    checkDCE: () => {},
  };
  Object.defineProperty(window, '__REACT_DEVTOOLS_GLOBAL_HOOK__', { value: hook });
  const words = () => document.querySelector('.line-verdict b')?.textContent ?? '';
  let before = '';
  new MutationObserver(() => {
    const after = words();
    if (after === before) return;
    before = after;
    if (now.moved === null || now.told !== null) return;
    const of = now;
    of.told = performance.now();
    requestAnimationFrame(() =>
      setTimeout(() => {
        of.drawn = performance.now();
      }),
    );
  }).observe(document, { subtree: true, childList: true, characterData: true });
  window.addEventListener(
    'pointermove',
    () => {
      now.moved = performance.now();
    },
    true,
  );
  const look = () => {
    const shown = window.gradewright;
    if (shown?.session.result && document.querySelector('.gwb-band')) first.verdict ??= performance.now();
    if ((window.__stage?.time ?? 0) > 0) first.moves ??= performance.now();
    if (first.moves === null || first.verdict === null) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
  window.__watch = {
    first,
    since() {
      const seen = now;
      now = { moved: null, told: null, drawn: null, commits: 0 };
      return seen;
    },
  };
}

export const since = (page: Page): Promise<Seen> => page.evaluate(() => window.__watch!.since());

export const firstSeen = (page: Page): Promise<FirstSeen> => page.evaluate(() => window.__watch!.first);
