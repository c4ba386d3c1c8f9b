/** Why a machine gives no tilt: the page came over plain http, there is no sensor, or the person did not allow it. */
export type TiltTrouble = 'insecure' | 'missing' | 'refused';

/** How the machine lies: time in s from any beginning, turns about its vertical and its short edge, rad (W3C, Device Orientation). */
export interface Tilt {
  readonly time: number;
  readonly alpha: number;
  readonly beta: number;
}

/** The machine's own tilt sensor; the app wires it to the browser. */
export interface TiltPort {
  /** Begins to tell how the machine lies, many times a second; to be called on a tap, since the person may be asked. Null, or why not. */
  start(tell: (tilt: Tilt) => void): Promise<TiltTrouble | null>;
  stop(): void;
}

export const noTilt: TiltPort = { start: async () => 'missing', stop: () => {} };
