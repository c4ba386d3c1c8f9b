import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bundledScene } from '../scene/sample.ts';
import { graveViolations } from './axe.ts';
import type { Opened } from './harness.ts';
import { dropScene, openSolved, patience } from './screen.ts';

/** Chances, searches and merging in the Compare chapter, by mouse and keyboard. */
let opened: Opened;

const sheet = () => opened.page.getByRole('region', { name: 'Compare', exact: true });
const variants = () =>
  opened.page.evaluate(() => (window.gradewright!.session.scene?.variants ?? []).map(({ name }) => name));
const stop = () => sheet().getByRole('button', { name: 'Stop', exact: true });
const part = (name: string) => sheet().getByRole('radio', { name, exact: true }).check();

/** Reaches a button with the keyboard alone and presses it. */
async function press(button: Locator): Promise<void> {
  await button.focus();
  await opened.page.keyboard.press('Enter');
}

/** Undoes until the railway has so many variants. */
async function undoTo(count: number): Promise<void> {
  await opened.page.keyboard.press('Control+z');
  await expect.poll(async () => (await variants()).length, { timeout: patience }).toBe(count);
}

const drop = (scene: Parameters<typeof dropScene>[1]) => dropScene(opened.page, scene);

beforeAll(async () => {
  opened = await openSolved({ still: true });
  await drop({ ...bundledScene('10-rushbeck-throat.json'), opensWith: 'eased-300-propelled' });
  await opened.page.keyboard.press('4');
  await sheet().waitFor();
});

afterAll(() => opened?.close());

describe('chances', () => {
  it('begin by the mouse, tell how far they are, and keep the draws that were made when stopped', async () => {
    await part('Chance');
    const draws = sheet().getByLabel('Draws', { exact: true });
    await draws.fill('2000');
    await draws.press('Enter');
    await sheet().getByRole('button', { name: 'Draw 2000 times' }).click();
    await sheet().getByRole('progressbar', { name: 'Draws' }).waitFor();
    await sheet()
      .getByText(/^\d+ draws so far/)
      .waitFor();
    await stop().click();
    const said = sheet().getByText(/^\d+ draws (by even running|in full)/);
    await said.waitFor();
    const drawn = Number(/^\d+/.exec((await said.textContent()) ?? '')?.[0]);
    expect(drawn).toBeGreaterThan(0);
    expect(drawn).toBeLessThan(2000);
    // The track has two trials, pulled and propelled.
    expect(await sheet().getByRole('list', { name: 'How sure each trial is' }).getByRole('listitem').count()).toBe(2);
  });

  it('begin by the keyboard, and end with a share, its range and what decides', async () => {
    const draws = sheet().getByLabel('Draws', { exact: true });
    await draws.fill('40');
    await draws.press('Enter');
    await press(sheet().getByRole('button', { name: 'Draw 40 times' }));
    await sheet()
      .getByText(/^40 draws by even running/)
      .waitFor();
    const item = sheet().getByRole('list', { name: 'How sure each trial is' }).getByRole('listitem').first();
    const words = ((await item.textContent()) ?? '').replaceAll('\u2009', ' ');
    const [share, low, high] = [...words.matchAll(/([\d.]+) ?%/g)].map(([, number]) => Number(number));
    expect(low).toBeLessThanOrEqual(share);
    expect(high).toBeGreaterThanOrEqual(share);
    await opened.shot('compare-chance');
    expect(await graveViolations(opened.page, '.panel')).toEqual([]);
  });
});

describe('a merge', () => {
  it('names what both sides changed, waits for whose value stays, and is undone in one step', async () => {
    const { page } = opened;
    await part('Variants');
    const make = async (mm: string) => {
      const field = sheet().getByLabel('In the variant');
      await field.fill(mm);
      await field.press('Enter');
      await sheet().getByRole('button', { name: 'Make it and show both' }).click();
      await expect.poll(async () => (await variants()).join(), { timeout: patience }).toContain(mm);
    };
    await make('450');
    await make('350');
    await press(sheet().getByRole('button', { name: /^Merge: .*350/ }));
    const form = sheet().getByRole('group', { name: /^Merge .*350/ });
    await form.getByLabel(/^Merge .* into$/).selectOption({ index: 1 });
    const conflicts = form.getByRole('list', { name: 'Changed on both sides' }).getByRole('listitem');
    const count = await conflicts.count();
    expect(count).toBeGreaterThan(0);
    expect(await form.getByRole('button', { name: `${count} to be settled` }).isDisabled()).toBe(true);
    expect(await conflicts.first().textContent()).toMatch(/was /);
    await opened.shot('compare-merge');
    expect(await graveViolations(page, '.panel')).toEqual([]);
    await conflicts.first().getByRole('radio').last().check();
    await form.getByRole('radio', { name: /^All as .*350.* has them$/ }).check();
    expect(await conflicts.first().getByRole('radio').first().isChecked()).toBe(true);
    await press(form.getByRole('button', { name: 'Merge', exact: true }));
    await expect.poll(async () => (await variants()).length, { timeout: patience }).toBe(1);
    const lengths = await page.evaluate(() =>
      window.gradewright!.session.scene?.variants?.[0].changes.map(({ to }) => to),
    );
    // The side that is merged, 350 mm, was chosen throughout: an easement of 700 mm turns over in the middle of the S.
    expect(lengths).toContain(350);
    expect(lengths).not.toContain(450);
    await undoTo(2);
  });
});

