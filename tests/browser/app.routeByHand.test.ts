import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Opened, openApp } from './harness.ts';

const patience = 120_000;

const scene = (page: Page) => page.evaluate(() => JSON.stringify(window.gradewright?.session.scene));

/** Waits until the railway is another than it was, and gives it. */
async function changed(page: Page, before: string | undefined): Promise<string> {
  await page.waitForFunction((was) => JSON.stringify(window.gradewright?.session.scene) !== was, before, {
    timeout: patience,
  });
  return (await scene(page)) ?? '';
}

/** A press by the page itself: on a busy machine the pointer's way to a button takes seconds. */
const press = async (page: Page, selector: string) => {
  await page.waitForSelector(selector, { state: 'attached', timeout: patience });
  await page.evaluate((wanted) => document.querySelector<HTMLElement>(wanted)?.click(), selector);
};

const straightMm = (state: string): number => JSON.parse(state).tracks[0].alignment[0].lengthMm;

describe('a railway drawn by hand', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openApp({ still: true });
    await opened.page.waitForFunction(() => window.gradewright?.session.scene, null, { timeout: patience });
  }, patience);
  afterAll(() => opened?.close());

  it(
    'from an empty room: by mouse, keyboard and sheet, each deed one step, undone, done again, and there after a reload',
    async () => {
      const { page } = opened;
      page.setDefaultTimeout(patience);
      await page.keyboard.press('n');
      await page.waitForSelector('.new-railway', { state: 'attached', timeout: patience });
      await page.evaluate(() => {
        const room = [...document.querySelectorAll('.new-railway label')].find((one) =>
          one.textContent?.includes('Empty room'),
        );
        room?.querySelector('input')?.click();
      });
      await press(page, '.new-railway .plain-button.first');
      await page.waitForFunction(() => window.gradewright?.session.opened?.from === 'shape', null, {
        timeout: patience,
      });
      // All that a hand takes hold of is on the stage as the room opens.
      await page.waitForSelector('[data-key="extend"]', { timeout: patience });
      for (const key of ['heading', 'start', 'end:0', 'extend']) {
        expect(await page.locator(`[data-key="${key}"]`).evaluate((one) => getComputedStyle(one).visibility)).toBe(
          'visible',
        );
      }
      const states = [(await scene(page)) ?? ''];
      const step = async (deed: () => Promise<unknown>) => {
        await deed();
        states.push(await changed(page, states.at(-1)));
      };

      const at = async (key: string): Promise<readonly [number, number]> => {
        await page.waitForSelector(`[data-key="${key}"]`, { timeout: patience });
        const box = await page.locator(`[data-key="${key}"]`).boundingBox();
        return box === null ? [Number.NaN, Number.NaN] : [box.x + box.width / 2, box.y + box.height / 2];
      };
      await opened.shot('route-empty-room');
      // By mouse: the end of the straight back along the line, to half of it or so.
      await step(async () => {
        const [x, y] = await at('end:0');
        const [fromX, fromY] = await at('start');
        await page.mouse.move(x, y);
        await page.mouse.down();
        await page.mouse.move(x + 0.1 * (fromX - x), y + 0.1 * (fromY - y), { steps: 2 });
        await page.mouse.move(x + 0.25 * (fromX - x), y + 0.25 * (fromY - y), { steps: 2 });
        await page.waitForTimeout(300);
        await page.mouse.up();
      });
      // By keyboard at the handle for new track: straight on, then bent to the right.
      const end = page.locator('[data-key="extend"]');
      expect(await end.getAttribute('aria-description')).toMatch(/Up lays straight on.*Left and Right bend/);
      const lengthened = states.length;
      await step(async () => {
        await end.focus();
        await page.keyboard.press('Shift+ArrowUp');
      });
      expect(straightMm(states[lengthened])).toBeCloseTo(straightMm(states[lengthened - 1]) + 10, 6);
      await step(async () => {
        await end.focus();
        await page.keyboard.press('Shift+ArrowRight');
      });
      expect(JSON.parse(states.at(-1) ?? '').tracks[0].alignment[2]).toMatchObject({ kind: 'arc', turn: 'right' });
      for (const spoken of [
        'Add a helix at the end',
        'Lay a track beside this one, to its right',
        'Lay a turnout to the left and a track from it',
        'Lay this track on from its end into the nearest other track',
      ]) {
        await step(() => press(page, `[aria-label$="${spoken}"]`));
      }
      await opened.shot('route-by-hand');

      for (const state of states.slice(0, -1).reverse()) {
        await page.keyboard.press('Control+z');
        await page.waitForFunction((was) => JSON.stringify(window.gradewright?.session.scene) === was, state, {
          timeout: patience,
        });
      }
      for (const state of states.slice(1)) {
        await press(page, '[aria-label^="Redo"]');
        await page.waitForFunction((was) => JSON.stringify(window.gradewright?.session.scene) === was, state, {
          timeout: patience,
        });
      }
      await page.waitForTimeout(2500);
      await page.reload();
      await page.waitForFunction((was) => JSON.stringify(window.gradewright?.session.scene) === was, states.at(-1), {
        timeout: patience,
      });
      expect(opened.complaints).toEqual([]);
    },
    3 * patience,
  );
});
