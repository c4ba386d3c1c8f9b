import { afterEach, describe, expect, it } from 'vitest';
import { serialiseScene } from '../../src/scene/index.ts';
import { bundledScene } from '../scene/sample.ts';
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

let opened: Opened;
afterEach(() => opened?.close());

describe('a newer version on the same machine', () => {
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
});
