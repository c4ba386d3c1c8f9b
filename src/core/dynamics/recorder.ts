import type { Chain } from './chain.ts';
import type { Run } from './types.ts';

export type Recorded = Omit<Run, 'interval' | 'events' | 'outcome' | 'energy' | 'steps'>;

export interface Recorder {
  /** Frames of the chain that make one kept: 1 until the frames would take more room than they may, then 2, 4 and so on. */
  readonly thinning: number;
  /** Takes down the chain as it stands at `time`, and begins its peaks anew. */
  take(time: number): void;
  finish(): Recorded;
}

/** Fewest frames there is always room for, whatever it takes: the first, one more and the last. */
const FEWEST = 3;

/**
 * Keeps a run's frames in bounded room: the kernel writes them one after another, whole blocks are taken from it, and all are sorted
 * into columns at the end.
 *
 * When the frames would take more than `mostBytes`, every second is given up and from then on every second is kept. A frame given up
 * leaves its peaks to the next that is kept; the frame taken last is kept in any case. What is kept depends on the number of frames alone.
 */
export function createRecorder(chain: Chain, mostBytes: number): Recorder {
  const { layout, held } = chain.frames;
  const { width } = layout;
  const n = chain.count;
  const k = chain.engines.length;
  /** Room for kept frames, beside the last. */
  const room = Math.max(Math.floor(mostBytes / (8 * width)), FEWEST) - 1;
  /** Kept frames, `held` in a block. */
  const blocks: Float64Array[] = [];
  let kept = 0;
  let thinning = 1;
  let taken = 0;
  /** Where peaks of frames given up since the last that was kept wait for the next: a frame of which nothing else is used. */
  const carried = new Float64Array(width);

  const blockOf = (f: number) => blocks[Math.floor(f / held)]!;
  const offsetOf = (f: number) => (f % held) * width;

  /** Lets the peaks of the frame at `at` in a block count in another frame. */
  function leavePeaks(block: Float64Array, at: number, to: Float64Array, toAt: number): void {
    const { draftPeak, buffPeak } = layout;
    for (let j = 0; j < n - 1; j++) {
      to[toAt + draftPeak + j] = Math.max(to[toAt + draftPeak + j]!, block[at + draftPeak + j]!);
      to[toAt + buffPeak + j] = Math.min(to[toAt + buffPeak + j]!, block[at + buffPeak + j]!);
    }
  }

  /** Keeps the frame at `at` in a block, with the peaks carried to it. */
  function keep(block: Float64Array, at: number): void {
    const f = kept++;
    if (f === blocks.length * held) blocks.push(new Float64Array(held * width));
    blockOf(f).set(block.subarray(at, at + width), offsetOf(f));
    leavePeaks(carried, 0, blockOf(f), offsetOf(f));
    carried.fill(0);
  }

  /** Gives up every second frame kept. */
  function thin(): void {
    thinning *= 2;
    for (let f = 2; f < kept; f += 2) {
      leavePeaks(blockOf(f - 1), offsetOf(f - 1), blockOf(f), offsetOf(f));
      blockOf(f / 2).set(blockOf(f).subarray(offsetOf(f), offsetOf(f) + width), offsetOf(f / 2));
    }
    if (kept % 2 === 0) leavePeaks(blockOf(kept - 1), offsetOf(kept - 1), carried, 0);
    kept = Math.ceil(kept / 2);
    blocks.length = Math.ceil(kept / held);
  }

  /** Keeps or gives up the frame with this number of those taken, at `at` in a block. */
  function pass(number: number, block: Float64Array, at: number): void {
    if (number % thinning === 0 && kept === room) thin();
    if (number % thinning === 0) keep(block, at);
    else leavePeaks(block, at, carried, 0);
  }

  /** Takes the first `count` frames from the kernel's block, the first of which has number `first`. */
  function empty(first: number, count: number): void {
    const { block } = chain.frames;
    if (thinning === 1 && count === held && kept + held <= room) {
      blocks.push(block.slice());
      kept += held;
      return;
    }
    for (let slot = 0; slot < count; slot++) pass(first + slot, block, slot * width);
  }

  return {
    get thinning() {
      return thinning;
    },
    take(now) {
      const slot = taken % held;
      if (slot === 0 && taken > 0) empty(taken - held, held);
      chain.takeFrame(slot, now);
      taken++;
    },
    finish() {
      const { block } = chain.frames;
      const last = (taken - 1) % held;
      empty(taken - 1 - last, last);
      keep(block, last * width);
      const frames = kept;
      /** The column whose values stand at `at` in every frame, `wide` of them. */
      const column = (at: number, wide: number) => {
        const values = new Float64Array(frames * wide);
        for (let f = 0; f < frames; f++) {
          const from = offsetOf(f) + at;
          const block = blockOf(f);
          for (let i = 0; i < wide; i++) values[f * wide + i] = block[from + i]!;
        }
        return values;
      };
      const engineColumn = (q: number) => column(layout.engines + q * k, k);
      return {
        frames,
        vehicles: n,
        time: column(layout.time, 1),
        chainage: column(layout.chainage, n),
        speed: column(layout.speed, n),
        force: column(layout.force, n - 1),
        draftPeak: column(layout.draftPeak, n - 1),
        buffPeak: column(layout.buffPeak, n - 1),
        extension: column(layout.extension, n - 1),
        locomotives: Int32Array.from(chain.engines, (engine) => engine.vehicle),
        setting: engineColumn(0),
        rimSpeed: engineColumn(1),
        railForce: engineColumn(2),
        gripUse: engineColumn(3),
        motorLimit: engineColumn(4),
        gripLimit: engineColumn(5),
        demand: engineColumn(6),
      };
    },
  };
}
