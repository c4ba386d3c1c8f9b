import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Opened } from './harness.ts';
import { openSolved, patience, until } from './screen.ts';

let opened: Opened;
beforeAll(async () => {
  opened = await openSolved({ still: true });
}, 2 * patience);
afterAll(() => opened?.close());

/** What has the focus, and what of its text is selected. */
const focus = (page: Page) =>
  page.evaluate(() => {
    const one = document.activeElement;
    const field = one instanceof HTMLInputElement ? one : null;
    return {
      what: one?.tagName.toLowerCase() ?? '',
      look: one?.className ?? '',
      text: field?.value ?? null,
      selected: field ? field.value.slice(field.selectionStart ?? 0, field.selectionEnd ?? 0) : null,
    };
  });

describe('a field under the keyboard', () => {
  it(
    'takes what was typed with Enter and has it selected; Escape leaves it to its sheet, whose keys are then the page’s',
    async () => {
      const { page } = opened;
      await page.keyboard.press('1');
      const name = page.getByRole('textbox', { name: 'Name of the track' });
      await name.focus();
      await page.keyboard.type('Branch 2');
      // The digit went into the field.
      expect((await until(page, {})).chapter).toBe('route');
      await page.keyboard.press('Enter');
      await page.waitForFunction(() => window.gradewright?.session.scene?.tracks[0].name === 'Branch 2');
      expect(await focus(page)).toMatchObject({ what: 'input', text: 'Branch 2', selected: 'Branch 2' });
      await page.keyboard.type('Other');
      await page.keyboard.press('Escape');
      expect((await focus(page)).look).toContain('panel');
      expect(await page.evaluate(() => window.gradewright?.session.scene?.tracks[0].name)).toBe('Branch 2');
      expect(await name.inputValue()).toBe('Branch 2');
      await page.keyboard.press('3');
      await until(page, { chapter: 'trial' });
    },
    2 * patience,
  );

  it(
    'that is a number does the same, and what cannot be stays to be mended',
    async () => {
      const { page } = opened;
      await page.keyboard.press('1');
      const spacing = page.getByRole('textbox', { name: 'Spacing beside' });
      await spacing.focus();
      await page.keyboard.type('61');
      await page.keyboard.press('Enter');
      expect(await focus(page)).toMatchObject({ what: 'input', text: '61', selected: '61' });
      await page.keyboard.type('much');
      await page.keyboard.press('Enter');
      expect(await focus(page)).toMatchObject({ what: 'input', text: 'much', selected: '' });
      await page.keyboard.press('Escape');
      expect((await focus(page)).look).toContain('panel');
      expect(await spacing.inputValue()).toBe('61');
    },
    2 * patience,
  );

  it(
    'lets Alt and Shift with a digit turn to a chapter, from a field with its text taken, and from a list',
    async () => {
      const { page } = opened;
      await page.keyboard.press('1');
      await page.getByRole('textbox', { name: 'Name of the track' }).focus();
      await page.keyboard.type('Ridge line');
      await page.keyboard.press('Alt+Shift+Digit2');
      await until(page, { chapter: 'trains' });
      expect(await page.evaluate(() => window.gradewright?.session.scene?.tracks[0].name)).toBe('Ridge line');
      const list = page.locator('.panel select').first();
      await list.focus();
      const before = await list.inputValue();
      await page.keyboard.press('Alt+Shift+Digit4');
      await until(page, { chapter: 'compare' });
      await page.keyboard.press('Alt+Shift+Digit2');
      await until(page, { chapter: 'trains' });
      await list.focus();
      await page.keyboard.press('Escape');
      expect((await focus(page)).look).toContain('panel');
      expect(await list.inputValue()).toBe(before);
      await page.keyboard.press('1');
      await until(page, { chapter: 'route' });
    },
    2 * patience,
  );

  it(
    'is told of where the keys are told',
    async () => {
      const { page } = opened;
      await page.keyboard.press('Control+k');
      await page.locator('input[role=combobox]').fill('chapter');
      await page.waitForFunction(() => document.querySelector('.palette')?.textContent?.includes('4 or Alt Shift 4'));
      await page.keyboard.press('Escape');
      await until(page, { palette: false });
    },
    patience,
  );
});

describe('the joints beside the force carpet', () => {
  it(
    'are one stop of the Tab key; the arrow keys go on and choose',
    async () => {
      const { page } = opened;
      const stops = page.locator('.gwb-joint[tabindex="0"]');
      expect(await stops.count()).toBe(1);
      await stops.focus();
      await page.keyboard.press('Home');
      await page.waitForFunction(() => window.gradewright?.session.chosenJoint === 0);
      await page.keyboard.press('ArrowDown');
      await page.waitForFunction(
        () =>
          window.gradewright?.session.chosenJoint === 1 &&
          document.activeElement instanceof HTMLElement &&
          document.activeElement.dataset.joint === '1',
      );
      expect(await stops.count()).toBe(1);
      expect(await stops.getAttribute('aria-pressed')).toBe('true');
      // What a mouse is told by waiting is written out for the focus too, and goes with it.
      expect(await page.locator('.gwb-joint-whole').textContent()).toBe(await stops.getAttribute('title'));
      await page.keyboard.press('Tab');
      await page.waitForSelector('.gwb-joint-whole', { state: 'detached' });
    },
    2 * patience,
  );

  it('answered without a complaint', () => {
    expect(opened.complaints).toEqual([]);
  });
});
