import { readFileSync, statSync } from 'node:fs';
import { bounds, type Problem, parseScene, type Scene } from '../scene/index.ts';
import { BadInput } from './exitCodes.ts';

/** UTF-8 takes at most this many bytes a letter. */
const bytesPerLetter = 4;

/** Reads and checks a scene file. Throws BadInput with every problem and its place in the file. */
export function readScene(path: string): Scene {
  let text: string;
  try {
    const { size } = statSync(path);
    if (size > bounds.text * bytesPerLetter) throw new Error(`it is ${size} bytes long, which no scene is`);
    text = readFileSync(path, 'utf8');
  } catch (error) {
    throw new BadInput(`Cannot read ${path}: ${error instanceof Error ? error.message : String(error)}`);
  }
  const parsed = parseScene(text);
  if (parsed.ok) return parsed.scene;
  throw new BadInput([`${path} is not a scene that can be run:`, ...parsed.problems.map(problemText)].join('\n'));
}

/** One problem as a few indented lines: place, what was found, what is allowed, an example. */
export function problemText({ path, found, allowed, example }: Problem): string {
  const lines = [`  ${path === '' ? 'the file' : path}`, `    found:   ${found}`, `    allowed: ${allowed}`];
  if (example !== '') lines.push(`    example: ${example}`);
  return lines.join('\n');
}
