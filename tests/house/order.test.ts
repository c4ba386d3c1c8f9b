import { readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { sourceFiles } from './cruise.ts';

const house = fileURLToPath(new URL('../../', import.meta.url));
const textOf = (file: string) => readFileSync(join(house, file), 'utf8');
const source = sourceFiles(house, 'src');
const tests = sourceFiles(house, 'tests');
const core = source.filter((file) => file.startsWith('src/core/'));

/** A file without its comments. */
const codeOf = (file: string) => textOf(file).replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');

/** What a file imports or re-exports, static or dynamic, with types. */
const importsOf = (file: string) =>
  ts.preProcessFile(textOf(file), true, true).importedFiles.map((imported) => imported.fileName);

/** Files that are long for a reason say so in their first lines: `Over 300 lines for a reason: …`. */
const longestWithoutReason = 300;
const reason = /over 300 lines (because|for a reason:) \S+/i;

describe('the house is in order', () => {
  it('is looked at in full', () => {
    expect(core.length).toBeGreaterThan(10);
    expect(source).toContain('src/core/units/index.ts');
    expect(tests).toContain('tests/house/order.test.ts');
  });

  it('has no file over 300 lines without a reason at its top', () => {
    const long = [...source, ...tests].filter((file) => {
      const lines = textOf(file).split('\n');
      return lines.length > longestWithoutReason + 1 && !reason.test(lines.slice(0, 12).join(' '));
    });
    expect(long).toEqual([]);
  });

  it('names folders and files for their subject', () => {
    const vague = /^(utils?|helpers?|common|managers?|misc|shared|lib)$/i;
    const parts = (file: string) => [...dirname(file).split('/'), basename(file).replace(/(\.test)?\.tsx?$/, '')];
    expect([...source, ...tests].filter((file) => parts(file).some((part) => vague.test(part)))).toEqual([]);
  });

  it('keeps core to itself: relative imports that stay in core', () => {
    const leaving = core.flatMap((file) =>
      importsOf(file)
        .filter((to) => !to.startsWith('.') || !join(dirname(file), to).replaceAll('\\', '/').startsWith('src/core/'))
        .map((to) => `${file} -> ${to}`),
    );
    expect(leaving).toEqual([]);
  });

  it('keeps clocks and unseeded chance out of core', () => {
    const unrepeatable = /\bMath\.random\b|\bDate\b|\bperformance\b|\bcrypto\b|\bsetTimeout\b/;
    expect(core.filter((file) => unrepeatable.test(codeOf(file)))).toEqual([]);
  });

  it('has three on the stage and nowhere else', () => {
    const drawing = source.filter((file) =>
      importsOf(file).some((to) => /^(three|@react-three\/.*|three\/.*)$/.test(to)),
    );
    const elsewhere = drawing.filter((file) => !file.startsWith('src/stage/') && !file.startsWith('src/export/glb'));
    expect(elsewhere).toEqual([]);
  });

  it('has one three installed', () => {
    const { packages } = JSON.parse(textOf('package-lock.json')) as { packages: Record<string, unknown> };
    expect(Object.keys(packages).filter((path) => path.endsWith('node_modules/three'))).toEqual(['node_modules/three']);
  });

  it('has index files that only re-export', () => {
    const faces = source.filter((file) => basename(file).startsWith('index.'));
    const doingMore = faces.filter((file) => {
      const parsed = ts.createSourceFile(file, textOf(file), ts.ScriptTarget.ES2022);
      return !parsed.statements.every((statement) => ts.isExportDeclaration(statement) && statement.moduleSpecifier);
    });
    expect(faces).toContain('src/core/units/index.ts');
    expect(doingMore).toEqual([]);
  });

  it('leaves no test out and nothing to be done later', () => {
    const left =
      /\b(describe|it|test)\.(skip|only|todo|skipIf|runIf|fails)\b|\b(TO)(DO)\b|\b(FIX)(ME)\b|@ts-(ignore|nocheck)/;
    const files = [...source, ...tests].filter((file) => file !== 'tests/house/order.test.ts');
    expect(files.filter((file) => left.test(textOf(file)))).toEqual([]);
  });
});
