import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { cruiseSource } from './cruise.ts';

const house = fileURLToPath(new URL('../../', import.meta.url));
const made: string[] = [];

/** A small house in a folder of its own, so that a rule can be seen to bite. */
function houseOf(files: Readonly<Record<string, string>>): string {
  const root = mkdtempSync(join(tmpdir(), 'house-'));
  made.push(root);
  const packages = Object.fromEntries(
    ['three', 'zod', '@react-three/fiber', 'cannon-es'].flatMap((name) => [
      [`node_modules/${name}/package.json`, JSON.stringify({ name, version: '1.0.0', main: 'index.js' })],
      [`node_modules/${name}/index.js`, 'module.exports = {};'],
    ]),
  );
  const manifest = {
    name: 'small',
    dependencies: { three: '1', zod: '1', '@react-three/fiber': '1', 'cannon-es': '1' },
  };
  for (const [path, text] of Object.entries({ 'package.json': JSON.stringify(manifest), ...packages, ...files })) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  return root;
}

afterAll(() => {
  for (const root of made) rmSync(root, { recursive: true, force: true });
});

/** One room that offers something, one file that takes it. */
async function rulesBrokenBy(from: string, statement: string, others: Readonly<Record<string, string>> = {}) {
  const { violations, unread } = await cruiseSource(houseOf({ [from]: `${statement}\n`, ...others }), house);
  expect(unread).toEqual([]);
  return [...new Set(violations.map((violation) => violation.rule))].sort();
}

const thing = 'export const a = 1;\nexport interface A { b: number }\n';

describe('the rules for imports bite', () => {
  it.each([
    ['src/core/x.ts', 'scene', 'core-is-pure'],
    ['src/scene/x.ts', 'sim', 'scene'],
    ['src/sim/x.ts', 'state', 'sim'],
    ['src/export/x.ts', 'ui', 'export'],
    ['src/cli/x.ts', 'state', 'cli'],
    ['src/state/x.ts', 'ui', 'state'],
    ['src/state/x.ts', 'app', 'state'],
    ['src/tools/x.ts', 'stage', 'tools'],
    ['src/stage/x.ts', 'ui', 'stage'],
    ['src/ui/x.ts', 'stage', 'ui'],
    ['src/ui/x.ts', 'cli', 'ui'],
    ['src/platform/x.ts', 'core', 'platform'],
  ])('%s may not import from %s', async (from, room, rule) => {
    const others = { [`src/${room}/y.ts`]: thing };
    expect(await rulesBrokenBy(from, `import { a } from '../${room}/y.ts';\nconsole.log(a);`, others)).toEqual([rule]);
    expect(await rulesBrokenBy(from, `import type { A } from '../${room}/y.ts';\nexport type B = A;`, others)).toEqual([
      rule,
    ]);
  });

  it.each([
    ['src/core/x.ts', "import 'zod';", ['core-is-pure']],
    ['src/core/x.ts', "import 'node:fs';", ['core-is-pure']],
    ['src/sim/x.ts', "import 'node:fs';", ['sim-runs-anywhere']],
    ['src/ui/x.tsx', "import 'three';", ['three-only-on-stage']],
    ['src/app/x.tsx', "import '@react-three/fiber';", ['three-only-on-stage']],
    ['src/stage/x.tsx', "import 'cannon-es';", ['rigid-body-engine-only-in-spill']],
    ['src/app/x.ts', "import './gone.ts';", ['every-import-leads-somewhere']],
    ['src/app/x.ts', "await import('../core/gone.ts');", ['every-import-leads-somewhere']],
    ['src/app/x.ts', "import 'nobody-has-this';", ['every-import-leads-somewhere']],
  ])('%s may not say %s', async (from, statement, rules) => {
    expect(await rulesBrokenBy(from, statement)).toEqual(rules);
  });

  it('finds circles and product code that leans on tests', async () => {
    const circle = { 'src/app/y.ts': "import './x.ts';" };
    expect(await rulesBrokenBy('src/app/x.ts', "import './y.ts';", circle)).toEqual(['no-circles']);
    const test = { 'tests/y.ts': thing };
    expect(await rulesBrokenBy('src/app/x.ts', "import '../../tests/y.ts';", test)).toEqual(['tests-are-not-product']);
  });

  it('lets through what is allowed', async () => {
    const modern = { name: 'modern', type: 'module', exports: { '.': { import: './a.js' } } };
    const others = {
      'node_modules/modern/package.json': JSON.stringify(modern),
      'node_modules/modern/a.js': 'export const a = 1;',
      'src/core/y.ts': thing,
      'src/state/y.ts': thing,
      'src/stage/spill/z.ts': "import 'cannon-es';",
      'src/cli/z.ts': "await import('modern');",
    };
    const statement = "import 'three';\nimport '../core/y.ts';\nimport '../state/y.ts';";
    expect(await rulesBrokenBy('src/stage/x.ts', statement, others)).toEqual([]);
  });
});
