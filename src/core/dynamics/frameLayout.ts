/** Where the numbers of a frame stand, as the kernel writes it (kernel/assembly/frames.ts): columns one after another. */
export interface FrameLayout {
  /** One number, s; by vehicle, m and m/s; by joint, N and m; seven columns by engine. */
  readonly time: number;
  readonly chainage: number;
  readonly speed: number;
  readonly force: number;
  readonly draftPeak: number;
  readonly buffPeak: number;
  readonly extension: number;
  readonly engines: number;
  /** Numbers in a frame. */
  readonly width: number;
}

/** Columns by engine: setting, rim speed, rail force, grip in use, motor limit, grip limit, demand. */
const ENGINE_COLUMNS = 7;

/** The frame of a train of so many vehicles and engines. */
export function frameLayout(vehicles: number, engines: number): FrameLayout {
  const joints = vehicles - 1;
  const force = 1 + 2 * vehicles;
  return {
    time: 0,
    chainage: 1,
    speed: 1 + vehicles,
    force,
    draftPeak: force + joints,
    buffPeak: force + 2 * joints,
    extension: force + 3 * joints,
    engines: force + 4 * joints,
    width: force + 4 * joints + ENGINE_COLUMNS * engines,
  };
}
