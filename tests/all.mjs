// What `npm test` runs: every check and every test, all of them even when one fails.
//
// The last line is the true count. A check counts as one; tests are counted from vitest's own record; a part that could not
// run, ran nothing, or left tests out counts as failed. A file of browser tests that fails is run once more, since a shared machine can
// hold a page up for longer than any test waits; what passes only then is named below its part. Names of parts as arguments run only those.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { countTests } from './house/count.ts';
import { filesThatFailed, withSecondTry } from './house/secondTry.ts';

const house = fileURLToPath(new URL('../', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'tests-'));
const node = process.execPath;
const bin = (path) => join(house, 'node_modules', path);

const check = (name, ...commands) => ({ name, run: () => runCheck(commands) });
const tests = (name, tries = 1) => ({ name, run: () => runTests(name, tries) });

const parts = [
  check(
    'types',
    [bin('typescript/bin/tsc'), '-p', 'tsconfig.json'],
    [bin('typescript/bin/tsc'), '-p', 'src/core/tsconfig.json'],
  ),
  check('lint', [bin('@biomejs/biome/bin/biome'), 'check', '--error-on-warnings', '.']),
  check('imports', ['--import', 'tsx', 'tests/house/imports.mjs']),
  check('dead', [bin('knip/bin/knip.js')]),
  tests('unit'),
  tests('external'),
  {
    name: 'build',
    run: () => {
      // A build that fails must not leave an older one for the browser tests to pass on.
      rmSync(join(house, 'dist'), { recursive: true, force: true });
      return runCheck([[bin('vite/bin/vite.js'), 'build']]);
    },
  },
  tests('browser', 2),
];

const running = new Set();

/** Exit code of a command whose output is shown as it comes; 1 when it was killed or could not start. */
function runCommand(args) {
  return new Promise((resolve) => {
    const child = spawn(node, args, { cwd: house, stdio: ['ignore', 'inherit', 'inherit'] });
    running.add(child);
    child.on('error', (problem) => {
      console.error(problem.message);
      resolve(1);
    });
    child.on('close', (code) => {
      running.delete(child);
      resolve(code ?? 1);
    });
  });
}

async function runCheck(commands) {
  let failed = false;
  for (const args of commands) if ((await runCommand(args)) !== 0) failed = true;
  return { passed: failed ? 0 : 1, failed: failed ? 1 : 0, notes: [] };
}

async function runTests(project, tries) {
  const { record, code } = await runVitest(project, []);
  const failed = filesThatFailed(record);
  if (tries < 2 || failed.length === 0) return countTests(record, code);
  console.log(`\n--- ${project}, ${failed.length} files once more`);
  const again = await runVitest(project, failed);
  const { record: last, notes } = withSecondTry(record, again.record);
  const count = countTests(last, again.code);
  return { ...count, notes: [...count.notes, ...notes] };
}

/** Vitest's own record of a project's tests, or of the files named, and its exit code. */
async function runVitest(project, files) {
  const path = join(scratch, `${project}.json`);
  rmSync(path, { force: true });
  const code = await runCommand([
    bin('vitest/vitest.mjs'),
    'run',
    ...files,
    '--project',
    project,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${path}`,
  ]);
  try {
    return { code, record: JSON.parse(readFileSync(path, 'utf8')) };
  } catch {
    return { code, record: undefined };
  }
}

for (const signal of ['SIGINT', 'SIGTERM']) {
  process.on(signal, () => {
    for (const child of running) child.kill(signal);
  });
}

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !parts.some((part) => part.name === name));
if (unknown.length > 0)
  console.error(`there is no part ${unknown.join(', ')}; the parts are ${parts.map((part) => part.name).join(', ')}`);

const rows = [];
for (const part of parts.filter(({ name }) => asked.length === 0 || asked.includes(name))) {
  console.log(`\n--- ${part.name}`);
  const started = Date.now();
  const outcome = await part.run();
  rows.push({ name: part.name, seconds: (Date.now() - started) / 1000, ...outcome });
}
rmSync(scratch, { recursive: true, force: true });

const passed = rows.reduce((sum, row) => sum + row.passed, 0);
const failed = rows.reduce((sum, row) => sum + row.failed, unknown.length);

console.log('');
for (const row of rows) {
  const line = `${row.name.padEnd(10)}${String(row.passed).padStart(6)} passed${String(row.failed).padStart(6)} failed${row.seconds.toFixed(1).padStart(9)} s`;
  console.log([line, ...row.notes.map((note) => `          ${note}`)].join('\n'));
}
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
