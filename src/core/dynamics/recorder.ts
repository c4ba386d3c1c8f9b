import { chainageAtRail, type Track } from '../track/index.ts';
import type { Chain } from './chain.ts';
import { frictionOf, locateJoints, Row } from './chainRows.ts';
import type { Run } from './types.ts';

/** A growing typed-array column of a run: one row of `width` values a frame. */
class Column {
  private data: Float64Array;
  constructor(
    readonly width: number,
    frames: number,
  ) {
    this.data = new Float64Array(width * frames);
  }
  /** Makes room for frame f. */
  reserve(f: number): void {
    const end = (f + 1) * this.width;
    if (end <= this.data.length) return;
    const grown = new Float64Array(2 * end);
    grown.set(this.data);
    this.data = grown;
  }
  set(f: number, i: number, value: number): void {
    this.data[f * this.width + i] = value;
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
  const columns: Column[] = [];
  const column = (width: number) => {
    const made = new Column(width, FIRST_FRAMES);
    columns.push(made);
    return made;
  };
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
      for (const made of columns) made.reserve(f);
      const { state, engines } = chain;
      locateJoints(state);
      const { rows } = state;
      const way = wayOf(chain);
      let asked = 0;
      time.set(f, 0, now);
      for (let i = 0; i < n; i++) {
        const v = i * Row.stride;
        chainage.set(f, i, chainageAtRail(track, chain.sigma(i)));
        speed.set(f, i, rows[v + Row.speed]!);
        asked +=
          way * rows[v + Row.grade]! + frictionOf(rows, v) + rows[v + Row.viscous]! * Math.abs(rows[v + Row.speed]!);
      }
      for (let j = 0; j < n - 1; j++) {
        const v = j * Row.stride;
        force.set(f, j, chain.force(j));
        draftPeak.set(f, j, rows[v + Row.draftPeak]!);
        buffPeak.set(f, j, rows[v + Row.buffPeak]!);
        extension.set(f, j, rows[v + Row.extension]!);
      }
      chain.resetPeaks();
      for (let e = 0; e < k; e++) {
        const engine = engines[e]!;
        setting.set(f, e, engine.setting);
        rimSpeed.set(f, e, engine.rimSpeed);
        railForce.set(f, e, engine.railForce);
        gripUse.set(f, e, engine.gripLimit > 0 ? Math.abs(engine.railForce) / engine.gripLimit : 0);
        motorLimit.set(f, e, engine.drive.stallForce * Math.abs(engine.setting));
        gripLimit.set(f, e, engine.gripLimit);
        demand.set(f, e, (asked * engine.drive.drivenMass) / drivenMass);
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
