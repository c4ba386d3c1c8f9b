import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { bounds, nearestWords, type Problem, parseScene, type Scene } from '../scene/index.ts';
import { BadInput } from './exitCodes.ts';

/** UTF-8 takes at most this many bytes a letter. */
const bytesPerLetter = 4;

/** Most files that a message names. */
const mostNamed = 8;

/** Reads and checks a scene file. Throws BadInput with every problem and its place in the file. */
export function readScene(path: string): Scene {
  const parsed = parseScene(textOf(path));
  if (parsed.ok) return parsed.scene;
  throw new BadInput([`${path} is not a scene that can be run:`, ...parsed.problems.map(problemText)].join('\n'));
}

/** The text of a file. Throws BadInput that says where was looked and what there is instead. */
function textOf(path: string): string {
  try {
    const found = statSync(path);
    if (found.isDirectory()) {
      const files = sceneFiles(path).map((name) => join(path, name));
      throw new BadInput(
        `${path} is a folder. ${named('Scene files in it', files) || 'There is no scene file in it.'}`,
      );
    }
    if (found.size > bounds.text * bytesPerLetter) {
      throw new BadInput(`${path} is ${found.size} bytes long, which no scene is.`);
    }
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw error instanceof BadInput ? error : new BadInput(cannotRead(path, error));
  }
}

function cannotRead(path: string, error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ENOENT' || code === 'ENOTDIR')
    return `There is no file ${path} (looked for ${resolve(path)}).${instead(path)}`;
  if (code === 'EACCES' || code === 'EPERM') return `${path} is there, but may not be read.`;
  return `Cannot read ${path}: ${error instanceof Error ? error.message : String(error)}`;
}

/** The scene files of the folder that was meant, or of the one the person is in, most alike first. */
function instead(path: string): string {
  for (const folder of new Set([dirname(path), '.', 'scenes'])) {
    const files = nearestWords(basename(path), sceneFiles(folder)).map((name) => join(folder, name));
    if (files.length > 0) return ` ${named('Near there', files)}`;
  }
  return '';
}

const named = (what: string, files: readonly string[]): string => {
  if (files.length === 0) return '';
  return `${what}: ${files.slice(0, mostNamed).join(', ')}${files.length > mostNamed ? ', …' : ''}.`;
};

/** Names in a folder that can be scene files; none when there is no such folder. */
function sceneFiles(folder: string): readonly string[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith('.json') && !/^(\.|package|package-lock|tsconfig|biome)\b/.test(name))
      .sort();
  } catch {
    return [];
  }
}

/** One problem as a few indented lines: place, what was found, what is allowed, an example. */
export function problemText({ path, found, allowed, example, excerpt }: Problem): string {
  const lines = [`  ${path === '' ? 'the file' : path}`];
  if (excerpt !== undefined) lines.push(...excerpt.map((line) => `    | ${line}`));
  lines.push(`    found:   ${found}`, `    allowed: ${allowed}`);
  if (example !== '') lines.push(`    example: ${example}`);
  return lines.join('\n');
}
