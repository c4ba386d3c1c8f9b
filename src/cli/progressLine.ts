import type { WriteStream } from 'node:tty';

/** One line that says how far long work is, rewritten in place. */
export interface ProgressLine {
  readonly show: (name: string, done: number) => void;
  readonly clear: () => void;
}

/** Time between two rewrites, ms. */
const pause = 100;

/** A progress line on a terminal; on anything else (a file, a pipe) it stays silent. */
export function createProgressLine(stream: Pick<WriteStream, 'isTTY' | 'write'>): ProgressLine {
  let last = 0;
  let shown = false;
  return {
    show(name, done) {
      if (!stream.isTTY) return;
      const now = performance.now();
      if (now - last < pause) return;
      last = now;
      shown = true;
      stream.write(`\r\u001b[K${String(Math.floor(done * 100)).padStart(3)} %  ${name}`);
    },
    clear() {
      if (shown) stream.write('\r\u001b[K');
      shown = false;
    },
  };
}
