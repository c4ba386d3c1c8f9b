import { appendFileSync, cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Opened } from './harness.ts';
import { openSolved, patience, untilSolved } from './screen.ts';

const built = fileURLToPath(new URL('../../dist/', import.meta.url));

let folder: string;
let opened: Opened | undefined;

beforeEach(() => {
  // A copy, so that a test may put a newer version in its place.
  folder = mkdtempSync(join(tmpdir(), 'gradewright-offline-'));
  cpSync(built, folder, { recursive: true });
});

afterEach(async () => {
  await opened?.close();
  opened = undefined;
  rmSync(folder, { recursive: true });
});

/** Opens the copy and waits until the program is kept on this machine. */
async function openKept(): Promise<Opened> {
  const now = await openSolved({ folder, still: true });
  await now.page.waitForFunction(() => navigator.serviceWorker.controller !== null, null, { timeout: patience });
  return now;
}

describe('the program after its first visit', () => {
  it('opens and solves without a network', async () => {
    opened = await openKept();
    const { page } = opened;
    await page.context().setOffline(true);
    await page.reload();
    const { findings } = await untilSolved(page);
    expect(findings?.length).toBeGreaterThan(0);
    // The network is not asked either: whatever is not kept would have failed loudly.
    expect(opened.complaints).toEqual([]);
  });

  it('keeps a newer version waiting until the person agrees', async () => {
    opened = await openKept();
    const { page } = opened;
    appendFileSync(join(folder, 'serviceWorker.js'), '\n// A newer version.\n');
    const reload = page.getByRole('status').getByRole('button', { name: 'Reload' });
    expect(await reload.count()).toBe(0);
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      await registration?.update();
    });
    await reload.waitFor();
    const before = await page.evaluate(() => performance.timeOrigin);
    await reload.click();
    await page.waitForFunction((then) => performance.timeOrigin > then, before, { timeout: patience });
    await untilSolved(page);
    expect(await reload.count()).toBe(0);
    expect(opened.complaints).toEqual([]);
  });
});
