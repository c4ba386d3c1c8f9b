import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { graveViolations } from './axe.ts';
import type { Opened } from './harness.ts';
import { countWords, failing, openSolved, read, type Screen, until, untilSolved } from './screen.ts';

let opened: Opened;
let first: Screen;

beforeAll(async () => {
  opened = await openSolved();
  first = await read(opened.page);
});

afterAll(() => opened?.close());

describe('the app as it opens', () => {
  it('tells the verdict of the first scene without a press', async () => {
    const { page } = opened;
    const { risk, chainage, subject, margin } = failing(first);
    expect(risk).toBe('override');
    expect(await page.title()).toContain('Wren Gill Spiral');
    const ledger = page.getByRole('complementary', { name: 'Findings' });
    const heading = ledger.getByRole('heading', { level: 3 }).first();
    expect(await heading.textContent()).toMatch(
      new RegExp(`^Joint ${subject + 1} (rides|may ride) up at ${chainage.toFixed(2)}`),
    );
    const card = ledger.getByRole('article').first();
    expect(await card.textContent()).toContain(`−${(-margin * 1000).toFixed(1)}`);
    expect(await ledger.locator('[aria-live]').textContent()).toMatch(countWords(first));
  });

  it('runs the train down the line by itself', async () => {
    const { page } = opened;
    const start = first.stage?.firstVehicle;
    expect(first.stage?.vehicles).toBe(9);
    const later = await until(page, ({ stage }) => {
      const here = stage?.firstVehicle;
      return !!here && !!start && Math.hypot(here[0] - start[0], here[1] - start[1], here[2] - start[2]) > 0.002;
    });
    expect(later.playing).toBe(true);
    expect(later.time).toBeGreaterThan(first.time);
    await opened.shot('opens');
  });

  it('has nothing that keeps a person out, as far as axe-core sees', async () => {
    const { page } = opened;
    await page.keyboard.press('Space');
    await until(page, { playing: false });
    expect(await graveViolations(page)).toEqual([]);
  });

  it('complains of nothing and asks nothing of any other machine', () => {
    expect(opened.complaints).toEqual([]);
    expect(opened.foreign).toEqual([]);
  });
});

it('shows inches and per cent to an American, and from then on what they choose', async () => {
  const american = await openSolved({ locale: 'en-US', still: true });
  try {
    const { page } = american;
    expect(await read(page)).toMatchObject({ lengthUnit: 'in' });
    const grades = page.locator('.band-place').getByText(/%/);
    expect(await grades.count()).toBeGreaterThan(0);
    await page.locator('.header .segmented label', { hasText: /^mm$/ }).click();
    await until(page, { lengthUnit: 'mm' });
    await page.reload();
    await untilSolved(page);
    expect(await read(page)).toMatchObject({ lengthUnit: 'mm' });
    expect(await page.evaluate(() => window.gradewright?.session.gradeForm)).toBe('percent');
    expect(american.complaints).toEqual([]);
  } finally {
    await american.close();
  }
});
