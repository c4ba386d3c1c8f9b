import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { graveViolations } from './axe.ts';
import type { Opened } from './harness.ts';
import { openSolved, patience } from './screen.ts';

let opened: Opened;

beforeAll(async () => {
  opened = await openSolved({ still: true });
}, 4 * patience);

afterAll(() => opened?.close());

const sheet = () => opened.page.getByRole('region', { name: 'Build' });
/** What a row of the schedule says, cell by cell. */
const row = (support: number) =>
  sheet()
    .locator('.build-table tbody tr')
    .nth(support - 1)
    .locator('th, td')
    .allTextContents();

describe('a person about to saw', () => {
  it(
    'reads the height of a support as planned, in turns of a nut or as a rise, in mm or inches',
    async () => {
      const { page } = opened;
      await page.keyboard.press('6');
      await sheet().waitFor({ timeout: patience });
      // By hand: 370 mm of rail less 2.4 % from the middle of the curve at 2350 mm, at 8777.2; 17 mm of layers, 2.4 % aslant; a thread of 1 mm.
      const rail = 370 - 0.024 * (8777.2 - 2350);
      expect(await row(38)).toEqual([
        '38',
        rail.toFixed(1),
        (rail - 17 * Math.hypot(1, 0.024)).toFixed(1),
        '−5.65',
        '81.5',
        'turn below',
      ]);
      await sheet().getByLabel('Set with').selectOption('');
      expect((await row(38))[3]).toBe('−5.65');
      await sheet().getByLabel('Set with').selectOption('M8');
      expect((await row(38))[3]).toBe(((-0.024 * 235.6) / 1.25).toFixed(2).replace('-', '−'));
      const unit = (words: string) => page.getByRole('radio', { name: words, exact: true }).press('Space');
      await unit('inches');
      expect((await row(38))[1]).toBe((rail / 25.4).toFixed(2));
      await unit('millimetres');
      expect((await row(38))[1]).toBe(rail.toFixed(1));
    },
    4 * patience,
  );

  it('goes to a support on the stage and in the band', async () => {
    const { page } = opened;
    await sheet().getByRole('button', { name: '38', exact: true }).click();
    await page.waitForFunction(() => (window.gradewright?.playback.time ?? 0) > 1, undefined, { timeout: patience });
  });

  it('sees the sheets as they are sawn, and what a smaller sheet comes to', async () => {
    await sheet().getByText('no layout does with fewer than 1').waitFor({ timeout: patience });
    const length = sheet().getByLabel('Sheet, length');
    await length.fill('1220');
    await length.press('Enter');
    // Straights of 1900 mm no longer come out of one piece.
    await sheet().getByText('A8 2 × straight').waitFor({ timeout: patience });
    expect(await sheet().locator('.build-sheets svg').count()).toBeGreaterThan(1);
    await length.fill('50mm');
    await length.press('Enter');
    await sheet().getByRole('alert').waitFor({ timeout: patience });
    await length.press('Escape');
    const width = sheet().getByLabel('Sheet, width');
    await width.fill('100');
    await width.press('Enter');
    // Sectors need 101 mm and more across once a piece may be no longer than a hand's breadth: shorter ones are cut.
    await sheet()
      .getByText(/× sector/)
      .first()
      .waitFor({ timeout: patience });
    await opened.shot('build');
    expect(await graveViolations(opened.page, '.panel')).toEqual([]);
  });

  it('prints it on paper that has nothing else on it', async () => {
    const { page } = opened;
    await page.evaluate(() => {
      window.print = () => undefined;
    });
    await sheet().getByRole('button', { name: 'Print what to build' }).click();
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.build-paper').isVisible()).toBe(true);
    expect(await page.locator('.panel').isVisible()).toBe(false);
    expect(await page.locator('.build-paper tbody tr').count()).toBe(76);
    await page.emulateMedia({ media: null });
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    expect(await page.locator('.build-paper').isVisible()).toBe(false);
    expect(opened.complaints).toEqual([]);
  });
});
