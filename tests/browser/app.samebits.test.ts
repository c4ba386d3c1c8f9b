import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { trialEntry } from '../../src/cli/trial/trialEntry.ts';
import type { TrialReport } from '../../src/cli/trial/trialReport.ts';
import type { Scene } from '../../src/scene/index.ts';
import { compileScene, compileTrial, type TrialResult } from '../../src/sim/index.ts';
import { bundledPath } from '../scene/sample.ts';
import { solve } from '../sim/solved.ts';
import type { Opened } from './harness.ts';
import { countWords, failing, openSolved, read, type Screen, until, untilSolved } from './screen.ts';

const house = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'scenes-'));
let opened: Opened;

beforeAll(async () => {
  opened = await openSolved({ still: true });
});

afterAll(async () => {
  await opened?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** What the command line reports of one trial of a scene file, read back from its JSON. */
function commandLine(file: string, trial: string): Promise<TrialReport['trials'][number]> {
  return new Promise((resolve, reject) => {
    const child = spawn('npm', ['run', '--silent', 'gradewright', '--', 'trial', file, '--trial', trial, '--json'], {
      cwd: house,
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    let text = '';
    child.stdout.setEncoding('utf8').on('data', (piece: string) => {
      text += piece;
    });
    child.on('error', reject);
    child.on('close', () => {
      try {
        resolve((JSON.parse(text) as TrialReport).trials[0]);
      } catch (cause) {
        reject(new Error(`The command line gave no report but: ${text}`, { cause }));
      }
    });
  });
}

/** The scene and the solved trial that the page shows, as its own worker gave it: typed arrays keep every bit on the way. */
const shown = (): Promise<{ readonly scene: Scene; readonly result: TrialResult }> =>
  opened.page.evaluate(() => {
    const { compiled, result } = window.gradewright!.session;
    return { scene: compiled!.scene, result: result! };
  });

/** The places in which two results differ in any bit. NaN is NaN, whatever its spare bits; 0 is not -0. */
function differences(ours: unknown, theirs: unknown, at = 'result'): string[] {
  if (ArrayBuffer.isView(ours) && ArrayBuffer.isView(theirs)) {
    const [a, b] = [ours as Float64Array, theirs as Float64Array];
    if (a.constructor !== b.constructor || a.length !== b.length)
      return [`${at}: another kind of array, or another length`];
    const where = a.findIndex((value, i) => !Object.is(value, b[i]));
    return where < 0 ? [] : [`${at}[${where}]: ${a[where]} and ${b[where]}`];
  }
  if (typeof ours === 'object' && ours !== null && typeof theirs === 'object' && theirs !== null) {
    const keys = new Set([...Object.keys(ours), ...Object.keys(theirs)]);
    return [...keys].flatMap((key) => {
      return differences(
        (ours as Record<string, unknown>)[key],
        (theirs as Record<string, unknown>)[key],
        `${at}.${key}`,
      );
    });
  }
  return Object.is(ours, theirs) ? [] : [`${at}: ${String(ours)} and ${String(theirs)}`];
}

/** Finds every number of the trial on show, to its last bit, in what the solver gives outside the browser. */
async function expectSameRun(trialId: string): Promise<void> {
  const { scene, result } = await shown();
  expect(result.trialId).toBe(trialId);
  const { trial: _trial, worst: _worst, leastAtJoint: _least, failing: _failing, ...own } = await solve(scene, trialId);
  expect(own.run.frames).toBeGreaterThan(1000);
  expect(differences(result, own)).toEqual([]);
}

/** Finds the report on the trial on show, to its last digit, in what the command line writes of the scene; of a file or as it is. */
async function expectSameReport(trialId: string, file?: string): Promise<void> {
  const { scene, result } = await shown();
  const path = file ?? join(folder, `${trialId}.json`);
  if (!file) writeFileSync(path, JSON.stringify(scene));
  const reported = await commandLine(path, trialId);
  expect(trialEntry(compileTrial(compileScene(scene), trialId), result)).toEqual(reported);
}

const verdicts = () => opened.page.getByRole('complementary', { name: 'Findings' }).locator('[aria-live]');

const told = async (now: Screen): Promise<void> => {
  expect(await verdicts().textContent()).toMatch(countWords(now));
};

describe('what the page works out', () => {
  it('is to the bit what the command line works out', async () => {
    expect(failing(await read(opened.page)).risk).toBe('override');
    await expectSameRun('propelled-down');
    await expectSameReport('propelled-down', bundledPath('01-wren-gill.json'));
  });

  it('is another verdict when the train is pulled, and still the same bits', async () => {
    const { page } = opened;
    await page.getByRole('region', { name: 'Trial' }).getByRole('radio', { name: 'Pulled' }).click();
    const now = await untilSolved(page, 'pulled-down');
    expect(now.findings?.some(({ verdict }) => verdict === 'fails')).toBe(false);
    expect(now.findings?.find(({ risk }) => risk === 'override')?.verdict).toBe('passes');
    await told(now);
    await expectSameRun('pulled-down');
  });

  it('follows to another railway of the chooser, and to a trial that its file does not have', async () => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Other railways…' }).click();
    const chooser = page.getByRole('dialog', { name: 'Railways and their trials' });
    await chooser.getByText('Kestrel Sidings').click();
    await opened.shot('chooser');
    await chooser.getByRole('button', { name: 'Coaches propelled: set-track curves, 438 mm' }).click();
    const propelled = await untilSolved(page, 'set-track-propelled');
    expect(propelled.scene).toBe('Kestrel Sidings');
    expect(propelled.findings?.find(({ risk }) => risk === 'buffer-lock')?.verdict).toBe('fails');
    await told(propelled);
    await page.getByRole('region', { name: 'Trial' }).getByRole('radio', { name: 'Pulled' }).click();
    const pulled = await until(page, ({ trialId, findings }) => trialId !== propelled.trialId && findings !== null);
    await told(pulled);
    expect(pulled.findings).not.toEqual(propelled.findings);
    await opened.shot('another-railway');
    await expectSameRun(pulled.trialId!);
    await expectSameReport(pulled.trialId!);
  });

  it('was shown without a complaint', () => {
    expect(opened.complaints).toEqual([]);
  });
});
