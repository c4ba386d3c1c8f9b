/** The error of a run that was called off. */
export const cancelled = (): DOMException => new DOMException('The trial was cancelled.', 'AbortError');
