import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, serveFolder } from '../../src/cli/serve.ts';

const above = mkdtempSync(join(tmpdir(), 'serve-'));
const root = join(above, 'site');
let site: Served;

beforeAll(async () => {
  mkdirSync(join(root, 'assets'), { recursive: true });
  writeFileSync(join(above, 'secret.txt'), 'secret');
  mkdirSync(join(above, 'site-of-others'));
  writeFileSync(join(above, 'site-of-others', 'secret.txt'), 'secret');
  writeFileSync(join(root, 'index.html'), '<!doctype html><title>home</title>');
  writeFileSync(join(root, 'assets', 'a b.js'), 'export const a = 1;');
  writeFileSync(join(root, 'assets', 'worker.mjs'), '');
  writeFileSync(join(root, 'data.gradewright'), 'x');
  writeFileSync(join(root, '.hidden'), 'secret');
  symlinkSync(join(above, 'secret.txt'), join(root, 'link.txt'));
  site = await serveFolder(root);
});

afterAll(async () => {
  await site.close();
  rmSync(above, { recursive: true, force: true });
});

/** As typed on the wire: `fetch` would tidy the dots away before asking. */
function ask(path: string, method = 'GET'): Promise<{ status: number; type: string; body: string }> {
  return new Promise((resolve, reject) => {
    request({ host: '127.0.0.1', port: site.port, path, method }, (response) => {
      let body = '';
      response.setEncoding('utf8');
      response.on('data', (piece: string) => {
        body += piece;
      });
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, type: response.headers['content-type'] ?? '', body }),
      );
    })
      .on('error', reject)
      .end();
  });
}

describe('the server of the built app', () => {
  it('serves files by their kind', async () => {
    expect(await ask('/')).toEqual({
      status: 200,
      type: 'text/html; charset=utf-8',
      body: '<!doctype html><title>home</title>',
    });
    expect(await ask('/assets/a%20b.js?v=1')).toMatchObject({ status: 200, type: 'text/javascript; charset=utf-8' });
    // A browser runs a module worker only from a script type.
    expect(await ask('/assets/worker.mjs')).toMatchObject({ status: 200, type: 'text/javascript; charset=utf-8' });
    expect(await ask('/data.gradewright')).toMatchObject({ status: 200, type: 'application/octet-stream' });
    expect(await ask('/', 'HEAD')).toMatchObject({ status: 200, body: '' });
  });

  it.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/..\\secret.txt',
    '/../site-of-others/secret.txt',
    '/link.txt',
    '/.hidden',
    '/assets',
    '/none.js',
    '/%',
    '/%00',
    '//secret.txt',
    'http://127.0.0.1/index.html',
  ])('has nothing at %s', async (path) => {
    const { status, body } = await ask(path);
    expect(status).toBe(404);
    expect(body).not.toContain('secret');
  });

  it('does not take writing', async () => {
    expect(await ask('/index.html', 'PUT')).toMatchObject({ status: 405 });
    expect(await ask('/index.html', 'DELETE')).toMatchObject({ status: 405 });
  });

  it('takes the next port when the one asked for is taken', async () => {
    const second = await serveFolder(root, { port: site.port });
    try {
      expect(second.port).toBeGreaterThan(site.port);
      expect((await fetch(second.url)).status).toBe(200);
    } finally {
      await second.close();
    }
  });

  it('is for this machine only', () => {
    expect(site.url).toBe(`http://127.0.0.1:${site.port}/`);
  });

  it('says so when the folder is missing', async () => {
    await expect(serveFolder(join(above, 'none'))).rejects.toThrow('ENOENT');
  });
});
