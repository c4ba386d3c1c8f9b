import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { isStale } from '../../src/cli/appBuild.ts';

const house = mkdtempSync(join(tmpdir(), 'built-'));
afterAll(() => rmSync(house, { recursive: true, force: true }));

const write = (path: string, seconds: number) => {
  const file = join(house, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, '');
  utimesSync(file, seconds, seconds);
};

describe('the built app', () => {
  it('is stale until it is newer than all it is made from', () => {
    write('src/app/deep/main.tsx', 1000);
    write('index.html', 1000);
    expect(isStale(house)).toBe(true);
    write('dist/index.html', 2000);
    expect(isStale(house)).toBe(false);
    write('tests/x.test.ts', 3000);
    expect(isStale(house)).toBe(false);
    write('src/app/deep/main.tsx', 3000);
    expect(isStale(house)).toBe(true);
    write('dist/index.html', 4000);
    expect(isStale(house)).toBe(false);
    write('scenes/new.json', 5000);
    expect(isStale(house)).toBe(true);
  });
});
