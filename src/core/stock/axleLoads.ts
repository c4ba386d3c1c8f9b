import type { CarryingAxle } from './types.ts';

/** Turns in which the set of carrying axles settles; every one takes an axle out of it or puts one back. */
const mostTurns = 64;
/** Loads below this share of the weight are rounding. */
const nothing = 1e-13;

/**
 * Loads on the axles of a level beam where the rail is not straight, as shares of the vehicle's weight, into `out`.
 *
 * The frame is a rigid beam; under every axle something yields by a spring with its level load in it, and no axle pulls the
 * rail: N_k = max(0, N0_k + c_k·(d_k - z - θ·x_k)), with d_k how high the rail stands under axle k, and z, θ the frame's
 * heave and pitch from balance of forces and moments: the minimum of a convex energy, so there is one answer. Soft springs keep
 * the level loads; as springs grow stiff the frame stands on the two axles that statics of a rigid beam would choose.
 * Found by the primal active-set method: from the level loads towards the balance of the axles that carry, as far as none pulls; that one
 * is let go, and one that would press again is put back.
 *
 * @param weight of the vehicle, N
 * @param rise height of the rail under each axle above any straight line, m
 */
export function axleLoads(
  axles: readonly CarryingAxle[],
  weight: number,
  rise: ArrayLike<number>,
  out: Float64Array,
): Float64Array {
  const n = axles.length;
  const idle = new Uint8Array(n);
  const wanted = new Float64Array(n);
  for (let k = 0; k < n; k++) out[k] = axles[k]!.share;
  for (let turn = 0; turn < mostTurns; turn++) {
    let [a, b, c, up, tip] = [0, 0, 0, 0, 0];
    let carrying = 0;
    for (let k = 0; k < n; k++) {
      const { share, ahead, stiffness } = axles[k]!;
      // What an idle axle carried on the level the others must take.
      const given = idle[k] ? -share * weight : stiffness * rise[k]!;
      up += given;
      tip += given * ahead;
      if (idle[k]) continue;
      carrying++;
      a += stiffness;
      b += stiffness * ahead;
      c += stiffness * ahead * ahead;
    }
    const determinant = a * c - b * b;
    const heave = (c * up - b * tip) / determinant;
    const pitch = (a * tip - b * up) / determinant;
    // Towards the balance of those that carry, as far as none of them pulls; two stand by statics, whatever rounding says.
    let part = 1;
    let lost = -1;
    let best = nothing;
    let found = -1;
    for (let k = 0; k < n; k++) {
      const { share, ahead, stiffness } = axles[k]!;
      const load = share + (stiffness * (rise[k]! - heave - pitch * ahead)) / weight;
      wanted[k] = idle[k] ? 0 : load;
      if (idle[k]) {
        if (load > best) {
          best = load;
          found = k;
        }
      } else if (carrying > 2 && load < 0 && out[k]! < part * (out[k]! - load)) {
        part = out[k]! / (out[k]! - load);
        lost = k;
      }
    }
    for (let k = 0; k < n; k++) out[k] = Math.max(out[k]! + part * (wanted[k]! - out[k]!), 0);
    if (lost >= 0) {
      out[lost] = 0;
      idle[lost] = 1;
    } else if (found >= 0) idle[found] = 0;
    else break;
  }
  return out;
}

/**
 * What driven axles grip with loads as shares of weight, over what they would on level track without tyres: their loads, each times what its wheels
 * grip better, over their level loads. 1 when no axle drives.
 */
export function drivenShareOn(axles: readonly CarryingAxle[], loads: ArrayLike<number>): number {
  let now = 0;
  let level = 0;
  for (let k = 0; k < axles.length; k++) {
    const { driven, share, grip = 1 } = axles[k]!;
    if (!driven) continue;
    now += grip * loads[k]!;
    level += share;
  }
  return level > 0 ? now / level : 1;
}
