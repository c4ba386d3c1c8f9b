import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from './chromium.ts';
import { type Opened, openApp } from './harness.ts';

const folder = mkdtempSync(join(tmpdir(), 'page-'));
let opened: Opened;

const page = `<!doctype html><meta charset="utf-8"><title>a page that misbehaves</title><link rel="icon" href="data:,">
<canvas></canvas>
<script type="module">
  const worker = new Worker(new URL('./worker.js', location.href), { type: 'module' });
  const told = new Promise((resolve) => worker.addEventListener('message', (event) => resolve(event.data)));
  console.error('a printed error');
  setTimeout(() => { throw new Error('an uncaught error'); });
  await fetch('http://nowhere.example/spy').catch(() => {});
  await fetch('./missing.json');
  const gl = document.querySelector('canvas').getContext('webgl2');
  globalThis.outcome = { worker: await told, webgl2: gl !== null };
</script>`;

beforeAll(async () => {
  writeFileSync(join(folder, 'index.html'), page);
  writeFileSync(
    join(folder, 'worker.js'),
    "await fetch('http://elsewhere.example/spy').catch(() => {}); postMessage('from the worker');",
  );
  opened = await openApp({ folder });
  await opened.page.waitForFunction(() => 'outcome' in globalThis);
});

afterAll(async () => {
  await opened?.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('what the browser tests stand on', () => {
  it('runs module workers and draws in three dimensions', async () => {
    const outcome = await opened.page.evaluate(() => (globalThis as unknown as { outcome: unknown }).outcome);
    expect(outcome).toEqual({ worker: 'from the worker', webgl2: true });
  });

  it('hears every complaint of a page', () => {
    expect(opened.complaints).toContain('error: a printed error');
    expect(opened.complaints).toContain('uncaught: an uncaught error');
    expect(opened.complaints).toContain(`404: ${opened.url}missing.json`);
  });

  it('sees and stops what leaves the machine, from the page and from its worker', () => {
    expect([...opened.foreign].sort()).toEqual(['http://elsewhere.example/spy', 'http://nowhere.example/spy']);
  });

  it('fails and says what to do without a browser or an app', async () => {
    expect(() => findChromium({ CHROMIUM: join(folder, 'none') })).toThrow('is not there');
    expect(() => findChromium({}, [join(folder, 'none')])).toThrow('apt-get install -y chromium');
    await expect(openApp({ folder: join(folder, 'none') })).rejects.toThrow('npm run build');
  });
});
