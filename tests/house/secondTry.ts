import type { TestRecord } from './count.ts';

/** The files of a record that did not pass whole, as vitest is asked for them. */
export const filesThatFailed = (record: TestRecord | undefined): readonly string[] =>
  (record?.testResults ?? []).filter((file) => file.status !== 'passed').map(({ name }) => name);

/**
 * A record with its failed files as they came out when run once more, and what the first try failed, in words.
 *
 * A file that the second run did not record stays as it was. Nothing that failed goes unsaid: what passes at the second try is named.
 */
export function withSecondTry(
  first: TestRecord,
  second: TestRecord | undefined,
): { readonly record: TestRecord; readonly notes: readonly string[] } {
  const again = new Map((second?.testResults ?? []).map((file) => [file.name, file]));
  const notes: string[] = [];
  const testResults = (first.testResults ?? []).map((file) => {
    const later = file.status === 'passed' ? undefined : again.get(file.name);
    if (later === undefined) return file;
    if (later.status === 'passed') notes.push(`passed at the second try only: ${file.name}${failedTests(file)}`);
    return later;
  });
  return { record: { testResults }, notes };
}

const failedTests = (file: NonNullable<TestRecord['testResults']>[number]): string =>
  file.assertionResults
    .filter(({ status }) => status === 'failed')
    .map(({ fullName }) => `\n            ${fullName ?? 'a test without a name'}`)
    .join('');
