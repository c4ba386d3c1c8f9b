import type { Chain } from './chain.ts';
import type { Run } from './types.ts';

export type Recorded = Omit<Run, 'interval' | 'events' | 'outcome' | 'energy' | 'steps'>;

export interface Recorder {
  frames: number;
  /** Takes down the chain as it stands at `time`, and begins its peaks anew. */
  take(time: number): void;
  finish(): Recorded;
}

/** Keeps a run's frames: the kernel writes them one after another, whole blocks are taken from it, and all are sorted into columns at the end. */
export function createRecorder(chain: Chain): Recorder {
  const { layout, held } = chain.frames;
  const { width } = layout;
  const n = chain.count;
  const k = chain.engines.length;
  const blocks: Float64Array[] = [];

  const recorder: Recorder = {
    frames: 0,
    take(now) {
      const slot = recorder.frames % held;
      if (slot === 0 && recorder.frames > 0) blocks.push(chain.frames.block.slice());
      chain.takeFrame(slot, now);
      recorder.frames++;
    },
    finish() {
      const { frames } = recorder;
      const all = [...blocks, chain.frames.block];
      /** The column whose values stand at `at` in every frame, `wide` of them. */
      const column = (at: number, wide: number) => {
        const values = new Float64Array(frames * wide);
        for (let f = 0; f < frames; f++) {
          const from = (f % held) * width + at;
          const block = all[Math.floor(f / held)]!;
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
  return recorder;
}
