import type { Locator } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { graveViolations } from './axe.ts';
import type { Opened } from './harness.ts';
import { failing, openSolved, read, until } from './screen.ts';

let opened: Opened | undefined;

afterEach(async () => {
  await opened?.close();
  opened = undefined;
});

/** What a finger is to hit, px: least width and height; and what the row of the playhead has room for. */
const finger: readonly [number, number] = [44, 44];
const fingerOnTransport: readonly [number, number] = [33, 40];

/** What makes the page wider than its window: the page itself by some px, or controls that begin or end outside. */
const tooWide = ({ page }: Opened): Promise<string[]> =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    const out = scrollWidth > clientWidth ? [`the page by ${scrollWidth - clientWidth} px`] : [];
    for (const control of document.querySelectorAll('button, input, [tabindex]')) {
      const { left, right, width } = control.getBoundingClientRect();
      if (width > 0 && (left < -0.5 || right > clientWidth + 0.5)) out.push(control.textContent || control.tagName);
    }
    return out;
  });

/** Words in the ledger's cards that stick out of their box or are cut off by it. */
const clipped = ({ page }: Opened): Promise<string[]> =>
  page.evaluate(() => {
    const cut: string[] = [];
    for (const card of document.querySelectorAll('.finding, .passing-row')) {
      const { left, right } = card.getBoundingClientRect();
      const words = document.createTreeWalker(card, NodeFilter.SHOW_TEXT);
      while (words.nextNode()) {
        const range = document.createRange();
        range.selectNodeContents(words.currentNode);
        const box = range.getBoundingClientRect();
        // Words that are put away, such as an explanation nobody asked for, have no box.
        if (box.width === 0) continue;
        if (box.left < left - 0.5 || box.right > right + 0.5) cut.push(`sticks out: ${words.currentNode.textContent}`);
      }
      for (const element of [card, ...card.querySelectorAll('*')]) {
        const { overflowX, overflowY } = getComputedStyle(element);
        const over = element.scrollWidth > element.clientWidth + 1 && overflowX !== 'visible';
        const under = element.scrollHeight > element.clientHeight + 1 && overflowY !== 'visible';
        if (over || under) cut.push(`cut off: ${element.textContent}`);
      }
    }
    return cut;
  });

/** The controls that a finger can not hit well: those that a press within its width and height around their middle would miss. */
const smallTargets = (controls: Locator, [wide, high] = finger): Promise<string[]> =>
  controls.evaluateAll(
    (elements, [across, down]) => {
      // A press is on a whole pixel and edges lie between pixels: one that is drawn large enough is tried a little inside its edge.
      // One that is drawn smaller may reach further than it is drawn, and then has to do so in full.
      const half = (drawn: number, least: number) => least / 2 - (drawn > least - 0.1 ? 1.5 : 0.5);
      return elements.flatMap((element) => {
        const target = element.closest('label') ?? element;
        if (!target.checkVisibility({ visibilityProperty: true })) return [];
        target.scrollIntoView({ block: 'nearest', inline: 'nearest', behavior: 'instant' });
        const { left, top, width, height } = target.getBoundingClientRect();
        const isHit = (dx: number, dy: number): boolean => {
          const there = document.elementFromPoint(left + width / 2 + dx, top + height / 2 + dy);
          return there !== null && target.contains(there);
        };
        const [aside, up] = [half(width, across), half(height, down)];
        if (isHit(-aside, 0) && isHit(aside, 0) && isHit(0, -up) && isHit(0, up)) return [];
        return [
          `${element.getAttribute('aria-label') ?? target.textContent}: ${width.toFixed(0)} x ${height.toFixed(0)}`,
        ];
      });
    },
    [wide, high] as const,
  );

