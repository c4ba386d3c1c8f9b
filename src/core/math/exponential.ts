/*
 * e to a power from + - × ÷ alone, apart from the other elementary functions because the kernel that steps the train is
 * compiled from it too: plain numbers only.
 */
const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;

/** 2 to the power n, exact, for whole n from -1022 to 1023. */
function powerOfTwo(n: number): number {
  let power = 1.0;
  let factor = n < 0 ? 0.5 : 2.0;
  for (let left = Math.abs(n); left > 0; left = Math.floor(0.5 * left)) {
    if (0.5 * left !== Math.floor(0.5 * left)) power *= factor;
    factor *= factor;
  }
  return power;
}

/** e to the power x; 0 below e^-708. */
export function exp(x: number): number {
  if (x < -708) return 0;
  if (x > 709) return Infinity;
  const n = Math.round(x / (LN2_HIGH + LN2_LOW));
  const r = x - n * LN2_HIGH - n * LN2_LOW;
  let sum = 0.0;
  for (let k = 13.0; k >= 2; k--) sum = (r * (1 + sum)) / k;
  return (1 + r * (1 + sum)) * powerOfTwo(n);
}