describe('the best heights', () => {
  it('are found by the keyboard, kept as a variant, and undone', async () => {
    await drop(bundledScene('05-quayside-flyover.json'));
    await part('Best');
    await press(sheet().getByRole('button', { name: 'Find the best heights' }));
    const said = sheet().getByText(/^(Proven|Best found): /);
    await said.waitFor({ timeout: patience });
    expect(await said.textContent()).toMatch(/^Proven: .* ruling, where it is .* now/);
    await press(sheet().getByRole('button', { name: 'Keep as a variant' }));
    await expect.poll(variants, { timeout: patience }).toEqual(['Best heights']);
    await undoTo(0);
  });
});

describe('the best routes', () => {
  it('are looked for in a worker, and when stopped keep what was found, which can be kept as a variant and undone', async () => {
    const { page } = opened;
    await drop(bundledScene('02-marlow-fold.json'));
    await part('Best');
    await sheet().getByRole('radio', { name: 'Best for each plan' }).check();
    await press(sheet().getByRole('button', { name: 'Find the best routes' }));
    await sheet().getByRole('progressbar', { name: 'Best route' }).waitFor();
    await sheet()
      .getByText(/^[1-9]\d* so far, by even running/)
      .waitFor({ timeout: 2 * patience });
    expect(page.workers().some((worker) => worker.url().includes('routeWorker'))).toBe(true);
    await stop().click();
    const said = sheet().getByText(/^Stopped: /);
    await said.waitFor({ timeout: patience });
    expect(await said.textContent()).toMatch(/^Stopped: [1-9]\d* found until then, \d+ of \d+ settings/);
    await press(sheet().locator('.route-front .dot').last());
    await press(sheet().getByRole('button', { name: 'Keep as a variant' }).last());
    await expect.poll(async () => (await variants()).length, { timeout: patience }).toBe(1);
    await undoTo(0);
  });

  it('say exactly what is proven by what, are set against each other by two measures of three, and beaten ones can be kept too', async () => {
    const { page } = opened;
    await sheet().getByRole('radio', { name: 'Heights as they are' }).check();
    await press(sheet().getByRole('button', { name: 'Find the best routes' }));
    const said = sheet().getByText(/^(Proven|Best found) (in full|by even running): /);
    await said.waitFor({ timeout: 2 * patience });
    const words = (await said.textContent()) ?? '';
    expect(words).toMatch(/^Proven by even running: all \d+ settings of the ranges were looked at\./);
    expect(words).toMatch(/Full runs? (gives?|give) (the same|another) verdict/);
    const dots = sheet().locator('.route-front .dot');
    expect(await dots.count()).toBeGreaterThan(5);
    expect(await sheet().locator('.route-front .dot.now').count()).toBe(1);
    for (const pair of ['Grade, room', 'Grade, margin', 'Room, margin']) {
      await sheet().getByRole('radio', { name: pair }).check();
      expect(await sheet().locator('.route-front .tick').count(), pair).toBeGreaterThanOrEqual(2);
    }
    await opened.shot('compare-routes');
    expect(await graveViolations(page, '.panel')).toEqual([]);
    await press(sheet().locator('.route-front .dot.beaten').first());
    await sheet().getByText('Another beats it in all three.').waitFor();
    await press(sheet().getByRole('button', { name: 'Keep as a variant' }).last());
    await expect.poll(async () => (await variants()).length, { timeout: patience }).toBe(1);
    await undoTo(0);
  });
});

it('the chapter was shown without a complaint', () => {
  expect(opened.complaints).toEqual([]);
  expect(opened.foreign).toEqual([]);
});
