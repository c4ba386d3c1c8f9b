import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { graveViolations } from './axe.ts';
import { Hand } from './hand.ts';
import type { Opened } from './harness.ts';
import { openSolved, patience, until, untilSolved } from './screen.ts';

let opened: Opened;
let hand: Hand;

beforeAll(async () => {
  opened = await openSolved({
    still: true,
    before: () => {
      // What the program hands to the browser to show is kept, to be looked at here.
      const made = URL.createObjectURL.bind(URL);
      URL.createObjectURL = (blob: Blob) => {
        if (blob.type === 'text/html') void blob.text().then((text) => Object.assign(window, { shownPage: text }));
        return made(blob);
      };
    },
  });
  hand = new Hand(opened.page);
});

afterAll(() => opened?.close());

describe('the page to pass on', () => {
  let html: string;

  it('is made beside the trial, and looked at', async () => {
    const { page } = opened;
    await page.keyboard.press('7');
    const part = page.getByRole('region', { name: 'A page to pass on' });
    await hand.press(part.getByText('With the greatest train of each engine'));
    await hand.press(part.getByRole('button', { name: 'Make the page' }));
    const look = part.getByRole('button', { name: 'Look at it' });
    await look.waitFor({ timeout: patience });
    expect(await graveViolations(page)).toEqual([]);
    await look.scrollIntoViewIfNeeded();
    await opened.shot('page-part');
    const [shown] = await Promise.all([page.context().waitForEvent('page'), hand.press(look)]);
    await page.waitForFunction(() => 'shownPage' in window);
    html = await page.evaluate(() => (window as unknown as { shownPage: string }).shownPage);
    await shown.close();
    expect(html).toContain('Of 4 ways of working');
  });

  it('fits a phone, a screen and the paper of both continents, and complains of nothing', async () => {
    const reader = await opened.browser.newPage();
    const heard: string[] = [];
    reader.on('console', (message) => heard.push(message.text()));
    reader.on('request', (request) => heard.push(request.url()));
    await reader.setContent(html);
    // Between margins of 14 mm, at 96 px an inch: A4 is 210 mm wide, Letter 8.5 in.
    for (const [media, width] of [
      ['screen', 360],
      ['screen', 1280],
      ['print', Math.floor(((210 - 28) / 25.4) * 96)],
      ['print', Math.floor((8.5 - 28 / 25.4) * 96)],
    ] as const) {
      await reader.emulateMedia({ media });
      await reader.setViewportSize({ width, height: 900 });
      const wide = await reader.evaluate(() => document.documentElement.scrollWidth);
      expect(wide, `${media} ${width}`).toBeLessThanOrEqual(width);
    }
    await reader.emulateMedia({ media: 'screen' });
    expect(await graveViolations(reader)).toEqual([]);
    expect(heard).toEqual([]);
    await reader.close();
  });

  it('opens the railway again when it is dropped on the program', async () => {
    const { page } = opened;
    const renamed = html.replace('"name": "Wren Gill Spiral"', '"name": "From the page"');
    expect(renamed).not.toBe(html);
    await page.evaluate((text) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([text], 'wren-gill-spiral.html'));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }));
    }, renamed);
    await until(page, { scene: 'From the page' });
    await untilSolved(page);
    expect(opened.complaints).toEqual([]);
  });
});
