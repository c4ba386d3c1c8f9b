import type { RiskContext } from '../../../src/core/risks/types.ts';
import type { Coupling, Vehicle } from '../../../src/core/stock/types.ts';
import { makeTrack, reverseTrack, straight, type Track } from '../../../src/core/track/index.ts';
import { type Moment, madeUpTrial, passing, type Setting, sampleDrive } from '../risks/samples.ts';
import { sampleVehicle } from '../stock/samples.ts';

/** A straight ramp of 2 % over supports 300 mm apart, some of them off by so much, m. */
export function ramp(off: Readonly<Record<number, number>>, hinges: readonly number[] = []): Track {
  const length = 6;
  return makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(length)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: length, height: 0.02 * length },
      ],
      strip: {
        supports: Array.from({ length: 21 }, (_, i) => ({ chainage: 0.3 * i, departure: off[i] ?? 0 })),
        hinges,
      },
    },
  });
}

/** A van whose heads and faces meet at the body end. */
export const van = (coupling: Partial<Coupling> = {}, change: Partial<Vehicle> = {}): Vehicle =>
  sampleVehicle(
    { pivotSpacing: 0.2, overhang: 0.045, coupling: { pivotInset: 0.01, reach: 0.01, ...coupling } },
    { name: 'Van', kind: 'wagon', ...change },
  );

export const engine = (change: Partial<Vehicle> = {}): Vehicle =>
  sampleVehicle(
    { pivotSpacing: 0.1, overhang: 0.03 },
    { name: 'Engine', kind: 'locomotive', mass: 0.2, drive: sampleDrive(), ...change },
  );

/** A train taken along a track at even places, the track's own way or the other. */
export function along(
  track: Track,
  vehicles: readonly Vehicle[],
  moment: Omit<Moment, 'lead'>,
  setting: Setting & { readonly from?: number; readonly to?: number; readonly step?: number } = {},
): RiskContext {
  const { from = 1.2, to = track.length - 0.2, step = 0.01 } = setting;
  const path = setting.reversed ? reverseTrack(track) : track;
  return madeUpTrial(path, vehicles, passing(from, to, step, moment), {
    surroundings: { tracks: [track], deckDepth: 0.017 },
    ...setting,
  });
}
