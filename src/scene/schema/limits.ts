import type { Problem } from '../checks/problems.ts';
import { bounds } from './bounds.ts';

/** Refuses a value that is too large, too deep or goes round in circles, before anything walks it recursively. */
export function tooMuch(input: unknown): Problem | null {
  const waiting: { readonly value: unknown; readonly depth: number }[] = [{ value: input, depth: 0 }];
  let seen = 0;
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    seen++;
    if (seen > bounds.values) return refusal(`more than ${bounds.values} values`, `at most ${bounds.values} values`);
    const { value, depth } = next;
    if (typeof value !== 'object' || value === null) continue;
    if (depth >= bounds.depth) {
      return refusal(`lists and objects more than ${bounds.depth} deep`, `at most ${bounds.depth} deep`);
    }
    const inner = Array.isArray(value) ? value : Object.values(value);
    if (inner.length > bounds.values)
      return refusal(`a list of ${inner.length} entries`, `at most ${bounds.values} values`);
    for (const one of inner) waiting.push({ value: one, depth: depth + 1 });
  }
  return null;
}

const refusal = (found: string, allowed: string): Problem => ({ path: '', found, allowed, example: '' });
