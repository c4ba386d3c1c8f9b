import type { BrowserContext, Page } from 'playwright-core';
import { patience } from './screen.ts';

/** What was kept of a railway, as it lies in the browser's database. */
export interface Kept {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  readonly at: number;
}

/** Low, so that the stage, which nothing here looks at, costs little to draw. */
export const screen = { still: true, width: 1280, height: 420 } as const;

/** Waits until the page has a railway open and its trial solved. */
export const ready = (page: Page) =>
  page.waitForFunction(
    () => {
      const now = window.gradewright?.session;
      return now?.result && now.compiled?.scene === now.scene && now.progress === null;
    },
    null,
    { timeout: patience },
  );

/** Length of the first element of the first track, mm, as the page has it. */
export const lengthMm = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const first = window.gradewright?.session.scene?.tracks[0].alignment[0];
    return first?.kind === 'straight' ? first.lengthMm : Number.NaN;
  });

export const from = (page: Page) => page.evaluate(() => window.gradewright?.session.opened?.from);

/** Types a length for the first element. */
export async function typeLength(page: Page, mm: number): Promise<void> {
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
export async function openRoute(page: Page): Promise<void> {
  await ready(page);
  await page.keyboard.press('1');
  await page.locator('[data-element="0"]').waitFor({ timeout: patience });
}

export const untilKept = (page: Page) =>
  page.waitForFunction(() => window.gradewright?.session.savedAt != null, null, { timeout: patience });

/** All versions of all railways in the database, the oldest first. */
export const versions = (page: Page): Promise<Kept[]> =>
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

export const lengthIn = ({ text }: Kept): number => JSON.parse(text).tracks[0].alignment[0].lengthMm;

/** A new window on the same machine. */
export async function another(context: BrowserContext, url: string): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(patience);
  await page.goto(url);
  return page;
}
