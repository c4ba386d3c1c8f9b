import { expect } from 'vitest';
import type { Chain } from '../../../src/core/dynamics/chain.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import type { Track } from '../../../src/core/track/index.ts';
import { chainOnGround, groundOn } from './chains.ts';

/** What tests of the time step's error have in common: plain forces, plain joints, a train run again and again at steps each half of the last. */
const forces = { curveFactor: 0, flangeFriction: 0 };

export const rolling = (coulomb: number, perSpeed = 0, breakaway = 1) => ({
  rolling: { coulomb, perSpeed, breakaway },
});

/** Coupling whose like halves in series make a joint of these numbers. */
export const spring = (k: number, damping = 0, slack = 0) => ({
  draftStiffness: 2 * k,
  buffStiffness: 2 * k,
  damping: 2 * damping,
  slack: slack / 2,
});

/** Puts one train after another on the same route, and takes each off again once it has been looked at; every step must have settled. */
export function trainsOn(track: Track, vehicles: readonly Vehicle[], lead = 0.5 * track.length) {
  const ground = groundOn(track, vehicles, forces);
  return <T>(
    step: number,
    start: { speeds?: readonly number[]; gaps?: readonly number[] },
    look: (chain: Chain) => T,
  ): T => {
    const chain = chainOnGround(ground, vehicles, lead, { step, forces, ...start });
    const seen = look(chain);
    expect(chain.unsettled).toBe(0);
    chain.leave();
    return seen;
  };
}

/** Runs a chain for a time that its step divides. */
export function runFor(chain: Chain, step: number, time: number): Chain {
  chain.advance(Math.round(time / step));
  return chain;
}

export const halvings = (first: number, count: number) => Array.from({ length: count + 1 }, (_, i) => first / 2 ** i);

/** Power of the step with which an error falls that one halving takes from `coarse` to `fine`. */
export const order = (coarse: number, fine: number) => Math.log2(coarse / fine);
