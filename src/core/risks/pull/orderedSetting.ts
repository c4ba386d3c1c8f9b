import type { Run } from '../../dynamics/types.ts';

/**
 * The speed setting the controller is being turned to at every frame, frames × locomotives: while it is turned one way the
 * setting it comes to rest at, else the setting it has. A train that stands while the knob comes up has not
 * stalled; what it is asked to do is judged by where the knob ends.
 */
export function orderedSettings(run: Run): Float64Array {
  const width = run.locomotives.length;
  const ordered = Float64Array.from(run.setting);
  for (let f = run.frames - 2; f >= 0; f--) {
    for (let k = 0; k < width; k++) {
      const at = f * width + k;
      const step = run.setting[at + width] - run.setting[at];
      if (step === 0) continue;
      const next = f + 2 < run.frames ? run.setting[at + 2 * width] - run.setting[at + width] : 0;
      ordered[at] = step * next > 0 ? ordered[at + width] : run.setting[at + width];
    }
  }
  return ordered;
}
