import { execFile } from 'node:child_process';
import { EventEmitter } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { commandLine } from '../../src/cli/commandLine.ts';
import { workersOf } from '../../src/cli/studies/studyWorkers.ts';
import type { SweepReport } from '../../src/cli/studies/sweepReport.ts';
import { type ProbePool, probeScene } from '../../src/sim/study/index.ts';
import { sample } from '../scene/sample.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'gradewright-'));
afterAll(() => rmSync(folder, { recursive: true }));
const file = join(folder, 'sample.json');
writeFileSync(file, JSON.stringify(sample));

const height = 'tracks/line/profile/3/heightMm';

const inAProcess = (...args: string[]): Promise<string> =>
  new Promise((resolve, reject) => {
    execFile(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', ...args], { cwd: root }, (_error, out, err) => {
      if (err === '') resolve(out);
      else reject(new Error(err));
    });
  });

describe('studies in several threads', { timeout: 240_000 }, () => {
  it('come out the same to the last digit as in one', async () => {
    const ask = ['sweep', file, '--vary', `${height}=80..400`, '--points', '3', '--edge', '40', '--json'];
    const one = await inAProcess(...ask, '--workers', '0');
    expect(await inAProcess(...ask, '--workers', '2')).toBe(one);
    expect((JSON.parse(one) as SweepReport).points.length).toBeGreaterThan(2);
  });

  it.each(['two', '1.5', '-1', ''])('refuses --workers "%s"', (text) => {
    expect(() => workersOf(text)).toThrow(/whole number/);
  });
});

describe('Ctrl-C', () => {
  it('ends a study with what is done, says so, and lets the pool and the signal go', async () => {
    const interrupts = new EventEmitter();
    let probes = 0;
    let disposed = 0;
    const workers = (): ProbePool => ({
      width: 1,
      probe: async (request) => {
        if (++probes === 2) interrupts.emit('SIGINT');
        return probeScene(request);
      },
      glance: () => Promise.reject(new Error('not asked for')),
      runTrial: () => Promise.reject(new Error('not asked for')),
      dispose: () => disposed++,
    });
    const said: string[] = [];
    const errors: string[] = [];
    const ask = ['sweep', file, '--vary', `${height}=80..400`, '--points', '5', '--quick', '--json'];
    await commandLine(ask, {
      out: { write: (text) => said.push(text) },
      err: { isTTY: false, write: (text) => errors.push(text) > 0 },
      workers,
      interrupts: interrupts as unknown as Pick<NodeJS.Process, 'once' | 'off'>,
    });
    const report = JSON.parse(said.join('')) as SweepReport;
    expect(report.whole).toBe(false);
    expect(report.points).toHaveLength(2);
    expect(errors.join('')).toContain('once more ends the program');
    expect(disposed).toBe(1);
    expect(interrupts.listenerCount('SIGINT')).toBe(0);
  });
});
