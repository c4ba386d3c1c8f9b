import { log } from './elementary.ts';

/** A stream of random numbers that the seed alone decides. */
export interface SeededRandom {
  /** Uniform in [0, 1), 53 bits. */
  uniform(): number;
  /** A whole number from 0 to `count` - 1. */
  below(count: number): number;
  /** Normal with mean 0 and standard deviation 1. */
  normal(): number;
}

/** The state transition xoshiro128** (Blackman & Vigna 2018): four words of 32 bits in, one word out, state advanced. */
export function advance(state: Uint32Array): number {
  const mixed = Math.imul(state[1], 5);
  const result = Math.imul((mixed << 7) | (mixed >>> 25), 9) >>> 0;
  const shifted = state[1] << 9;
  state[2] ^= state[0];
  state[3] ^= state[1];
  state[1] ^= state[2];
  state[0] ^= state[3];
  state[2] ^= shifted;
  state[3] = (state[3] << 11) | (state[3] >>> 21);
  return result;
}

/**
 * Random numbers from a whole-number `seed`, the same on every machine.
 *
 * The seed is spread over the state by a Weyl sequence with the 32-bit finaliser of MurmurHash3, so that near seeds give
 * unrelated streams. Throws RangeError unless the seed is a whole number below 2^53.
 */
export function seededRandom(seed: number): SeededRandom {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`A seed is a whole number below 2^53, not ${seed}.`);
  const state = new Uint32Array(4);
  const high = Math.floor(seed / 4294967296) >>> 0;
  let weyl = seed >>> 0;
  for (let i = 0; i < 4; i++) {
    weyl = (weyl + 0x9e3779b9) >>> 0;
    let word = weyl ^ Math.imul(high + i, 0x85ebca6b);
    word = Math.imul(word ^ (word >>> 16), 0x85ebca6b);
    word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
    state[i] = word ^ (word >>> 16);
  }
  // All zeros is the one state that never leaves zero.
  if (state.every((word) => word === 0)) state[0] = 1;

  const uniform = (): number => ((advance(state) >>> 5) * 67108864 + (advance(state) >>> 6)) / 9007199254740992;
  const below = (count: number): number => Math.floor(uniform() * count);
  let spare = Number.NaN;
  // The polar method of Marsaglia & Bray (1964): two values at a time.
  const normal = (): number => {
    if (!Number.isNaN(spare)) {
      const kept = spare;
      spare = Number.NaN;
      return kept;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const r = u * u + v * v;
      if (r > 0 && r < 1) {
        const scale = Math.sqrt((-2 * log(r)) / r);
        spare = v * scale;
        return u * scale;
      }
    }
  };
  return { uniform, below, normal };
}
