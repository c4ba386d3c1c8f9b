/** True for the error a cancelled run rejects with. */
export function isAbort(error: unknown): boolean {
  return error instanceof Error && error.name === 'AbortError';
}

/** What went wrong, in the words of whoever noticed it. */
export function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
