import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Hand } from './hand.ts';
import { patience } from './screen.ts';

const sceneText = (page: Page): Promise<string> =>
  page.evaluate(() => JSON.stringify(window.gradewright?.session.scene ?? null));

/** Waits until the railway is this one, as text; or another than it, when `other`. */
const untilScene = (page: Page, state: string, other = false): Promise<unknown> =>
  page.waitForFunction(
    ([text, isOther]) => (JSON.stringify(window.gradewright?.session.scene ?? null) === text) !== isOther,
    [state, other] as const,
    { timeout: patience },
  );

/** What became of a railway, edit by edit: each is one step of the history, and all of them can be taken back and done again. */
export class Steps {
  private readonly states: string[] = [];
  private readonly page: Page;
  private readonly hand: Hand;

  constructor(page: Page, hand: Hand) {
    this.page = page;
    this.hand = hand;
  }

  get count(): number {
    return this.states.length - 1;
  }

  /** Where it begins: a railway as it was made. */
  async begin(): Promise<void> {
    this.states.length = 0;
    this.states.push(await sceneText(this.page));
  }

  /** Does something that changes the railway. */
  async edit(deed: () => Promise<unknown>): Promise<void> {
    const before = this.states.at(-1) ?? '';
    await deed();
    await this.hand.sees('the edit', () => untilScene(this.page, before, true));
    this.states.push(await sceneText(this.page));
  }

  /** Takes all back, edit by edit, to what was made; then does all again. */
  async thereAndBack(): Promise<void> {
    for (const state of this.states.slice(0, -1).reverse()) {
      await this.page.keyboard.press('Control+z');
      await untilScene(this.page, state);
    }
    // There is nothing left to take back.
    expect(await this.page.locator('[aria-label^="Undo"]').first().isDisabled()).toBe(true);
    for (const state of this.states.slice(1)) {
      await this.page.keyboard.press('Control+Shift+z');
      await untilScene(this.page, state);
    }
  }
}
