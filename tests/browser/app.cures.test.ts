import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { applyCure } from '../../src/sim/index.ts';
import { bundledScene } from '../scene/sample.ts';
import { solve } from '../sim/solved.ts';
import type { Opened } from './harness.ts';
import { countWords, failing, openSolved, read, type Screen, until, untilSolved } from './screen.ts';

const scene = bundledScene('01-wren-gill.json');

let opened: Opened;
let first: Screen;

beforeAll(async () => {
  opened = await openSolved({ still: true });
  first = await read(opened.page);
});

afterAll(() => opened?.close());

/** The first cure of the first finding, and what its button says. */
const chip = () => opened.page.getByRole('list', { name: 'What would help' }).first().getByRole('listitem').first();
const act = () => chip().getByRole('button').first();
const verdicts = () => opened.page.getByRole('complementary', { name: 'Findings' }).locator('[aria-live]');
const override = ({ findings }: Screen) => findings?.find(({ risk }) => risk === 'override');
/** A margin that a cure leads to, as its button says it. */
const gained = (margin: number | null | undefined): string => `+${((margin ?? Number.NaN) * 1000).toFixed(1)}\u2009mm`;

describe('a cure', () => {
  it('is tried beside what is: its margin is told and nothing is changed yet', async () => {
    const { page } = opened;
    expect(await act().textContent()).toContain('Set both heads of joint 6 to one height');
    await act().click();
    const { ghost, ...rest } = await until(page, (now) => now.ghost !== null);
    expect(ghost).toMatchObject({ finding: 0, cure: 0 });
    expect(ghost?.margin).toBeGreaterThan(0);
    expect(await act().textContent()).toContain(gained(ghost?.margin));
    expect(await act().textContent()).toContain('Keep');
    expect(rest.findings).toEqual(first.findings);
    expect(
      await page.evaluate(() => window.gradewright!.session.scene === window.gradewright!.session.compiled?.scene),
    ).toBe(true);
    await opened.shot('cure-tried');
  });

  it('comes to what the solver says of the scene with that cure', async () => {
    const cured = applyCure(scene, 'propelled-down', { kind: 'match-heads', joint: failing(first).subject });
    const { worst } = await solve(cured!, 'propelled-down');
    expect((await read(opened.page)).ghost?.margin).toBe(worst('override').margin);
  });

  it('is dropped with Escape', async () => {
    const { page } = opened;
    await page.keyboard.press('Escape');
    const now = await until(page, { ghost: null });
    expect(now.findings).toEqual(first.findings);
    expect(await act().textContent()).toContain('Try');
  });

  it('is kept, and the verdict is another', async () => {
    const { page } = opened;
    await act().click();
    const { ghost } = await until(page, (now) => now.ghost !== null);
    await act().click();
    const kept = await until(page, (now) => now.ghost === null);
    expect(kept.findings?.some(({ verdict }) => verdict === 'fails')).toBe(false);
    expect(override(kept)?.verdict).toBe('passes');
    expect(override(kept)?.margin).toBe(ghost?.margin);
    expect(await verdicts().textContent()).toMatch(countWords(kept));
    expect(await verdicts().textContent()).not.toMatch(/fail/);
    await opened.shot('cure-kept');
  });

  it('is undone and done again, by button and by key', async () => {
    const { page } = opened;
    await page
      .getByRole('banner')
      .getByRole('button', { name: 'Undo set both heads of joint 6 to one height' })
      .click();
    const undone = await until(page, (now) => override(now)?.verdict === 'fails');
    expect(undone.findings).toEqual(first.findings);
    expect(await verdicts().textContent()).toMatch(countWords(first));
    await page.keyboard.press('Control+Shift+z');
    await until(page, (now) => override(now)?.verdict === 'passes');
    await page.keyboard.press('Control+z');
    await until(page, (now) => override(now)?.verdict === 'fails');
    await page.keyboard.press('Control+Shift+z');
    await until(page, (now) => override(now)?.verdict === 'passes');
  });

  it('is still there after the page was closed and opened again', async () => {
    const { page } = opened;
    const before = await read(page);
    // Kept on this machine a moment after the last change.
    await page.waitForFunction(() => window.gradewright!.session.savedAt !== null);
    await page.reload();
    await page.waitForFunction(() => window.gradewright?.session.result && window.__stage);
    const again = await untilSolved(page, 'propelled-down');
    expect(again.findings).toEqual(before.findings);
    await page.getByRole('banner').getByText('as you left it').or(page.getByText('trying cures')).waitFor();
  });

  it('was shown without a complaint', () => {
    expect(opened.complaints).toEqual([]);
  });
});