describe('the app on a tablet', () => {
  it('fits, is hit well by a finger, and hides its sheet until it is asked for', async () => {
    opened = await openSolved({ still: true, touch: true, width: 1024, height: 768 });
    const { page } = opened;
    expect(await tooWide(opened)).toEqual([]);
    expect(await clipped(opened)).toEqual([]);
    await opened.shot('tablet');
    const main = [
      page.getByRole('banner').getByRole('button'),
      page.getByRole('banner').getByRole('radio'),
      page.getByRole('navigation', { name: 'Chapters' }).getByRole('button'),
      page.getByRole('toolbar', { name: 'Camera' }).getByRole('button'),
      page.getByRole('button', { name: 'Magnify' }),
      page.getByRole('list', { name: 'What would help' }).getByRole('button'),
      page.getByRole('list', { name: 'What passes' }).getByRole('button'),
    ];
    const small: string[] = [];
    for (const controls of main) small.push(...(await smallTargets(controls)));
    for (const part of ['.gwb-controls button', '.gwb-switches button', '.gwb-switches input']) {
      small.push(...(await smallTargets(page.locator(part), fingerOnTransport)));
    }
    expect(small).toEqual([]);

    const sheet = page.getByRole('region', { name: 'Trial', exact: true });
    expect(await sheet.isVisible()).toBe(false);
    await page.getByRole('button', { name: 'Trial sheet' }).tap();
    await sheet.waitFor();
    expect(await smallTargets(sheet.getByRole('radio'))).toEqual([]);
    expect(await tooWide(opened)).toEqual([]);
    await opened.shot('tablet-sheet');
    await page.getByRole('button', { name: 'Trial sheet' }).tap();

    const { time, subject } = failing(await read(page));
    await page.getByRole('article').first().getByRole('heading').getByRole('button').tap();
    await until(page, { time, chosenJoint: subject });
    await page.getByRole('button', { name: 'Magnify' }).tap();
    await until(page, ({ stage }) => stage?.lens?.share === 1);
    expect(await smallTargets(page.getByRole('toolbar', { name: 'Magnifier' }).getByRole('button'))).toEqual([]);
    await opened.shot('tablet-lens');
    await page.getByRole('button', { name: 'Close' }).tap();
    await until(page, { lensOpen: false });
    expect(await graveViolations(page)).toEqual([]);
    expect(opened.complaints).toEqual([]);
  });
});

describe('the lettering on a narrow stage', () => {
  it.each([
    ['a phone', 390, 844],
    ['a tablet held upright', 820, 1180],
  ])('of %s lies clear of the controls and inside the window', async (name, width, height) => {
    opened = await openSolved({ still: true, touch: true, width, height });
    const { page } = opened;
    // On a phone the chapters and the band scroll aside, each within itself; the page does not.
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    const box = async (selector: string) => {
      const found = await page.locator(selector).first().boundingBox();
      if (!found) throw new Error(`There is no ${selector}.`);
      return { ...found, right: found.x + found.width, bottom: found.y + found.height };
    };
    const controls = await box('.stage-controls');
    for (const part of ['.stage-bar', '.stage-bar-line']) {
      const bar = await box(part);
      expect(bar.bottom < controls.y || bar.x > controls.right).toBe(true);
      expect(bar.right).toBeLessThan(width);
    }
    // The railway's own name is read in full.
    const railway = page.locator('.header .railway b');
    expect(await railway.evaluate((words) => words.scrollWidth - words.clientWidth)).toBeLessThanOrEqual(0);

    await page.getByRole('button', { name: 'Magnify' }).tap();
    await until(page, ({ stage }) => stage?.lens?.share === 1);
    const boxes = await page.locator('.stage-lens-box').evaluateAll((all) =>
      all.map((one) => {
        const { left, right } = one.getBoundingClientRect();
        return [left, right];
      }),
    );
    expect(boxes.length).toBeGreaterThanOrEqual(2);
    for (const [left, right] of boxes) {
      expect(left).toBeGreaterThanOrEqual(0);
      expect(right).toBeLessThanOrEqual(width);
    }
    const [back, on] = [await box('[aria-label="Back 5 milliseconds"]'), await box('[aria-label="On 5 milliseconds"]')];
    expect(Math.abs(back.y - on.y)).toBeLessThan(1);
    // Thousandths of a second end before the scrub begins.
    expect((await box('.gwb-now')).right).toBeLessThanOrEqual((await box('.gwb-scrub')).x);
    await opened.shot(`lens-on-${name.replaceAll(' ', '-')}`);
    expect(opened.complaints).toEqual([]);
  });
});

describe('the app at twice the size', () => {
  it('is one column that scrolls down and nowhere else', async () => {
    opened = await openSolved({ still: true, width: 640, height: 800 });
    const { page } = opened;
    expect(await tooWide(opened)).toEqual([]);
    expect(await clipped(opened)).toEqual([]);
    await opened.shot('narrow');
    // Nothing is left out: everything of the wide screen is further down, and the sheet where it is asked for.
    await page.getByRole('button', { name: 'Trial sheet' }).click();
    for (const place of [
      page.getByRole('region', { name: 'Trial', exact: true }),
      page.getByRole('main', { name: 'Stage' }),
      page.getByRole('region', { name: 'Section band' }),
      page.getByRole('complementary', { name: 'Findings' }),
    ]) {
      await place.scrollIntoViewIfNeeded();
      const box = await place.boundingBox();
      expect(box?.x).toBeGreaterThanOrEqual(0);
      expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(640);
    }
    const { time } = failing(await read(page));
    await page.getByRole('article').first().getByRole('heading').getByRole('button').click();
    await until(page, { time });
    await opened.shot('narrow-findings');
    expect(await tooWide(opened)).toEqual([]);
    expect(opened.complaints).toEqual([]);
  });
});
