import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { glanceAt } from '../../src/sim/glance/index.ts';
import { verdictWords } from '../../src/state/route/index.ts';
import type { Opened } from './harness.ts';
import { openSolved, patience } from './screen.ts';

const show = { lengthUnit: 'mm', gradeForm: 'one-in' } as const;

/** What the Route sheet says of the railway, and the railway that it says it of, read in one moment. */
interface Told {
  readonly words: string;
  readonly scene: NonNullable<Window['gradewright']>['session']['scene'];
  readonly trialId: string | null;
  readonly progress: number | null;
}

const told = (page: Page): Promise<Told> =>
  page.evaluate(() => {
    const { scene, trialId, progress } = window.gradewright!.session;
    return { words: document.querySelector('.line-verdict b')?.textContent ?? '', scene, trialId, progress };
  });

/** The verdict that the railway has by the same pass, worked out here and not by the page. */
function verdictOf({ scene, trialId }: Told, thorough: boolean): string {
  if (scene === null || trialId === null) throw new Error('No railway is open.');
  const glance = glanceAt({ scene, trialId, thorough });
  return verdictWords({ ...glance, scene }, show).words;
}

/** The middle of something that can be taken hold of, page px, once it stands still there. */
async function middleOf(page: Page, selector: string): Promise<readonly [number, number]> {
  await page.waitForSelector(selector, { state: 'attached', timeout: patience });
  const place = () =>
    page.evaluate((wanted) => {
      const { x, y, width, height } = document.querySelector(wanted)!.getBoundingClientRect();
      return [x + width / 2, y + height / 2] as const;
    }, selector);
  let before = await place();
  for (;;) {
    await page.waitForTimeout(200);
    const now = await place();
    if (now[0] === before[0] && now[1] === before[1]) return now;
    before = now;
  }
}

describe('a hand that drags', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openSolved({ still: true });
    await opened.page.keyboard.press('1');
  });
  afterAll(() => opened?.close());

  it.each([
    // Each with where it goes, px, and what shows where it was.
    ['a grade point', '[data-handle="point-1"] .gwb-catch', [0, -14], [0, -22], 'path.gwb-ghost'],
    ['a support', '[data-handle="support-12"] .gwb-catch', [0, -9], [0, -15], 'rect.gwb-ghost'],
    ['a handle of the plan', '[data-key="end:0"]', [26, 8], [40, 14], '.stage-plan-newer'],
  ] as const)(
    '%s sees the verdict of the place it is at, and what was; Escape puts it back',
    async (_, selector, first, second, ghost) => {
      const { page } = opened;
      const before = await told(page);
      expect(before.progress).toBeNull();
      const [x, y] = await middleOf(page, selector);
      await page.mouse.move(x, y);
      await page.mouse.down();
      const seen: string[] = [];
      for (const [dx, dy] of [first, second]) {
        await page.mouse.move(x + dx, y + dy, { steps: 3 });
        // It is there while the hand still holds, quick or thorough, and it is the verdict of this very railway.
        let now = await told(page);
        const end = Date.now() + patience;
        let wanted: readonly string[] = [];
        let of: Told['scene'] = null;
        do {
          await page.waitForTimeout(100);
          now = await told(page);
          if (JSON.stringify(of) !== JSON.stringify(now.scene)) wanted = [verdictOf(now, false), verdictOf(now, true)];
          of = now.scene;
        } while ((now.scene === before.scene || !wanted.includes(now.words)) && Date.now() < end);
        expect(wanted).toContain(now.words);
        expect(JSON.stringify(now.scene)).not.toBe(JSON.stringify(before.scene));
        expect(now.progress).toBeNull();
        expect(await page.evaluate(() => window.gradewright?.session.holding)).toBe(true);
        seen.push(now.words);
      }
      expect(new Set([before.words, ...seen]).size).toBeGreaterThan(1);
      expect(await page.locator(ghost).count()).toBeGreaterThan(0);
      await opened.shot(`dragging-${selector.replace(/\W+/g, '-')}`);
      await page.keyboard.press('Escape');
      await page.mouse.up();
      await page.waitForFunction(() => window.gradewright?.session.holding === false, null, { timeout: patience });
      const after = await told(page);
      expect(JSON.stringify(after.scene)).toBe(JSON.stringify(before.scene));
      await page.waitForFunction(
        (was) => document.querySelector('.line-verdict b')?.textContent === was,
        before.words,
        {
          timeout: patience,
        },
      );
    },
  );

  it('lets the full run follow once it lets go, and the step can be undone', async () => {
    const { page } = opened;
    const before = await told(page);
    const [x, y] = await middleOf(page, '[data-handle="point-1"] .gwb-catch');
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 14, { steps: 3 });
    await page.mouse.up();
    await page.waitForFunction(
      () => {
        const now = window.gradewright?.session;
        return now?.compiled?.scene === now?.scene && now?.result?.trialId === now?.trialId && now?.progress === null;
      },
      null,
      { timeout: patience },
    );
    const after = await told(page);
    expect(JSON.stringify(after.scene)).not.toBe(JSON.stringify(before.scene));
    await page.getByText('from the full run').waitFor();
    await page.keyboard.press('Control+z');
    await page.waitForFunction(
      (was) => JSON.stringify(window.gradewright?.session.scene) === was,
      JSON.stringify(before.scene),
    );
  });

  it('was answered without a complaint', () => {
    expect(opened.complaints).toEqual([]);
  });
});
