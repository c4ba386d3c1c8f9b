import type { Director } from './director.ts';
import type { Shown } from './shown.ts';

/** What the stage shows, to read: for tests that drive the page from outside. Nothing can be changed through it. */
export interface StageProbe {
  /** Frames drawn since the page was opened. */
  readonly frames: number;
  /** Time the last frame took to draw, ms, without the card's own work. */
  readonly frameTime: number;
  readonly camera: string | null;
  /** Where the eye is, m. */
  readonly eye: readonly number[];
  /** Vehicles standing on the stage. */
  readonly vehicles: number;
  /** Place of the first vehicle's origin, m; null without a train. */
  readonly firstVehicle: readonly number[] | null;
  readonly lens: { readonly joint: number; readonly share: number } | null;
  /** Trial time that the picture shows, s. */
  readonly time: number;
  readonly calls: number;
  readonly vertices: number;
  readonly geometries: number;
}

declare global {
  interface Window {
    __stage?: StageProbe;
  }
}

/** Puts the probe on the window; the returned function takes each frame's facts. */
export function showProbe(director: Director): {
  frame(shown: Shown | null, took: number, memory: { calls: number; vertices: number; geometries: number }): void;
  remove(): void;
} {
  let frames = 0;
  let last: { shown: Shown | null; took: number; memory: { calls: number; vertices: number; geometries: number } } = {
    shown: null,
    took: 0,
    memory: { calls: 0, vertices: 0, geometries: 0 },
  };
  const probe: StageProbe = {
    get frames() {
      return frames;
    },
    get frameTime() {
      return last.took;
    },
    get camera() {
      return director.rig?.mode ?? null;
    },
    get eye() {
      return director.world.camera.position.toArray();
    },
    get vehicles() {
      return director.world.standing ? (director.world.train?.placements.length ?? 0) : 0;
    },
    get firstVehicle() {
      const placed = director.world.standing ? director.world.train?.placements[0] : undefined;
      return placed === undefined ? null : [...placed.origin];
    },
    get lens() {
      const lens = last.shown?.lens;
      return lens ? { joint: lens.joint, share: lens.share } : null;
    },
    get time() {
      return last.shown?.time ?? 0;
    },
    get calls() {
      return last.memory.calls;
    },
    get vertices() {
      return last.memory.vertices;
    },
    get geometries() {
      return last.memory.geometries;
    },
  };
  window.__stage = probe;
  return {
    frame(shown, took, memory) {
      frames++;
      last = { shown, took, memory };
    },
    remove() {
      if (window.__stage === probe) delete window.__stage;
    },
  };
}
