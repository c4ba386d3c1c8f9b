/*
 * One side of a coupling joint, draft or buff, alone: a spring of one or two stages and a damper that act while the side
 * is in contact. Plain numbers only, so that the same text is compiled for the tests and the reader's checks here and, by
 * AssemblyScript, into the kernel that steps the train (kernel/assembly).
 */

/** Force averaged over the step, N, and its derivative with respect to the rate, N·s/m. */
export class AveragedForce {
  force: number = 0;
  slope: number = 0;
}

/** Mean of max(y, 0) while y runs evenly from y0 to y1. */
function meanBeyond(y0: number, y1: number): number {
  if (y0 >= 0) return y1 >= 0 ? 0.5 * (y0 + y1) : (0.5 * y0 * y0) / (y0 - y1);
  return y1 > 0 ? (0.5 * y1 * y1) / (y1 - y0) : 0;
}

/** Derivative of `meanBeyond` with respect to y1. */
function meanBeyondSlope(y0: number, y1: number): number {
  if (y0 >= 0) {
    if (y1 >= 0) return 0.5;
    const left = y0 / (y0 - y1);
    return 0.5 * left * left;
  }
  if (y1 <= 0) return 0;
  const share = y1 / (y1 - y0);
  return share * (1 - 0.5 * share);
}

/** Spring force at penetration x ≥ 0, N: stiffness `k` up to `from` m, `second` from there on. */
export function springForce(k: number, from: number, second: number, x: number): number {
  return x > from ? k * from + second * (x - from) : k * x;
}

/** Energy in the spring at penetration x, J. */
export function springEnergy(k: number, from: number, second: number, x: number): number {
  if (x <= 0) return 0;
  if (x <= from) return 0.5 * k * x * x;
  const beyond = x - from;
  return 0.5 * k * from * from + k * from * beyond + 0.5 * second * beyond * beyond;
}

/**
 * Average over a step of the force of one side, never negative.
 *
 * @param k stiffness of the first stage, N/m
 * @param from penetration at which the second stage begins, m; infinite when there is none
 * @param second stiffness of the second stage, N/m
 * @param c damping, N·s/m
 * @param x0 penetration at the start of the step, m; negative while apart
 * @param u rate at which it grows, m/s, constant over the step
 * @param h step, s
 * @param out takes the force and its derivative with respect to u
 */
export function averagedSide(
  k: number,
  from: number,
  second: number,
  c: number,
  x0: number,
  u: number,
  h: number,
  out: AveragedForce,
): void {
  const x1 = x0 + u * h;
  const twoStages = x0 > from || x1 > from;
  out.force = 0;
  out.slope = 0;
  if (x0 >= 0) {
    const f0 = springForce(k, from, second, x0) + c * u;
    const f1 = springForce(k, from, second, x1) + c * u;
    if (f0 >= 0 && f1 >= 0) {
      out.force = 0.5 * k * (x0 + x1) + c * u;
      out.slope = 0.5 * k * h + c;
      if (twoStages) {
        out.force += (second - k) * meanBeyond(x0 - from, x1 - from);
        out.slope += (second - k) * h * meanBeyondSlope(x0 - from, x1 - from);
      }
    } else if (f0 > 0) {
      // Unloading to zero within the step, u < 0: the area under the falling spring force down to the damper's level.
      const way = -u * h;
      const level = -c * u;
      const knee = k * from - level;
      let area: number;
      let fall: number;
      if (x0 <= from) {
        area = (0.5 * f0 * f0) / k;
        fall = f0 / k;
      } else if (knee <= 0) {
        area = (0.5 * f0 * f0) / second;
        fall = f0 / second;
      } else {
        area = 0.5 * (f0 + knee) * (x0 - from) + (0.5 * knee * knee) / k;
        fall = x0 - from + knee / k;
      }
      out.force = area / way;
      out.slope = (c * fall) / way - out.force / u;
    }
  } else if (x1 > 0) {
    // Touch within the step: in contact for the share x1/(u·h) of it.
    // Written so that no product of small numbers stands below a line: rates of 1e-300 m/s must not divide by zero.
    const share = x1 / (x1 - x0);
    out.force = share * (c * u + 0.5 * k * x1);
    out.slope = (1 - share) * (c + (0.5 * k * x1) / u) + share * (c + 0.5 * k * h);
    if (twoStages) {
      const more = (second - k) * meanBeyond(-from, x1 - from);
      out.force += share * more;
      out.slope += ((1 - share) * more) / u + share * (second - k) * h * meanBeyondSlope(-from, x1 - from);
    }
  }
}
