import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { graveViolations } from './axe.ts';
import { Hand } from './hand.ts';
import type { Opened } from './harness.ts';
import { failing, openSolved, patience, read, until, untilSolved } from './screen.ts';

let opened: Opened;
let hand: Hand;

beforeAll(async () => {
  opened = await openSolved({ still: true });
  hand = new Hand(opened.page);
});

afterAll(() => opened?.close());

const tourOf = (page: Page) =>
  page.evaluate(() => {
    const { tour, scene } = window.gradewright!.session;
    return { ...tour, stops: (scene?.tour ?? []).map(({ title, view }) => `${title} (${view.kind})`) };
  });
type Tour = Awaited<ReturnType<typeof tourOf>>;

/** Waits until the tour is as expected. */
async function untilTour(page: Page, fits: (tour: Tour) => boolean): Promise<Tour> {
  const end = Date.now() + patience;
  for (;;) {
    const tour = await tourOf(page);
    if (fits(tour)) return tour;
    if (Date.now() > end) throw new Error(`The tour never came to ${fits}; it is ${JSON.stringify(tour)}`);
    await page.waitForTimeout(100);
  }
}

const sheet = () => opened.page.getByRole('region', { name: 'Show' });
const shown = () => opened.page.getByRole('region', { name: 'Presentation' });
const heading = () => shown().getByRole('heading');

describe('a tour of a railway that has none', () => {
  it('is proposed from what the trial came to, with one press', async () => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Other railways…' }).click();
    const chooser = page.getByRole('dialog', { name: 'Railways and their trials' });
    await chooser.getByText('Kestrel Sidings').click();
    await chooser.getByRole('button', { name: 'Coaches propelled: set-track curves, 438 mm' }).click();
    await untilSolved(page, 'set-track-propelled');
    await page.keyboard.press('7');
    await hand.press(sheet().getByRole('button', { name: 'Propose a tour' }));
    const { stops } = await untilTour(page, (now) => now.stops.length > 0);
    expect(stops[0]).toBe('Kestrel Sidings (whole)');
    expect(stops[1]).toMatch(/^Buffers: joint \d.*\(lens\)$/);
    expect(stops.at(-1)).toBe('Where the run ends (follow)');
    expect((await read(page)).progress).toBeNull();
  });

  it('takes a view from the stage, under another title and at another place', async () => {
    const { page } = opened;
    const before = (await tourOf(page)).stops;
    await page.keyboard.press('Shift+4');
    await until(page, ({ stage }) => stage?.camera === 'down');
    await hand.press(sheet().getByRole('button', { name: 'Add this view to the tour' }));
    await untilTour(page, ({ stops }) => stops.length === before.length + 1);
    await hand.fill(sheet().getByRole('textbox', { name: 'Title' }), 'All of it from above');
    await untilTour(page, ({ stops }) => stops.at(-1) === 'All of it from above (down)');
    await hand.press(sheet().getByRole('button', { name: 'Earlier: All of it from above' }));
    await untilTour(page, ({ stops }) => stops.at(-2) === 'All of it from above (down)');
    expect(await graveViolations(page, '.panel')).toEqual([]);
    await opened.shot('tour-sheet');
  });

  it('is gone through by keys, the stage over the whole window', async () => {
    const { page } = opened;
    await hand.press(
      sheet()
        .getByRole('list', { name: 'Tour' })
        .getByRole('button', { name: /Kestrel Sidings/ }),
    );
    await untilTour(page, ({ stop }) => stop === 'kestrel-sidings');
    await page.keyboard.press('p');
    await heading().filter({ hasText: 'Kestrel Sidings' }).waitFor();
    expect(await page.getByRole('banner').isVisible()).toBe(false);
    expect(await page.locator('.stage-picture').evaluate((one) => one.getBoundingClientRect().width)).toBe(1280);
    expect(await shown().textContent()).toContain('This train does not pass.');
    await page.keyboard.press('ArrowRight');
    await heading()
      .filter({ hasText: /^Buffers/ })
      .waitFor();
    const now = await until(page, ({ lensOpen, stage }) => lensOpen && stage?.lens?.share === 1);
    expect(await shown().textContent()).toContain('Fails.');
    // The solver's own margin, as the ledger tells it.
    const mm = (1000 * Math.abs(failing(now).margin)).toFixed(1);
    expect(await shown().textContent()).toContain(`margin −${mm}\u2009mm`);
    expect(now.chosenFinding).toBe(0);
    expect(await graveViolations(page, '.presentation')).toEqual([]);
    await opened.shot('tour-presented');
    // A lecturer's pointer, and a stage that was touched first.
    await page.keyboard.press('PageUp');
    await untilTour(page, ({ stop }) => stop === 'kestrel-sidings');
    await page.locator('.stage-picture').focus();
    await page.keyboard.press('ArrowRight');
    await untilTour(page, ({ stop }) => stop?.startsWith('buffers') === true);
  });

  it('lets the audience guess: the verdict is covered until it is asked for', async () => {
    const { page } = opened;
    await page.keyboard.press('g');
    await shown().getByText('Will it pass?').waitFor();
    expect(await shown().textContent()).not.toMatch(/Fails|margin/);
    await opened.shot('tour-guess');
    await page.keyboard.press('ArrowRight');
    await shown().getByText('Fails.').waitFor();
    expect((await tourOf(page)).stop).toMatch(/^buffers/);
    await page.keyboard.press('ArrowRight');
    await untilTour(page, ({ stop, told }) => stop?.startsWith('buffers') === false && !told);
  });

  it('is left with Escape, and undone step by step', async () => {
    const { page } = opened;
    await page.keyboard.press('Escape');
    await page.getByRole('banner').waitFor();
    expect(await tourOf(page)).toMatchObject({ presenting: false });
    expect((await read(page)).lensOpen).toBe(false);
    await page.keyboard.press('Control+z');
    await untilTour(page, ({ stops }) => stops.at(-1) === 'All of it from above (down)');
    await page.keyboard.press('Control+z');
    await untilTour(page, ({ stops }) => /^View \d/.test(stops.at(-1) ?? ''));
    await page.keyboard.press('Control+z');
    await untilTour(page, ({ stops }) => stops.at(-1) === 'Where the run ends (follow)');
    await page.keyboard.press('Control+z');
    await sheet().getByRole('button', { name: 'Propose a tour' }).waitFor();
  });

  it('was shown without a complaint', () => {
    expect(opened.complaints).toEqual([]);
  });
});
