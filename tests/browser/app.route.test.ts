import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Opened, openApp } from './harness.ts';

const patience = 120_000;

/** Waits until the page shows the trial of the railway as it now is. */
const solved = (page: Page) =>
  page.waitForFunction(
    () => {
      const now = window.gradewright?.session;
      return now?.result && now.compiled?.scene === now.scene && now.progress === null;
    },
    null,
    { timeout: patience },
  );

const tracks = (page: Page) => page.evaluate(() => window.gradewright?.session.scene?.tracks);

/** A press by the page itself: on a busy machine the pointer's way to a button takes seconds. */
const press = (page: Page, selector: string) =>
  page.evaluate((wanted) => document.querySelector<HTMLElement>(wanted)?.click(), selector);

describe('making a railway', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openApp({ still: true });
    await solved(opened.page);
  }, patience);
  afterAll(() => opened?.close());

  it(
    'begins with a shape, changes it by typing and by hand, takes all back and does it again, and is there after a reload',
    async () => {
      const { page } = opened;
      await page.keyboard.press('n');
      await page.waitForSelector('.new-railway');
      await press(page, '.new-railway .plain-button.first');
      await page.waitForFunction(() => window.gradewright?.session.opened?.from === 'shape', null, {
        timeout: patience,
      });
      await solved(page);
      const first = await tracks(page);
      const helix = first?.[0].alignment.findIndex(({ kind }) => kind === 'helix') ?? -1;
      expect(helix).toBeGreaterThanOrEqual(0);

      const radius = page.locator(`[data-element="${helix}"] input[type="text"]`).first();
      await radius.focus();
      await page.keyboard.press('Control+a');
      await page.keyboard.type('26in');
      await page.keyboard.press('Enter');
      await page.waitForFunction(
        (index) => {
          const element = window.gradewright?.session.scene?.tracks[0].alignment[index];
          return element?.kind === 'helix' && element.radiusMm === 660.4;
        },
        helix,
        { timeout: patience },
      );
      await radius.blur();
      await solved(page);
      const typed = await tracks(page);

      const hand = await page.evaluate(() => {
        const box = document.querySelector('[data-handle="point-1"] .gwb-catch')?.getBoundingClientRect();
        return box ? ([box.x + box.width / 2, box.y + box.height / 2] as const) : null;
      });
      expect(hand).not.toBeNull();
      const [x, y] = hand ?? [0, 0];
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x, y - 5, { steps: 2 });
      await page.mouse.move(x, y - 9, { steps: 2 });
      await page.waitForFunction(
        (before) => JSON.stringify(window.gradewright?.session.scene?.tracks) !== before,
        JSON.stringify(typed),
        { timeout: patience },
      );
      await page.mouse.up();
      await solved(page);
      const dragged = await tracks(page);
      expect(dragged?.[0].profile[1]).not.toEqual(typed?.[0].profile[1]);
      await opened.shot('route');

      for (const state of [typed, first]) {
        await page.keyboard.press('Control+z');
        await solved(page);
        expect(await tracks(page)).toEqual(state);
      }
      for (const state of [typed, dragged]) {
        await press(page, '[aria-label^="Redo"]');
        await solved(page);
        expect(await tracks(page)).toEqual(state);
      }

      await page.waitForFunction(() => window.gradewright?.session.savedAt != null, null, { timeout: patience });
      await page.waitForTimeout(1500);
      await page.reload();
      await solved(page);
      expect(await tracks(page)).toEqual(dragged);
      expect(opened.complaints).toEqual([]);
    },
    2 * patience,
  );

  it(
    'gives a second window a copy of what the first has open',
    async () => {
      const { page, url } = opened;
      const second = await page.context().newPage();
      await second.goto(url);
      await solved(second);
      expect(await second.evaluate(() => window.gradewright?.session.opened?.from)).toBe('copy');
      expect(await page.evaluate(() => window.gradewright?.session.opened?.from)).toBe('machine');
      await second.close();
    },
    patience,
  );
});
