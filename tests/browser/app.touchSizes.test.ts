import { afterEach, describe, expect, it } from 'vitest';
import type { Opened } from './harness.ts';
import { openSolved, patience, until } from './screen.ts';

let opened: Opened | undefined;
afterEach(async () => {
  await opened?.close();
  opened = undefined;
});

const chapters = ['route', 'trains', 'trial', 'compare', 'survey'];

/** Least height and width of what a finger presses, px. Source: WCAG 2.2, success criterion 2.5.8, Target Size (Minimum). */
const least = 24;

describe.each([
  ['upright', 820, 1180],
  ['on its side', 1180, 820],
])('a tablet %s, under fingers', (_, width, height) => {
  it(
    'keeps two fifths of the stage free of every sheet, with the bar of cameras in it, and sheets as wide as their room',
    async () => {
      opened = await openSolved({ still: true, touch: true, width, height });
      const { page } = opened;
      for (const [index, chapter] of chapters.entries()) {
        await page.keyboard.press(`${index + 1}`);
        await until(page, { chapter });
        await page.waitForSelector('[data-drawer="open"] .panel');
        const boxes = await page.evaluate(() => {
          const edges = (selector: string) => {
            const { left, right, width } = document.querySelector(selector)!.getBoundingClientRect();
            return { left, right, width };
          };
          const panel = document.querySelector('.panel')!;
          const over = panel.scrollWidth - panel.clientWidth;
          return {
            panel: edges('.panel'),
            stage: edges('.stage-place'),
            foot: edges('.stage-foot'),
            title: edges('.stage-title'),
            over,
          };
        });
        expect(boxes.panel.width, chapter).toBeGreaterThan(200);
        expect(boxes.panel.width / boxes.stage.width, chapter).toBeLessThanOrEqual(0.6);
        for (const written of [boxes.foot, boxes.title]) {
          expect(written.left, chapter).toBeGreaterThanOrEqual(boxes.panel.right);
          expect(written.right, chapter).toBeLessThanOrEqual(boxes.stage.right);
        }
        expect(boxes.over, chapter).toBe(0);
      }
      expect(opened.complaints).toEqual([]);
    },
    2 * patience,
  );

  it(
    'has nothing in the band that is smaller than a finger needs',
    async () => {
      opened = await openSolved({ still: true, touch: true, width, height });
      const small = await opened.page.evaluate((side) => {
        const all = document.querySelectorAll<HTMLElement>('.gwb-band button, .gwb-band div[role="slider"]');
        return [...all].flatMap((one) => {
          const box = one.getBoundingClientRect();
          // A box drawn at 24 px comes out at a little less by the fractions of its place.
          if (box.width === 0 || Math.min(box.width, box.height) > side - 0.1) return [];
          return [`${one.getAttribute('aria-label') ?? one.textContent}: ${box.width} x ${box.height}`];
        });
      }, least);
      expect(small).toEqual([]);
    },
    2 * patience,
  );
});
