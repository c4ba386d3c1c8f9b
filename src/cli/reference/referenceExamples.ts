import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A block of code on a page of docs/reference and the block of output beneath it. */
export interface Example {
  readonly heading: string;
  readonly code: string;
  readonly printed: string;
}

const block = /^```ts\n([\s\S]*?)^```\n\n^```text\n([\s\S]*?)^```/gm;

/** Every block of code with its output, under the heading that it stands under. */
export function examplesOf(page: string): readonly Example[] {
  return page
    .split(/^## /m)
    .flatMap((part) =>
      [...part.matchAll(block)].map(([, code, printed]) => ({ heading: part.split('\n')[0], code, printed })),
    );
}

/** Printed after each block, to tell their outputs apart. */
const mark = '\u0000';

/** Runs the blocks of a page one after the other, as one script in the folder `house`, and answers with what each prints. */
export function runExamples(examples: readonly Example[], house: string): readonly string[] {
  const folder = mkdtempSync(join(tmpdir(), 'gradewright-examples-'));
  try {
    const script = join(folder, 'try.mts');
    const code = examples.map((one) => `${one.code}\nconsole.log('\\u0000');\n`).join('');
    writeFileSync(script, code.replaceAll("'./src/", `'${house}src/`));
    const out = execFileSync(process.execPath, ['--import', 'tsx', script], { cwd: house, encoding: 'utf8' });
    return out.split(`${mark}\n`).slice(0, examples.length);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The page with what its blocks print now beneath each of them. */
export function withOutputs(page: string, house: string): string {
  const printed = runExamples(examplesOf(page), house);
  let next = 0;
  return page.replace(block, (_, code: string) => `\`\`\`ts\n${code}\`\`\`\n\n\`\`\`text\n${printed[next++]}\`\`\``);
}
