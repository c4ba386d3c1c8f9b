import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Opened } from './harness.ts';
import { openSolved, patience } from './screen.ts';

type SceneNow = NonNullable<NonNullable<Window['gradewright']>['session']['scene']>;

const sceneNow = (page: Page): Promise<SceneNow> => page.evaluate(() => window.gradewright!.session.scene!);

/** Waits until the railway is as wanted, and gives it. */
async function untilScene(page: Page, wanted: (scene: SceneNow) => boolean): Promise<SceneNow> {
  const end = Date.now() + patience;
  for (;;) {
    const now = await sceneNow(page);
    if (wanted(now)) return now;
    if (Date.now() > end) throw new Error(`The railway never came to ${wanted.toString()}`);
    await page.waitForTimeout(100);
  }
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Departures of all supports of the first track, mm, as its handles in the section tell them. */
const offs = (page: Page): Promise<number[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('[data-handle^="support-"]')].map((one) => Number(one.getAttribute('aria-valuenow'))),
  );

const undo = async (page: Page, to: SceneNow) => {
  await page.keyboard.press('Control+z');
  await untilScene(page, (now) => same(now, to));
};

describe('supports chosen in the section', () => {
  let opened: Opened;
  let first: SceneNow;
  beforeAll(async () => {
    opened = await openSolved({ still: true });
    await opened.page.keyboard.press('1');
    await opened.page.waitForSelector('[data-handle="support-0"]', { state: 'attached' });
    first = await sceneNow(opened.page);
  });
  afterAll(() => opened?.close());

  it('are taken by Shift and an arrow key, and moved together by their average', async () => {
    const { page } = opened;
    const before = await offs(page);
    await page.locator('[data-handle="support-0"]').focus();
    for (let k = 0; k < 3; k++) await page.keyboard.press('Shift+ArrowRight');
    const choice = page.locator('.chosen-supports');
    await choice.getByText('Supports 1 to 4 chosen', { exact: false }).waitFor();
    const field = choice.getByRole('textbox', { name: 'Off plan, on average' });
    await field.fill('0.5');
    await field.press('Enter');
    await page.waitForFunction(
      () => document.querySelector('[data-handle="support-3"]')?.getAttribute('aria-valuenow') !== '0',
    );
    const after = await offs(page);
    const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length;
    // Each moves by as much, whatever it stood at; nothing else moves.
    const by = after.map((off, k) => off - before[k]);
    expect(mean(after.slice(0, 4))).toBeCloseTo(0.5, 6);
    for (const one of by.slice(0, 4)) expect(one).toBeCloseTo(by[0], 6);
    for (const one of by.slice(4)) expect(one).toBe(0);
    await undo(page, first);
    await page.locator('[data-handle="support-0"]').focus();
    await page.keyboard.press('Escape');
    await page.locator('.chosen-supports.chosen').waitFor({ state: 'detached' });
  });

  it('are taken out by Delete, let go by Escape, and come back', async () => {
    const { page } = opened;
    const count = (await offs(page)).length;
    await page.locator('[data-handle="support-4"]').focus();
    await page.keyboard.press('Shift+ArrowRight');
    await page.locator('.chosen-supports').getByText('Supports 5 to 6 chosen', { exact: false }).waitFor();
    await page.keyboard.press('Escape');
    await page.locator('.chosen-supports.chosen').waitFor({ state: 'detached' });
    expect(await sceneNow(page)).toEqual(first);

    await page.locator('[data-handle="support-4"]').focus();
    await page.keyboard.press('Shift+ArrowRight');
    await page.locator('.chosen-supports.chosen').waitFor();
    await page.keyboard.press('Delete');
    await untilScene(page, (now) => !same(now, first));
    expect(await offs(page)).toHaveLength(count - 2);
    await undo(page, first);
    expect(await offs(page)).toHaveLength(count);
  });

  it('answered without a complaint', () => {
    expect(opened.complaints).toEqual([]);
  });
});

describe('what stands beside the line', () => {
  let opened: Opened;
  let first: SceneNow;
  beforeAll(async () => {
    opened = await openSolved({ still: true });
    await opened.page.keyboard.press('1');
    await opened.page.getByRole('region', { name: 'Route', exact: true }).waitFor();
    first = await sceneNow(opened.page);
  });
  afterAll(() => opened?.close());

  it('is put there, set by numbers, told of and taken away, each deed one step', async () => {
    const { page } = opened;
    const had = first.lineside?.length ?? 0;
    const states: SceneNow[] = [first];
    const step = async (deed: () => Promise<unknown>) => {
      await deed();
      const before = states[states.length - 1];
      states.push(await untilScene(page, (now) => !same(now, before)));
    };
    const last = () => states[states.length - 1].lineside?.[had];

    await step(() => page.getByRole('button', { name: 'Add a wall' }).press('Enter'));
    expect(last()).toMatchObject({ kind: 'wall', name: 'Wall' });
    const row = page.locator(`[data-lineside="${had}"]`);
    const type = async (label: string, text: string) => {
      const field = row.getByRole('textbox', { name: label });
      await field.fill(text);
      await field.press('Enter');
    };
    await step(() => type('Face from the middle', '43'));
    expect(last()).toMatchObject({ distanceMm: 43 });
    // A builder's inches are as good.
    await step(() => type('Top over the rail', '2in'));
    expect(last()).toMatchObject({ heightMm: 50.8 });
    const side = last()?.kind === 'wall' ? (last() as { side: string }).side : '';
    await step(() => row.getByRole('radio', { name: side === 'left' ? 'right' : 'left' }).press('Space'));
    expect(last()).toMatchObject({ side: side === 'left' ? 'right' : 'left' });
    await step(() => type('Along the track', 'Retaining wall'));
    expect(last()).toMatchObject({ name: 'Retaining wall' });

    // What cannot stand is said at the field, and nothing changes.
    const field = row.getByRole('textbox', { name: 'Face from the middle' });
    await field.fill('much');
    await field.press('Enter');
    await page.waitForFunction(
      (index) =>
        document.querySelector(`[data-lineside="${index}"] [aria-invalid="true"]`)?.getAttribute('aria-describedby'),
      had,
    );
    expect(await sceneNow(page)).toEqual(states[states.length - 1]);
    await field.press('Escape');

    // A wall nearer than the train's side is told as a finding.
    await step(() => type('Face from the middle', '12'));
    await page.waitForFunction(
      () => {
        const now = window.gradewright?.session;
        return now?.compiled?.scene === now?.scene && now?.progress === null && now?.result !== null;
      },
      null,
      { timeout: patience },
    );
    const finding = await page.evaluate(() =>
      window.gradewright!.session.result!.findings.find(({ risk }) => risk === 'structure'),
    );
    expect(finding).toMatchObject({ verdict: 'fails' });

    await row.getByRole('button', { name: 'Show Retaining wall' }).press('Enter');
    await step(() => row.getByRole('button', { name: 'Remove Retaining wall' }).press('Enter'));
    expect(states[states.length - 1].lineside?.length ?? 0).toBe(had);
    for (const state of states.slice(0, -1).reverse()) await undo(page, state);
  });

  it('answered without a complaint', () => {
    expect(opened.complaints).toEqual([]);
  });
});
