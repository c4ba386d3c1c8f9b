import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { examplesOf, runExamples } from '../../src/cli/reference/referenceExamples.ts';
import * as core from '../../src/core/index.ts';

const house = fileURLToPath(new URL('../../', import.meta.url));
const page = readFileSync(join(house, 'docs/reference/core.md'), 'utf8');
const examples = examplesOf(page);

describe('docs/reference/core.md', () => {
  let printed: readonly string[] = [];
  beforeAll(() => {
    printed = runExamples(examples, house);
  });

  it('has every block of code with its output', () => {
    expect(examples.length).toBeGreaterThanOrEqual(9);
    expect(examples).toHaveLength(page.match(/^```ts$/gm)?.length ?? 0);
    expect(examples.every((one) => one.printed.trim() !== '')).toBe(true);
  });

  it.each(examples.map(({ heading }, index) => [heading, index] as const))(
    '%s prints what the page says (npm run schema)',
    (_, index) => {
      expect(printed[index]).toBe(examples[index].printed);
    },
  );

  it('opens every room of the core', () => {
    expect(Object.keys(core)).toEqual(
      expect.arrayContaining(['dynamics', 'findings', 'math', 'risks', 'stock', 'track', 'units']),
    );
  });
});
