import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bundledScene } from '../scene/sample.ts';
import { graveViolations } from './axe.ts';
import type { Opened } from './harness.ts';
import { openSolved, until } from './screen.ts';

const scene = bundledScene('01-wren-gill.json');

let opened: Opened;

beforeAll(async () => {
  opened = await openSolved({ still: true });
});

afterAll(() => opened?.close());

/** What has the focus: its words, and whether the focus is to be seen on it or on what is drawn for it. */
const focused = (): Promise<{ readonly name: string; readonly seen: boolean }> =>
  opened.page.evaluate(() => {
    const element = document.activeElement ?? document.body;
    const radio = element.matches('input[type="radio"]');
    const { outlineStyle, outlineWidth } = getComputedStyle((radio && element.nextElementSibling) || element);
    const outlined = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 1;
    // A field is underlined, and more heavily while it has the focus.
    const line = element.matches('input[type="text"]') ? element.parentElement : null;
    const underlined = line !== null && Number.parseFloat(getComputedStyle(line).borderBottomWidth) >= 2.5;
    const label = element instanceof HTMLInputElement ? element.labels?.[0]?.textContent : element.textContent;
    const name = element.getAttribute('aria-label') ?? label ?? '';
    return { name: `${element.tagName.toLowerCase()} ${name.trim().slice(0, 60)}`, seen: outlined || underlined };
  });

/** Stops of the Tab key that are out of order or do not take the focus, and what can be pressed but is no stop. */
const unreached = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const faults: string[] = [];
    const words = (element: Element) => (element.getAttribute('aria-label') ?? element.textContent ?? '').slice(0, 60);
    const all = document.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary, [tabindex]');
    for (const element of all) {
      const { visibility, display } = getComputedStyle(element);
      const away = element.matches(':disabled') || element.closest('[hidden], [inert], details:not([open])') !== null;
      if (away || visibility === 'hidden' || display === 'none' || element.getClientRects().length === 0) continue;
      if (element.tabIndex > 0) faults.push(`out of order: ${words(element)}`);
      if (element.tabIndex < 0) continue;
      element.focus({ preventScroll: true });
      if (document.activeElement !== element) faults.push(`takes no focus: ${words(element)}`);
    }
    document.querySelector<HTMLElement>('[aria-current="page"]')?.focus({ preventScroll: true });
    return faults;
  });

/** Opens the palette with its key, types, and takes the first answer. */
async function findAndDo(typed: string): Promise<void> {
  const { page } = opened;
  await page.keyboard.press('Control+k');
  await page.locator('input[role=combobox]').waitFor();
  await page.keyboard.type(typed);
  await page.keyboard.press('Enter');
  await until(page, { palette: false });
}

describe('the keyboard alone', () => {
  it('reaches everything, and what it is on is always to be seen', async () => {
    const { page } = opened;
    const names: string[] = [];
    for (let press = 0; press < 200; press++) {
      await page.keyboard.press('Tab');
      const { name, seen } = await focused();
      if (name.startsWith('body') || (names.length > 0 && name === names[0])) break;
      expect({ name, seen }).toEqual({ name, seen: true });
      names.push(name);
    }
    const parts = [
      ...['Open a scene file', 'Trial', 'Chosen joint', 'Propelled', 'Speed setting', 'Magnify', 'Ride', 'rides up'],
      ...['Set both heads', 'Play', 'Moment of the trial', 'along the track', 'Section, at', 'rows'],
    ];
    expect(names).toEqual(expect.arrayContaining(parts.map((part) => expect.stringContaining(part))));
  });

  it('turns to each chapter with its number; all that is there has a name and can be reached, in the order it is read', async () => {
    const { page } = opened;
    for (const [key, chapter, sheet] of [
      ['1', 'route', 'Route'],
      ['2', 'trains', 'Trains'],
      ['4', 'compare', 'Compare'],
      ['5', 'survey', 'Survey'],
      ['6', 'build', 'Build'],
      ['7', 'show', 'Show'],
      ['3', 'trial', 'Trial'],
    ] as const) {
      await page.keyboard.press(key);
      await until(page, { chapter });
      await page.getByRole('region', { name: sheet, exact: true }).waitFor();
      const current = page.getByRole('navigation', { name: 'Chapters' }).locator('[aria-current="page"]');
      expect(await current.textContent()).toContain(sheet);
      expect(await graveViolations(page)).toEqual([]);
      // The next stop after the last chapter of the rail is in what was opened, not in a trap, and Shift leads back.
      await current.focus();
      const began = (await focused()).name;
      await page.keyboard.press('Tab');
      expect((await focused()).name).not.toBe(began);
      await page.keyboard.press('Shift+Tab');
      expect((await focused()).name).toBe(began);
      const faults = await unreached(page);
      expect(faults).toEqual([]);
      await opened.shot(`chapter-${chapter}`);
    }
  });

  it('finds a place by part of its name and goes there', async () => {
    const { page } = opened;
    await findAndDo('port 38');
    const { chosenFinding } = await until(page, (now) => now.time > 0);
    expect(chosenFinding).toBe(null);
    // Supports stand at 60 + n * 235.6 mm from n = 0, and the middle of the train is there in one of fifty frames a second.
    expect(Math.abs(Number(await page.locator('.gwb-flag').textContent()) - 8.7772)).toBeLessThan(0.01);
  });

  it('does what a command says, and answers to arrow keys in the list', async () => {
    const { page } = opened;
    await findAndDo('straight down');
    await until(page, ({ camera, stage }) => camera === 'down' && stage?.camera === 'down');
    await findAndDo('inches');
    await until(page, { lengthUnit: 'in' });
    expect(await page.getByRole('article').first().textContent()).toMatch(/in/);
    await findAndDo('lengths in mm');
    await until(page, { lengthUnit: 'mm' });
    await page.keyboard.press('Control+k');
    const list = page.getByRole('listbox');
    await list.waitFor();
    expect(await graveViolations(page, 'dialog')).toEqual([]);
    await page.keyboard.type('trial:');
    await page.keyboard.press('ArrowDown');
    const chosen = await list.getByRole('option', { selected: true }).textContent();
    expect(chosen).toContain(scene.trials[2].name);
    await page.keyboard.press('Enter');
    await until(page, ({ trialId, findings }) => trialId === scene.trials[2].id && findings !== null);
  });

  it('leaves the palette as it came, with the focus where it was', async () => {
    const { page } = opened;
    for (const from of [
      page.getByRole('radio', { name: 'millimetres' }),
      page.getByRole('textbox', { name: 'Speed setting' }),
    ]) {
      await from.focus();
      const { name } = await focused();
      await page.keyboard.press('Control+k');
      await page.locator('input[role=combobox]').fill('no such thing anywhere');
      await page.getByText('Nothing here is called that.').waitFor();
      await page.keyboard.press('Escape');
      await until(page, { palette: false });
      expect((await focused()).name).toBe(name);
    }
  });

  it('was answered without a complaint', () => {
    expect(opened.complaints).toEqual([]);
  });
});
