import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { graveViolations } from './axe.ts';
import type { Opened } from './harness.ts';
import { openSolved, patience, untilSolved } from './screen.ts';

/** A press by the page itself: on a busy machine the pointer's way to a button takes seconds. */
const press = (page: Page, words: string) =>
  page.evaluate((wanted) => {
    const buttons = [...document.querySelectorAll<HTMLElement>('.trains-sheet button')];
    const button = buttons.find((one) => one.textContent === wanted || one.textContent?.includes(`${wanted}`));
    if (!button) throw new Error(`There is no button “${wanted}”.`);
    button.click();
  }, words);

const train = (page: Page) => page.evaluate(() => window.gradewright?.session.scene?.trains[0]);
const massOf = (page: Page, id: string) =>
  page.evaluate((wanted) => {
    return window.gradewright?.session.scene?.stock.find((one) => one.id === wanted)?.massG ?? null;
  }, id);

/** Types into a field of the sheet and leaves it. */
async function type(page: Page, label: string, text: string): Promise<void> {
  await page.getByRole('region', { name: 'Trains' }).getByLabel(label, { exact: true }).first().focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.press('Delete');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

describe('the trains of a railway', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openSolved({ still: true });
  }, patience);
  afterAll(() => opened?.close());

  it(
    'are made up otherwise, weighed and tried each way, and all of it can be undone',
    async () => {
      const { page } = opened;
      await page.keyboard.press('2');
      await page.waitForSelector('.trains-sheet');
      expect(await graveViolations(page, '.trains-sheet')).toEqual([]);
      await opened.shot('trains');
      const before = await train(page);
      const [first] = before?.vehicles ?? [];
      const mass = await massOf(page, first.stock);

      await type(page, 'Mass', '2oz');
      await untilSolved(page);
      // The avoirdupois ounce is 28.349523125 g by definition (international yard and pound agreement, 1959).
      expect(await massOf(page, first.stock)).toBeCloseTo(2 * 28.349523125, 6);
      await type(page, 'Mass', '');
      await untilSolved(page);
      expect(await massOf(page, first.stock)).toBeNull();

      await press(page, 'One more');
      await untilSolved(page);
      expect((await train(page))?.vehicles[0].count).toBe(2);
      expect(await page.evaluate(() => window.gradewright?.session.trial?.train.vehicles.length)).toBe(
        1 + (before?.vehicles ?? []).reduce((sum, { count = 1 }) => sum + count, 0),
      );

      await press(page, 'Try it the other');
      await untilSolved(page);
      const workings = await page.evaluate(() =>
        window.gradewright?.session.scene?.trials.map(({ leading, towards }) => `${leading} ${towards}`),
      );
      expect(new Set(workings).size).toBe(4);

      for (let step = 0; step < 4; step++) await page.keyboard.press('Control+z');
      await untilSolved(page);
      expect(await train(page)).toEqual(before);
      expect(await massOf(page, first.stock)).toBe(mass);
      expect(opened.complaints).toEqual([]);
    },
    3 * patience,
  );
});
