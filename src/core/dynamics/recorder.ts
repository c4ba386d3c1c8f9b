import { chainageAtRail, type Track } from '../track/index.ts';
import type { Chain } from './chain.ts';
import { gatherJoints } from './sweeps.ts';
import type { Run } from './types.ts';

/** Growing typed-array columns of a run: one row of `width` values a frame. */
class Column {
  private data: Float64Array;
  constructor(
    readonly width: number,
    frames: number,
  ) {
    this.data = new Float64Array(width * frames);
  }
  /** The place of frame f's row, made room for. */
  row(f: number): Float64Array {
    const end = (f + 1) * this.width;
    if (end > this.data.length) {
      const grown = new Float64Array(Math.max(end, 2 * this.data.length));
      grown.set(this.data);
      this.data = grown;
    }
    return this.data.subarray(f * this.width, end);
  }
  taken(frames: number): Float64Array {
    return this.data.slice(0, frames * this.width);
  }
}

export type Recorded = Omit<Run, 'interval' | 'events' | 'outcome' | 'energy' | 'steps'>;

export interface Recorder {
  frames: number;
  /** Takes down the chain as it stands at `time`. */
  take(time: number): void;
  finish(): Recorded;
}

/** Columns start with room for this many frames and double from there. */
const FIRST_FRAMES = 1024;

export function createRecorder(chain: Chain, track: Track): Recorder {
  const n = chain.state.count;
  const k = chain.engines.length;
  const column = (width: number) => new Column(width, FIRST_FRAMES);
  const time = column(1);
  const chainage = column(n);
  const speed = column(n);
  const force = column(n - 1);
  const draftPeak = column(n - 1);
  const buffPeak = column(n - 1);
  const extension = column(n - 1);
  const setting = column(k);
  const rimSpeed = column(k);
  const railForce = column(k);
  const gripUse = column(k);
  const motorLimit = column(k);
  const gripLimit = column(k);
  const demand = column(k);
  const drivenMass = chain.engines.reduce((sum, engine) => sum + engine.drive.drivenMass, 0);

  const recorder: Recorder = {
    frames: 0,
    take(now) {
      const f = recorder.frames++;
      time.row(f)[0] = now;
      const place = chainage.row(f);
      for (let i = 0; i < n; i++) place[i] = chainageAtRail(track, chain.state.sigma[i]!);
      gatherJoints(chain.state);
      speed.row(f).set(chain.state.speed);
      force.row(f).set(chain.state.force.subarray(0, n - 1));
      draftPeak.row(f).set(chain.state.draftPeak.subarray(0, n - 1));
      buffPeak.row(f).set(chain.state.buffPeak.subarray(0, n - 1));
      extension.row(f).set(chain.state.extension.subarray(0, n - 1));
      chain.resetPeaks();
      const way = wayOf(chain);
      let asked = 0;
      for (let i = 0; i < n; i++) asked += way * chain.state.gravity[i]! + chain.state.drag[i]!;
      for (let e = 0; e < k; e++) {
        const engine = chain.engines[e]!;
        setting.row(f)[e] = engine.setting;
        rimSpeed.row(f)[e] = engine.rimSpeed;
        railForce.row(f)[e] = engine.railForce;
        gripUse.row(f)[e] = engine.gripLimit > 0 ? Math.abs(engine.railForce) / engine.gripLimit : 0;
        motorLimit.row(f)[e] = engine.drive.stallForce * Math.abs(engine.setting);
        gripLimit.row(f)[e] = engine.gripLimit;
        demand.row(f)[e] = (asked * engine.drive.drivenMass) / drivenMass;
      }
    },
    finish() {
      const f = recorder.frames;
      return {
        frames: f,
        vehicles: n,
        time: time.taken(f),
        chainage: chainage.taken(f),
        speed: speed.taken(f),
        force: force.taken(f),
        draftPeak: draftPeak.taken(f),
        buffPeak: buffPeak.taken(f),
        extension: extension.taken(f),
        locomotives: Int32Array.from(chain.engines, (engine) => engine.vehicle),
        setting: setting.taken(f),
        rimSpeed: rimSpeed.taken(f),
        railForce: railForce.taken(f),
        gripUse: gripUse.taken(f),
        motorLimit: motorLimit.taken(f),
        gripLimit: gripLimit.taken(f),
        demand: demand.taken(f),
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
