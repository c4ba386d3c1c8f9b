import type { Chain } from './chain.ts';
import type { Run } from './types.ts';

export type Recorded = Omit<Run, 'interval' | 'events' | 'outcome' | 'energy' | 'steps'>;

export interface Recorder {
  frames: number;
  /** Takes down the chain as it stands at `time`, and begins its peaks anew. */
  take(time: number): void;
  finish(): Recorded;
}

/** Frames a block of memory holds. Whole frames are written one after another and sorted into columns at the end. */
const BLOCK = 256;

/** Values of one engine in a frame, in the order of the run's columns. */
const ENGINE_VALUES = 7;

export function createRecorder(chain: Chain): Recorder {
  const n = chain.count;
  const k = chain.engines.length;
  const joints = 1 + 2 * n;
  const enginesAt = joints + 4 * (n - 1);
  const width = enginesAt + ENGINE_VALUES * k;
  const blocks: Float64Array[] = [];
  const drivenMass = chain.engines.reduce((sum, engine) => sum + engine.drive.drivenMass, 0);

  const recorder: Recorder = {
    frames: 0,
    take(now) {
      const f = recorder.frames++;
      if (f % BLOCK === 0) blocks.push(new Float64Array(BLOCK * width));
      const out = blocks[blocks.length - 1]!;
      const at = (f % BLOCK) * width;
      out[at] = now;
      const asked = chain.takeFrame(wayOf(chain));
      out.set(chain.frame.all, at + 1);
      for (let e = 0; e < k; e++) {
        const engine = chain.engines[e]!;
        const to = at + enginesAt + e;
        out[to] = engine.setting;
        out[to + k] = engine.rimSpeed;
        out[to + 2 * k] = engine.railForce;
        out[to + 3 * k] = engine.gripLimit > 0 ? Math.abs(engine.railForce) / engine.gripLimit : 0;
        out[to + 4 * k] = engine.drive.stallForce * Math.abs(engine.setting);
        out[to + 5 * k] = engine.gripLimit;
        out[to + 6 * k] = (asked * engine.drive.drivenMass) / drivenMass;
      }
    },
    finish() {
      const frames = recorder.frames;
      /** The column whose values stand at `at` in every frame, `wide` of them. */
      const column = (at: number, wide: number) => {
        const all = new Float64Array(frames * wide);
        for (let f = 0; f < frames; f++) {
          const from = (f % BLOCK) * width + at;
          const block = blocks[Math.floor(f / BLOCK)]!;
          for (let i = 0; i < wide; i++) all[f * wide + i] = block[from + i]!;
        }
        return all;
      };
      const jointColumn = (q: number) => column(joints + q * (n - 1), n - 1);
      const engineColumn = (q: number) => column(enginesAt + q * k, k);
      return {
        frames,
        vehicles: n,
        time: column(0, 1),
        chainage: column(1, n),
        speed: column(1 + n, n),
        force: jointColumn(0),
        draftPeak: jointColumn(1),
        buffPeak: jointColumn(2),
        extension: jointColumn(3),
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

/** The way the engines are asked to go: 1 along the path, -1 back. */
function wayOf(chain: Chain): number {
  for (const engine of chain.engines) if (engine.setting !== 0) return Math.sign(engine.setting);
  return 1;
}
