import { afterEach, describe, expect, it } from 'vitest';
import { type Opened, openApp } from './harness.ts';
import {
  another,
  from,
  lengthIn,
  lengthMm,
  openRoute,
  ready,
  screen,
  typeLength,
  untilKept,
  versions,
} from './kept.ts';
import { patience } from './screen.ts';

let opened: Opened;
afterEach(() => opened?.close());

describe('keeping on this machine and in files', () => {
  it('writes a file through the handle that the browser gave, again into the same one, and after a reload still', async () => {
    opened = await openApp({
      ...screen,
      before: () => {
        // A headless browser has no dialog. The handle it would give is a real one, of the origin's own files.
        const asked: string[] = [];
        Object.assign(window, {
          askedToSave: asked,
          showSaveFilePicker: async ({ suggestedName = 'railway.json' }: { suggestedName?: string }) => {
            asked.push(suggestedName);
            const folder = await navigator.storage.getDirectory();
            return folder.getFileHandle(suggestedName, { create: true });
          },
        });
      },
    });
    const { page } = opened;
    page.setDefaultTimeout(patience);
    const asked = () => page.evaluate(() => (window as unknown as { askedToSave: string[] }).askedToSave);
    const written = (): Promise<Record<string, string>> =>
      page.evaluate(async () => {
        const files: Record<string, string> = {};
        const folder = await navigator.storage.getDirectory();
        for await (const [name, handle] of folder as unknown as AsyncIterable<[string, FileSystemFileHandle]>) {
          // What is being written lies in a file of the browser's own until it is whole.
          if (name.endsWith('.crswap')) continue;
          try {
            files[name] = await (await handle.getFile()).text();
          } catch {
            // It was put in the old one's place just now: the next look sees it.
          }
        }
        return files;
      });
    const untilWritten = async (mm: number) => {
      for (const end = Date.now() + patience; ; ) {
        const files = await written();
        const [text] = Object.values(files);
        if (text && JSON.parse(text).tracks[0].alignment[0].lengthMm === mm) return files;
        if (Date.now() > end) throw new Error(`No file with ${mm} mm was written: ${Object.keys(files)}`);
        await page.waitForTimeout(150);
      }
    };
    await openRoute(page);
    await typeLength(page, 411);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+s');
    const [name] = Object.keys(await untilWritten(411));
    expect(name).toBe('wren-gill-spiral.json');
    await page.getByTitle('The file that Save writes to').waitFor();

    // Shorter than before, so that nothing of the old text may be left behind its end.
    await typeLength(page, 4);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+s');
    await untilWritten(4);
    await untilKept(page);
    expect(await asked()).toEqual([name]);

    await page.reload();
    await openRoute(page);
    expect(await from(page)).toBe('machine');
    await page.getByTitle('The file that Save writes to').waitFor();
    await typeLength(page, 412);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+s');
    expect(Object.keys(await untilWritten(412))).toEqual([name]);
    expect(await asked()).toEqual([]);

    // The other way to save asks for a name, and leaves the first file as it was.
    await typeLength(page, 413);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+Shift+s');
    await page.waitForFunction(() => (window as unknown as { askedToSave: string[] }).askedToSave.length === 1);
    expect(opened.complaints).toEqual([]);
  });

  it('does not let two windows write over each other', async () => {
    opened = await openApp(screen);
    const { page: first, url } = opened;
    first.setDefaultTimeout(patience);
    await openRoute(first);
    await typeLength(first, 501);
    await untilKept(first);
    const second = await another(first.context(), url);
    await openRoute(second);
    expect(await from(second)).toBe('copy');
    await typeLength(second, 502);
    await untilKept(second);
    await typeLength(first, 503);
    await first.waitForTimeout(2000);
    const byId = new Map<string, number[]>();
    for (const kept of await versions(first)) byId.set(kept.id, [...(byId.get(kept.id) ?? []), lengthIn(kept)]);
    expect(byId.size).toBe(2);
    for (const lengths of byId.values()) expect(lengths.includes(502)).toBe(!lengths.includes(503));
    expect(await lengthMm(first)).toBe(503);
    expect(await lengthMm(second)).toBe(502);
  });

  it('loses at most the last second when the page dies', async () => {
    opened = await openApp(screen);
    const { page, url } = opened;
    page.setDefaultTimeout(patience);
    await openRoute(page);
    const context = page.context();
    await typeLength(page, 601);
    await page.waitForTimeout(1000);
    // Cut off in the middle of what is done next; what is a second old is there.
    await typeLength(page, 602);
    const died = page.waitForEvent('crash');
    const way = await context.newCDPSession(page);
    void way.send('Page.crash').catch(() => undefined);
    await died;
    const again = await another(context, url);
    await ready(again);
    expect(await from(again)).toBe('machine');
    expect([601, 602]).toContain(await lengthMm(again));
  });

  it('loses nothing when the page is closed at once after a change', async () => {
    opened = await openApp(screen);
    const { page, url } = opened;
    page.setDefaultTimeout(patience);
    await openRoute(page);
    const context = page.context();
    await typeLength(page, 611);
    await page.close({ runBeforeUnload: true });
    const again = await another(context, url);
    await ready(again);
    expect(await from(again)).toBe('machine');
    expect(await lengthMm(again)).toBe(611);
  });

  it('says when the machine is full, loses nothing, and keeps again when there is room', async () => {
    opened = await openApp({
      ...screen,
      before: () => {
        // A disk that is full can only be feigned: the browser's own override of the quota is not in force in a context of its own.
        const put = IDBObjectStore.prototype.put;
        IDBObjectStore.prototype.put = function (...what) {
          if (localStorage.getItem('full')) throw new DOMException('No room', 'QuotaExceededError');
          return put.apply(this, what);
        };
      },
    });
    const { page } = opened;
    page.setDefaultTimeout(patience);
    await openRoute(page);
    await typeLength(page, 701);
    await untilKept(page);
    const full = (is: boolean) =>
      page.evaluate((now) => (now ? localStorage.setItem('full', 'yes') : localStorage.removeItem('full')), is);
    await full(true);
    await typeLength(page, 702);
    const told = page.getByRole('alert').getByText('this machine is full: save it as a file');
    await told.waitFor();
    await opened.shot('machine-full');
    expect(await lengthMm(page)).toBe(702);
    expect((await versions(page)).map(lengthIn)).toEqual([701]);
    // What found no room in the database is there after a reload all the same.
    await page.reload();
    await openRoute(page);
    expect(await lengthMm(page)).toBe(702);
    await full(false);
    await typeLength(page, 703);
    await untilKept(page);
    await told.waitFor({ state: 'detached' });
    expect((await versions(page)).map(lengthIn)).toContain(703);
    expect(opened.complaints).toEqual([]);
  });
});
