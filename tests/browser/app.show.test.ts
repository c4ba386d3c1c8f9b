import { readFileSync, writeFileSync } from 'node:fs';
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
      // Without a dialog that no test can answer, files are downloaded.
      for (const name of ['showOpenFilePicker', 'showSaveFilePicker']) Reflect.deleteProperty(window, name);
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

/** Width and height of a PNG file by its first chunk. Source: PNG specification (W3C), 5.2 and 11.2.2. */
function pngSize(bytes: Buffer): readonly [number, number] {
  expect([...bytes.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  expect(bytes.toString('latin1', 12, 16)).toBe('IHDR');
  return [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
}

describe('a picture of the stage', () => {
  const saved = async (words: string) => {
    const { page } = opened;
    const button = page.getByRole('region', { name: 'A picture' }).getByRole('button', { name: words });
    const [download] = await Promise.all([page.waitForEvent('download'), hand.press(button)]);
    expect(download.suggestedFilename()).toBe('wren-gill-spiral.png');
    return readFileSync(await download.path());
  };

  it('is as large as the stage with a strip of words under it, or twice as large; the stage stays as it was', async () => {
    const { page } = opened;
    await page.keyboard.press('7');
    const canvas = () =>
      page
        .locator('.stage-picture canvas')
        .evaluate((one) => [(one as HTMLCanvasElement).width, (one as HTMLCanvasElement).height]);
    await page.getByRole('region', { name: 'A picture' }).waitFor();
    // The sheet is wider than the one before: the stage has become narrower, and its canvas follows.
    await page.waitForFunction(() => {
      const stage = document.querySelector('.stage-picture');
      return stage !== null && stage.querySelector('canvas')?.width === stage.clientWidth;
    });
    const [width, height] = await canvas();
    const once = await saved('As on the screen');
    const [wide, high] = pngSize(once);
    expect(wide).toBe(width);
    expect(high).toBeGreaterThan(height);
    expect(high).toBeLessThan(1.2 * height);
    const [twiceWide, twiceHigh] = pngSize(await saved('Twice as fine'));
    expect(twiceWide).toBe(2 * wide);
    expect(Math.abs(twiceHigh - 2 * high)).toBeLessThanOrEqual(1);
    expect(await canvas()).toEqual([width, height]);
    // The railway is on it, ink on paper: many colours, dark ones among them.
    const colours = await page.evaluate(async (base64) => {
      const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
      const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
      const context = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
      context.drawImage(image, 0, 0);
      // The picture alone, without its strip.
      const { data } = context.getImageData(0, 0, image.width, Math.floor(image.height * 0.85));
      const seen = new Set<number>();
      for (let i = 0; i < data.length; i += 4)
        seen.add((data[i] >> 4) * 256 + (data[i + 1] >> 4) * 16 + (data[i + 2] >> 4));
      return { count: seen.size, dark: [...seen].filter((one) => one < 0x500 && (one & 0xff) < 0x60).length };
    }, once.toString('base64'));
    expect(colours.count).toBeGreaterThan(20);
    expect(colours.dark).toBeGreaterThan(0);
    writeFileSync(new URL('shots/picture.png', import.meta.url), once);
  });
});

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
