import type { Chain } from './chain.ts';
import { chainageAt } from './routeTables.ts';
import type { RunEvent, RunEventKind } from './types.ts';

/** Slip slower than this is creep, not an event, m/s. */
const SLIP_SPEED = 0.005;
/** Wheels that have gripped this long have found their grip again, s. */
const GRIP_TIME = 0.2;
/** A blow weaker than this share of the lighter neighbour's weight is not worth an event. */
const BLOW_SHARE = 0.05;
/** Blows of one kind nearer together than this belong to one wave through the train, s. */
const WAVE_TIME = 0.6;

/** Watches a running chain and writes down what happens. */
export interface EventLog {
  readonly events: RunEvent[];
  /** After every step. */
  afterStep(time: number): void;
  /** At every frame, once the chain has taken it. */
  atFrame(time: number): void;
  note(kind: RunEventKind, time: number, subject: number, value: number): void;
  /** Whether an event may follow from the mere passing of time: then every step must be shown. */
  watching(): boolean;
}

/** A log that begins with a train at rest. `weights` of the vehicles and `forces` of the joints as it stands, N. */
export function createEventLog(chain: Chain, weights: Float64Array, forces: readonly number[]): EventLog {
  const events: RunEvent[] = [];
  const slipping = chain.engines.map(() => ({ active: false, gripped: 0 }));
  const joints = chain.count - 1;
  /** -1 in buff, 0 slack, 1 in draft, as of the last frame. */
  const contact = Int8Array.from(forces, Math.sign);
  let standing = true;
  let parted = 0;
  let recoupled = 0;
  const waves = {
    'run-in': { time: Number.NEGATIVE_INFINITY, index: -1 },
    'run-out': { time: Number.NEGATIVE_INFINITY, index: -1 },
  };

  const vehiclePlace = (i: number) => chainageAt(chain.tables, chain.sigma(i));
  const jointPlace = (j: number) => chainageAt(chain.tables, 0.5 * (chain.sigma(j) + chain.sigma(j + 1)));
  const isJoint = (kind: RunEventKind) =>
    kind === 'run-in' || kind === 'run-out' || kind === 'parting' || kind === 'recoupling';

  const log: EventLog = {
    events,
    watching: () => slipping.some(({ active }) => active),
    note(kind, time, subject, value) {
      const chainage = isJoint(kind) ? jointPlace(subject) : vehiclePlace(subject);
      events.push({ kind, time, chainage, subject, value });
    },
    afterStep(time) {
      for (let k = 0; k < slipping.length; k++) {
        const engine = chain.engines[k]!;
        const state = slipping[k]!;
        const slip = engine.rimSpeed - engine.speed;
        if (engine.mode === 'slip' && Math.abs(slip) > SLIP_SPEED) {
          if (!state.active) log.note('slip', time, engine.vehicle, slip);
          state.active = true;
          state.gripped = time;
        } else if (state.active && time - state.gripped > GRIP_TIME) {
          state.active = false;
          log.note('grip', time, engine.vehicle, chain.speed(engine.vehicle));
        }
      }
      for (; parted < chain.parted.length; parted++) {
        const { joint, force } = chain.parted[parted]!;
        log.note('parting', time, joint, force);
      }
      for (; recoupled < chain.recoupled.length; recoupled++)
        log.note('recoupling', time, chain.recoupled[recoupled]!, 0);
    },
    atFrame(time) {
      const { block, layout, slot, contactNews, standing: still } = chain.frames;
      const at = slot * layout.width;
      // Where no contact has changed no joint was met with a blow.
      for (let j = 0; contactNews && j < joints; j++) {
        const draft = block[at + layout.draftPeak + j]!;
        const buff = block[at + layout.buffPeak + j]!;
        const least = BLOW_SHARE * Math.min(weights[j]!, weights[j + 1]!);
        if (contact[j]! >= 0 && -buff > least) blow('run-in', time, j, buff);
        if (contact[j]! <= 0 && draft > least) blow('run-out', time, j, draft);
        contact[j] = Math.sign(block[at + layout.force + j]!);
      }
      if (still !== standing) {
        standing = still;
        log.note(still ? 'standstill' : 'moving', time, 0, 0);
      }
    },
  };

  /** Opens a wave, or lets a stronger blow stand for the wave that is passing. */
  function blow(kind: 'run-in' | 'run-out', time: number, j: number, force: number): void {
    const wave = waves[kind];
    const passing = wave.index >= 0 && time - wave.time < WAVE_TIME;
    wave.time = time;
    if (!passing) {
      wave.index = events.length;
      log.note(kind, time, j, force);
    } else if (Math.abs(force) > Math.abs(events[wave.index]!.value)) {
      events[wave.index] = { kind, time, chainage: jointPlace(j), subject: j, value: force };
    }
  }

  return log;
}
