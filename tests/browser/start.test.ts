import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readScene } from '../../src/cli/readScene.ts';
import { runTrials } from '../../src/cli/trial/trial.ts';

const house = fileURLToPath(new URL('../../', import.meta.url));

/** Runs what `npm start` runs; `whenReady` is called once with the address, when everything has been printed. */
function start(environment: NodeJS.ProcessEnv, whenReady?: (address: string, stop: () => void) => void) {
  return new Promise<{ code: number | null; output: string; errors: string }>((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli/start.ts'], {
      cwd: house,
      env: { ...process.env, ...environment },
    });
    let output = '';
    let errors = '';
    let told = false;
    child.stdout.setEncoding('utf8').on('data', (piece: string) => {
      output += piece;
      const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(output)?.[0];
      if (told || !address || !output.includes('Ctrl+C')) return;
      told = true;
      whenReady?.(address, () => child.kill('SIGTERM'));
    });
    child.stderr.setEncoding('utf8').on('data', (piece: string) => {
      errors += piece;
    });
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, output, errors }));
  });
}

describe('npm start', () => {
  it('serves the built app until it is told to end', async () => {
    let page = '';
    const { code } = await start({ PORT: '0' }, (address, stop) => {
      fetch(address)
        .then(async (response) => {
          page = await response.text();
        })
        .finally(stop);
    });
    expect(page).toContain('<script type="module"');
    expect(code).toBe(0);
  });

  it('prints the address and what the command line says of the first scene', async () => {
    const { code, output, errors } = await start({ PORT: '0', GRADEWRIGHT_ONCE: '1' });
    const { report } = await runTrials(readScene(`${house}scenes/01-wren-gill.json`), {});
    expect(errors).toBe('');
    expect(output).toMatch(/Gradewright is at http:\/\/127\.0\.0\.1:\d+\//);
    expect(output).toContain(`${report.scene}: ${report.verdict}\n`);
    expect(report.trials.length).toBeGreaterThan(1);
    for (const { name, verdict, findings } of report.trials) {
      expect(output).toContain(`${verdict.padEnd(6)}  ${name}: ${findings[0]?.headline}\n`);
    }
    expect(code).toBe(0);
  });

  it('says what a port is', async () => {
    const { code, errors } = await start({ PORT: 'front', GRADEWRIGHT_ONCE: '1' });
    expect(code).toBe(1);
    expect(errors).toBe(
      'PORT is "front"; a port is a whole number from 0 to 65535, for example PORT=8080 (0: any free one).\n',
    );
  });
});
