/** What is read of vitest's JSON record. */
export interface TestRecord {
  readonly testResults?: readonly {
    readonly name: string;
    readonly status: string;
    readonly message?: string;
    readonly assertionResults: readonly { readonly status: string; readonly fullName?: string }[];
  }[];
}

export interface Count {
  readonly passed: number;
  readonly failed: number;
  /** What a bare count would hide, in words. */
  readonly notes: readonly string[];
}

/**
 * Counts a vitest JSON record: tests passed, and everything else as failed.
 *
 * Failed are: tests that failed; tests left out (skipped, to be written, never reached); files that could not be loaded;
 * a run that recorded nothing or ended badly although every test in it passed.
 */
export function countTests(record: TestRecord | undefined, exitCode: number): Count {
  if (!record) return { passed: 0, failed: 1, notes: ['could not run: no record was written'] };
  const files = record.testResults ?? [];
  const all = files.flatMap((file) => file.assertionResults);
  const passed = all.filter((test) => test.status === 'passed').length;
  const broken = all.filter((test) => test.status === 'failed').length;
  const leftOut = all.length - passed - broken;
  const unloaded = files.filter(
    (file) => file.status !== 'passed' && !file.assertionResults.some((test) => test.status === 'failed'),
  );
  const notes: string[] = [];
  if (leftOut > 0) notes.push(`${leftOut} tests were left out, which counts as failed`);
  for (const file of unloaded) notes.push(`${file.name}: ${firstLine(file.message)}`);
  let failed = broken + leftOut + unloaded.length;
  if (failed === 0 && passed === 0) {
    failed = 1;
    notes.push('no test was found');
  }
  if (failed === 0 && exitCode !== 0) {
    failed = 1;
    notes.push(`every test passed, yet the run ended with ${exitCode}: an error outside the tests`);
  }
  return { passed, failed, notes };
}

const firstLine = (message: string | undefined) => (message ?? '').trim().split('\n')[0] || 'could not be loaded';
