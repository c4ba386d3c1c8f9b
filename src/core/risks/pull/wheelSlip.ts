import type { Run } from '../../dynamics/types.ts';

/** Rim and rail closer in speed than this are taken as one, m/s: a millimetre a second, which nobody sees or hears. */
const slipFloor = 0.001;

/** The least a slip counts as, also one that came and went between two frames: a share of turning, and of force beyond the grip. */
export const briefSlip = 0.01;

/**
 * Share of the wheels' turning that is lost in slip at every frame, frames × locomotives, 0 to 1: 0 while they grip, 1 when they
 * turn on the spot. Slips that the run reports between two frames are not missed.
 */
export function slipShares(run: Run): Float64Array {
  const width = run.locomotives.length;
  const shares = new Float64Array(run.frames * width);
  for (let f = 0; f < run.frames; f++) {
    for (let k = 0; k < width; k++) {
      const rim = run.rimSpeed[f * width + k];
      const rail = run.speed[f * run.vehicles + run.locomotives[k]];
      const slip = Math.abs(rim - rail);
      if (slip > slipFloor) shares[f * width + k] = Math.min(1, slip / Math.max(Math.abs(rim), Math.abs(rail)));
    }
  }
  for (const event of run.events) {
    if (event.kind !== 'slip') continue;
    const k = run.locomotives.indexOf(event.subject);
    const f = run.time.findIndex((time) => time >= event.time);
    if (k >= 0 && f >= 0) shares[f * width + k] = Math.max(shares[f * width + k], briefSlip);
  }
  return shares;
}
