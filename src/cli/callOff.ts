/** What Ctrl-C says to a study. */
export interface CallOff {
  readonly stopped: () => boolean;
  /** Leaves the signal to the system again. */
  readonly end: () => void;
}

/**
 * Listens for Ctrl-C: the first lets what is under way end and keeps what is done, the second ends the program as ever.
 */
export function listenForCallOff(source: Pick<NodeJS.Process, 'once' | 'off'> | undefined, tell: () => void): CallOff {
  let stopped = false;
  const stop = (): void => {
    stopped = true;
    tell();
  };
  source?.once('SIGINT', stop);
  return { stopped: () => stopped, end: () => source?.off('SIGINT', stop) };
}
