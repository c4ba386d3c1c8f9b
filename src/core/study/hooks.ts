/** How a study that takes long reports and is stopped. */
export interface StudyHooks {
  /** Told after every probe: how many are done, and how many are known to be needed so far. */
  readonly onProgress?: (done: number, known: number) => void;
  /** Asked before every new probe; once true no more are begun, and what is done is kept. */
  readonly stopped?: () => boolean;
  /** Probes that may be under way at once; 1 when left out. It changes no result. */
  readonly width?: number;
}
