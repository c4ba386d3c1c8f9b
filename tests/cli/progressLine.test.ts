import { describe, expect, it, vi } from 'vitest';
import { createProgressLine } from '../../src/cli/progressLine.ts';

describe('the progress line', () => {
  it('rewrites one line on a terminal and wipes it at the end', () => {
    const write = vi.fn(() => true);
    const line = createProgressLine({ isTTY: true, write });
    line.show('Up', 0.257);
    line.clear();
    line.clear();
    expect(write.mock.calls).toEqual([['\r\u001b[K 25 %  Up'], ['\r\u001b[K']]);
  });

  it('is silent where nobody watches', () => {
    const write = vi.fn(() => true);
    const line = createProgressLine({ isTTY: false, write });
    line.show('Up', 0.5);
    line.clear();
    expect(write).not.toHaveBeenCalled();
  });
});
