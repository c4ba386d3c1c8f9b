import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { serialiseScene } from '../../src/scene/index.ts';
import { bundledScene } from '../scene/sample.ts';
import { type Opened, openApp } from './harness.ts';
import { patience } from './screen.ts';

/** What was kept of a railway, as it lies in the browser's database. */
interface Kept {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  readonly at: number;
}

/** Low, so that the stage, which nothing here looks at, costs little to draw. */
const screen = { still: true, width: 1280, height: 420 } as const;

let opened: Opened;
afterEach(() => opened?.close());

/** Waits until the page has a railway open and its trial solved. */
const ready = (page: Page) =>
  page.waitForFunction(
    () => {
      const now = window.gradewright?.session;
      return now?.result && now.compiled?.scene === now.scene && now.progress === null;
    },
    null,
    { timeout: patience },
  );

/** Length of the first element of the first track, mm, as the page has it. */
const lengthMm = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const first = window.gradewright?.session.scene?.tracks[0].alignment[0];
    return first?.kind === 'straight' ? first.lengthMm : Number.NaN;
  });

const from = (page: Page) => page.evaluate(() => window.gradewright?.session.opened?.from);

/** Types a length for the first element. */
async function typeLength(page: Page, mm: number): Promise<void> {
  const field = page.locator('[data-element="0"] input[type="text"]').first();
  await field.focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.type(`${mm}mm`);
  await page.keyboard.press('Enter');
  await page.waitForFunction(
    (wanted) => {
      const first = window.gradewright?.session.scene?.tracks[0].alignment[0];
      return first?.kind === 'straight' && first.lengthMm === wanted;
    },
    mm,
    { timeout: patience },
  );
}

/** Opens the page of the sheet that has every number of the route. */
async function openRoute(page: Page): Promise<void> {
  await ready(page);
  await page.keyboard.press('1');
  await page.locator('[data-element="0"]').waitFor({ timeout: patience });
}

const untilKept = (page: Page) =>
  page.waitForFunction(() => window.gradewright?.session.savedAt != null, null, { timeout: patience });

/** All versions of all railways in the database, the oldest first. */
const versions = (page: Page): Promise<Kept[]> =>
  page.evaluate(
    () =>
      new Promise<Kept[]>((resolve, reject) => {
        const asked = indexedDB.open('gradewright');
        asked.onerror = () => reject(asked.error);
        asked.onsuccess = () => {
          const all = asked.result.transaction('versions').objectStore('versions').getAll();
          all.onerror = () => reject(all.error);
          all.onsuccess = () => {
            asked.result.close();
            resolve((all.result as Kept[]).sort((a, b) => a.at - b.at));
          };
        };
      }),
  );

const lengthIn = ({ text }: Kept): number => JSON.parse(text).tracks[0].alignment[0].lengthMm;

/** A new window on the same machine. */
async function another(context: BrowserContext, url: string): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(patience);
  await page.goto(url);
  return page;
}

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

  it('takes over the database of the version before', async () => {
    opened = await openApp({ ...screen, path: 'mark.svg' });
    const { page, url } = opened;
    const scene = structuredClone(bundledScene('01-wren-gill.json'));
    (scene.tracks[0].alignment[0] as { lengthMm: number }).lengthMm = 433;
    const old = { id: 'a-line', name: 'Moss Gill', trialId: 'propelled-down', at: 1000 };
    await page.evaluate(
      (kept) =>
        new Promise<void>((resolve, reject) => {
          const asked = indexedDB.open('gradewright', 1);
          asked.onerror = () => reject(asked.error);
          asked.onupgradeneeded = () => asked.result.createObjectStore('versions', { keyPath: ['id', 'at'] });
          asked.onsuccess = () => {
            const work = asked.result.transaction('versions', 'readwrite');
            for (const one of kept) work.objectStore('versions').put(one);
            work.onerror = () => reject(work.error);
            work.oncomplete = () => {
              asked.result.close();
              localStorage.setItem('gradewright.last', kept[1].id);
              resolve();
            };
          };
        }),
      [
        { ...old, text: serialiseScene({ ...bundledScene('01-wren-gill.json'), name: 'Moss Gill' }) },
        { ...old, at: 2000, text: serialiseScene({ ...scene, name: 'Moss Gill' }) },
      ],
    );
    await page.goto(url);
    await ready(page);
    expect(await from(page)).toBe('machine');
    expect(await lengthMm(page)).toBe(433);
    const kept = await versions(page);
    expect(kept.map(({ at }) => at)).toEqual([1000, 2000]);
    const stores = await page.evaluate(
      () =>
        new Promise<string[]>((resolve) => {
          const asked = indexedDB.open('gradewright');
          asked.onsuccess = () => {
            resolve([...asked.result.objectStoreNames]);
            asked.result.close();
          };
        }),
    );
    expect(stores).toEqual(['files', 'versions']);
    expect(opened.complaints).toEqual([]);
  });

  it('opens while a window with the version before holds the database, says so, and takes it in when that is closed', async () => {
    opened = await openApp({ ...screen, path: 'mark.svg' });
    const { page: old, url } = opened;
    // As the version before held it: deaf to who asks for a newer one.
    await old.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const asked = indexedDB.open('gradewright', 1);
          asked.onupgradeneeded = () => asked.result.createObjectStore('versions', { keyPath: ['id', 'at'] });
          asked.onsuccess = () => {
            Object.assign(window, { held: asked.result });
            resolve();
          };
        }),
    );
    const page = await another(old.context(), url);
    await openRoute(page);
    await typeLength(page, 421);
    await page.getByText('close the window with another version of Gradewright').waitFor();
    await old.close();
    await typeLength(page, 422);
    await untilKept(page);
    expect((await versions(page)).map(lengthIn)).toContain(422);
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
