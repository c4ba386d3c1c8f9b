import { crossProblems } from './checks/crossChecks.ts';
import { type Problem, problemsOf, valueText } from './checks/problems.ts';
import { jsonFault } from './jsonText.ts';
import { sceneInPage } from './pageText.ts';
import { bounds } from './schema/bounds.ts';
import { tooMuch } from './schema/limits.ts';
import { formatVersion, type Scene, sceneSchema } from './schema/schema.ts';

export type ParsedScene =
  | { readonly ok: true; readonly scene: Scene }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Some editors put one in front of a file; JSON does not know it. */
const byteOrderMark = /^\uFEFF/;

/** Most problems told at once; the rest follows when these are mended. */
const mostProblems = 20;

const refuse = (...problems: Problem[]): ParsedScene => ({ ok: false, problems: problems.slice(0, mostProblems) });

/**
 * Checks a scene file, given as text, as a page to pass on with the file in it, or as the value that JSON made of it. Never throws: a file that will not do comes
 * back as problems, each with its place in the file, what was found, what is allowed and an example.
 */
export function parseScene(file: unknown): ParsedScene {
  const source = typeof file === 'string' ? (sceneInPage(file) ?? file) : file;
  let input: unknown = source;
  if (typeof source === 'string') {
    if (source.length > bounds.text) {
      return refuse({
        path: '',
        found: `${source.length} letters`,
        allowed: `at most ${bounds.text} letters`,
        example: '',
      });
    }
    try {
      input = JSON.parse(source.replace(byteOrderMark, ''));
    } catch {
      return refuse(notJson(source));
    }
  }
  const large = tooMuch(input);
  if (large !== null) return refuse(large);
  const newer = newerVersion(input);
  if (newer !== null) return refuse(newer);
  const checked = sceneSchema.safeParse(input);
  if (!checked.success) return refuse(...problemsOf(checked.error.issues, input));
  const crossed = crossProblems(checked.data);
  return crossed.length > 0 ? refuse(...crossed) : { ok: true, scene: checked.data };
}

/** Text that is not JSON, with the line and column at which it stops being that. */
function notJson(text: string): Problem {
  const fault = jsonFault(text.replace(byteOrderMark, ''));
  return {
    path: fault === null ? '' : `line ${fault.line}, column ${fault.column}`,
    found: fault === null ? 'text that is not JSON' : fault.what,
    allowed: 'a scene file in JSON',
    example: '{ "gradewright": 1, "name": "Wren Gill", … }',
    ...(fault === null ? {} : { excerpt: [fault.excerpt, fault.caret] as const }),
  };
}

function newerVersion(input: unknown): Problem | null {
  if (typeof input !== 'object' || input === null || !('gradewright' in input)) return null;
  const version = input.gradewright;
  if (typeof version !== 'number' || !(version > formatVersion)) return null;
  return {
    path: 'gradewright',
    found: `version ${valueText(version)}, made by a newer Gradewright`,
    allowed: `up to version ${formatVersion}; nothing is lost, the file only needs the newer program`,
    example: String(formatVersion),
  };
}
