import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Fingers, type Spot, spotOf } from './fingers.ts';
import type { Opened } from './harness.ts';
import { dropScene, openSolved, patience } from './screen.ts';

const sceneText = (page: Page) => page.evaluate(() => JSON.stringify(window.gradewright?.session.scene));
const stepsOf = (page: Page) => page.locator('[aria-label^="Undo"]').first().getAttribute('aria-label');
const look = (page: Page) => page.evaluate(() => [...(window.__stage?.eye ?? [])]);

const becomes = (page: Page, text: string | undefined, other = false) =>
  page.waitForFunction(
    ([was, isOther]) => (JSON.stringify(window.gradewright?.session.scene) === was) !== isOther,
    [text, other] as const,
    { timeout: patience },
  );

describe('drawing with fingers', () => {
  let opened: Opened;
  let fingers: Fingers;
  beforeAll(async () => {
    opened = await openSolved({ still: true, touch: true, width: 1180, height: 820 });
    fingers = await Fingers.on(opened.page);
    await opened.page.keyboard.press('1');
    await opened.page.waitForSelector('.stage-handle-radius', { state: 'attached' });
    // The sheet is a drawer over the stage: it is shut again.
    await opened.page.locator('.rail .drawer').click();
  }, 2 * patience);
  afterAll(() => opened?.close());

  /** Takes the room in hand, or the line. */
  const workAt = async (works: 'room' | 'line'): Promise<void> => {
    const button = opened.page.locator('.stage-controls button', { hasText: /^Room$/ });
    const pressed = String(works === 'room');
    if ((await button.getAttribute('aria-pressed')) !== pressed) await button.click();
    await opened.page.waitForFunction(
      (wanted) =>
        [...document.querySelectorAll('.stage-controls button[aria-pressed]')].some(
          (one) => one.textContent === 'Room' && one.getAttribute('aria-pressed') === wanted,
        ),
      pressed,
    );
  };

  /** A drag that is one step of the history, and nothing after it was undone. */
  const oneStep = async (selector: string, way: Spot): Promise<void> => {
    const { page } = opened;
    const before = await sceneText(page);
    const words = await stepsOf(page);
    await fingers.drag(await spotOf(page, selector), way);
    await becomes(page, before, true);
    // The hand has let go: the step is in the history, with its name on the button.
    await page.waitForFunction(
      (was) => document.querySelector('[aria-label^="Undo"]')?.getAttribute('aria-label') !== was,
      words,
    );
    await page.locator('[aria-label^="Undo"]').first().click();
    await becomes(page, before);
    expect(await stepsOf(page)).toBe(words);
  };

  it(
    'pulls a grade point and a support of the band up, where the rows themselves scroll',
    async () => {
      await oneStep('[data-handle="point-1"]', [0, -24]);
      await oneStep('[data-handle="support-20"]', [0, -20]);
    },
    2 * patience,
  );

  it(
    'puts a grade point back when a second finger comes down on another row',
    async () => {
      const { page } = opened;
      const before = await sceneText(page);
      const words = await stepsOf(page);
      const [x, y] = await spotOf(page, '[data-handle="point-1"]');
      await fingers.put(1, [x, y]);
      await fingers.go({ 1: [x, y - 24] });
      await becomes(page, before, true);
      await fingers.put(2, [x + 120, y + 6]);
      await becomes(page, before);
      // What the first finger does from here on is nothing.
      await fingers.go({ 1: [x, y - 40] });
      await fingers.lift(2);
      await fingers.lift(1);
      expect(await sceneText(page)).toBe(before);
      expect(await stepsOf(page)).toBe(words);
    },
    2 * patience,
  );

  it(
    'pulls a radius on the stage',
    async () => {
      await oneStep('.stage-handle-radius', [24, -30]);
    },
    2 * patience,
  );

  it(
    'turns and zooms with two fingers, though one was on a handle, and changes nothing',
    async () => {
      const { page } = opened;
      const before = await sceneText(page);
      const words = await stepsOf(page);
      const eye = await look(page);
      const [x, y] = await spotOf(page, '.stage-handle-radius');
      await fingers.put(1, [x, y]);
      await fingers.put(2, [x + 90, y + 60]);
      await fingers.go({ 1: [x - 30, y - 20], 2: [x + 140, y + 90] });
      await fingers.lift(2);
      await fingers.lift(1);
      await page.waitForFunction((was) => String([...(window.__stage?.eye ?? [])]) !== was, String(eye));
      expect(await sceneText(page)).toBe(before);
      expect(await stepsOf(page)).toBe(words);
    },
    2 * patience,
  );

  it(
    'pulls a corner of the room',
    async () => {
      const { page } = opened;
      await workAt('room');
      const walls = page.locator('.stage-controls button', { hasText: /^Walls$/ });
      if (await walls.isVisible()) await walls.press('Enter');
      await page.waitForSelector('.stage-handle-room-corner', { state: 'attached' });
      await page.locator('.stage-controls button', { hasText: /^Straight down$/ }).click();
      await page.waitForFunction(() => window.__stage?.camera === 'down');
      await oneStep('.stage-handle-room-corner', [24, -18]);
      await opened.shot('touch-room');
    },
    2 * patience,
  );

  it(
    'pulls the corner in which two lines meet, and a pier beside the line',
    async () => {
      const { page } = opened;
      const portal = JSON.parse(readFileSync(new URL('../../scenes/risks/structure.json', import.meta.url), 'utf8'));
      const bend = { kind: 'arc', radiusMm: 600, turn: 'left', angleDeg: 60 };
      const straight = { kind: 'straight', lengthMm: 1000 };
      portal.tracks[0].alignment = [{ kind: 'straight', lengthMm: 2400 }, bend, straight];
      await dropScene(page, { ...portal, name: 'A bend behind the portal' });
      await workAt('room');
      await oneStep('[data-key^="room:structure:1:middle"]', [0, 22]);
      await workAt('line');
      await oneStep('.stage-handle-corner', [18, -12]);
      await opened.shot('touch-corner');
    },
    2 * patience,
  );

  it('answered without a complaint', () => {
    expect(opened.complaints).toEqual([]);
  });
});
