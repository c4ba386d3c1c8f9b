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

const becomes = (page: Page, state: string | undefined) =>
  page.waitForFunction((was) => JSON.stringify(window.gradewright?.session.scene) === was, state, {
    timeout: patience,
  });

/** A button of the stage by its words. */
const stageButton = (page: Page, words: string) =>
  page.locator('.stage-controls button', { hasText: new RegExp(`^${words}$`) });

describe('a room made by hand', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openApp({ still: true });
    opened.page.setDefaultTimeout(patience);
    await opened.page.waitForFunction(() => window.gradewright?.session.scene, null, { timeout: patience });
  }, patience);
  afterAll(() => opened?.close());

  it(
    'from an empty one: outline, door, pillar and board by mouse and keyboard, two supports raised on the stage, undone and done again',
    async () => {
      const { page } = opened;
      await page.keyboard.press('n');
      await page.waitForSelector('.new-railway', { state: 'attached' });
      await page.evaluate(() => {
        const empty = [...document.querySelectorAll('.new-railway label')].find((one) =>
          one.textContent?.includes('Empty room'),
        );
        empty?.querySelector('input')?.click();
        document.querySelector<HTMLElement>('.new-railway .plain-button.first')?.click();
      });
      await page.waitForFunction(() => window.gradewright?.session.opened?.from === 'shape');
      await page.waitForSelector('[data-key="extend"]', { state: 'attached' });
      await stageButton(page, 'Straight down').click();
      await page.waitForFunction(() => window.__stage?.camera === 'down');
      await stageButton(page, 'Room').click();
      await page.waitForSelector('.stage-room-bar');

      const states = [(await scene(page)) ?? ''];
      const step = async (deed: () => Promise<unknown>) => {
        await deed();
        states.push(await changed(page, states.at(-1)));
      };
      const room = () => JSON.parse(states.at(-1) ?? '').room;
      const stage = await page.locator('.stage').boundingBox();
      if (stage === null) throw new Error('no stage');
      const at = (across: number, down: number) =>
        [stage.x + across * stage.width, stage.y + down * stage.height] as const;
      const pull = async (from: readonly [number, number], to: readonly [number, number]) => {
        await page.mouse.move(...from);
        await page.mouse.down();
        await page.mouse.move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
        await page.mouse.move(...to);
        await page.waitForTimeout(300);
        await page.mouse.up();
      };
      const draw = async (words: string, from: readonly [number, number], to: readonly [number, number]) => {
        await stageButton(page, words).click();
        await page.waitForSelector('.stage-draw:not([hidden])');
        await pull(from, to);
        await page.waitForSelector('.stage-draw', { state: 'hidden' });
      };

      // By mouse: the outline, a door in its lower wall, a pillar.
      await step(() => draw('Walls', at(0.12, 0.2), at(0.88, 0.75)));
      expect(room().corners).toHaveLength(4);
      await step(() => draw('Door', at(0.2, 0.75), at(0.4, 0.75)));
      expect(room().doors).toMatchObject([{ wall: 1, opens: 'inwards' }]);
      await step(() => draw('Pillar', at(0.7, 0.25), at(0.78, 0.35)));
      expect(room().obstacles).toMatchObject([{ name: 'Pillar' }]);

      // By keyboard: a board is put in and has the focus; the arrow keys then move it a centimetre at a time.
      await step(async () => {
        await stageButton(page, 'Board').focus();
        await page.keyboard.press('Enter');
      });
      await page.waitForSelector('[data-key="room:board:0:middle:0"]');
      const { xMm } = room().baseboards[0];
      await step(async () => {
        await page.locator('[data-key="room:board:0:middle:0"]').focus();
        await page.keyboard.press('Shift+ArrowRight');
      });
      expect(room().baseboards[0].xMm).toBeCloseTo(xMm + 10, 6);

      // Escape in the middle of a pull puts back, and is no step.
      const corner = await page.locator('[data-key="room:corner:2"]').boundingBox();
      if (corner === null) throw new Error('no corner');
      const [cornerX, cornerY] = [corner.x + corner.width / 2, corner.y + corner.height / 2];
      await page.mouse.move(cornerX, cornerY);
      await page.mouse.down();
      await page.mouse.move(cornerX - 60, cornerY + 30, { steps: 2 });
      await changed(page, states.at(-1));
      await page.keyboard.press('Escape');
      await becomes(page, states.at(-1));
      await page.mouse.up();
      await opened.shot('room-by-hand');

      // Supports, chosen on the stage by keyboard and taken in by a click with Shift; raised together.
      await stageButton(page, 'Room').click();
      await page.locator('[data-key="support:0"]').focus();
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('Shift+ArrowRight');
      expect(await page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset.key)).toBe('support:3');
      await step(() => page.keyboard.press('Shift+ArrowUp'));
      const { supports } = JSON.parse(states.at(-1) ?? '').tracks[0];
      expect(supports.off ?? supports.filter(({ offMm }: { offMm?: number }) => offMm)).toHaveLength(2);
      const head = await page.locator('[data-key="support:3"]').boundingBox();
      if (head === null) throw new Error('no support');
      await step(() =>
        pull([head.x + head.width / 2, head.y + head.height / 2], [head.x + head.width / 2, head.y - 20]),
      );
      await opened.shot('supports-by-hand');

      for (const state of states.slice(0, -1).reverse()) {
        await page.keyboard.press('Control+z');
        await becomes(page, state);
      }
      for (const state of states.slice(1)) {
        await page.evaluate(() => document.querySelector<HTMLElement>('[aria-label^="Redo"]')?.click());
        await becomes(page, state);
      }
      expect(opened.complaints).toEqual([]);
    },
    4 * patience,
  );
});
