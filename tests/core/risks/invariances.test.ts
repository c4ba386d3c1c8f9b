import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { RiskContext, RiskSeries } from '../../../src/core/risks/types.ts';
import type { Buffers, Coupling, Vehicle } from '../../../src/core/stock/types.ts';
import { makeTrack, straight, type Track } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle, variedElements, variedGrades } from '../stock/samples.ts';
import { madeUpTrial, passing } from './samples.ts';
import { mirroredTrack, scaledTrack, scaledVehicle } from './similar.ts';

/** Buffers just apart at the free length, heads at unlike heights, one van longer than the other. */
const buffers: Buffers = { spacing: 0.02, height: 0.012, headWidth: 0.006, headHeight: 0.005, length: 0.005 };
const coupling: Partial<Coupling> = { pivotInset: 0.008, reach: 0.014, slack: 0.001, faceTilt: 0.5, release: 3 };
const long = sampleVehicle({ pivotSpacing: 0.13, overhang: 0.032, buffers, coupling }, { massAhead: 0.01 });
const short = sampleVehicle({
  pivotSpacing: 0.07,
  overhang: 0.025,
  buffers,
  coupling: { ...coupling, headHeight: 0.0104 },
});
const train = [long, short, short, long];

const route = (radius: number): Track => sampleTrack(variedElements(radius), variedGrades);
/** The same route as a bridge over itself, 90 mm up. */
const lifted = (track: Track, by: number): Track =>
  makeTrack({
    ...track.spec,
    profile: { points: track.spec.profile.points.map((point) => ({ ...point, height: point.height + by })) },
  });
const trialOn = (track: Track, vehicles: readonly Vehicle[], size: number, force: number): RiskContext =>
  madeUpTrial(
    track,
    vehicles,
    passing(0.75 * size, track.length - 0.2 * size, 0.07 * size, {
      force,
      // Speeds that throw outward alike at every size.
      speed: vehicles.map(() => 0.2 * Math.sqrt(size)),
    }),
    {
      surroundings: {
        tracks: [track, lifted(track, 0.09 * size)],
        deckDepth: 0.017 * size,
        deckHalfWidth: 0.03 * size,
      },
    },
  );

const radius = fc.double({ min: 0.55, max: 1.2, noNaN: true });
const force = fc.double({ min: 0.02, max: 1.5, noNaN: true }).chain((size) => fc.constantFrom(size, -size));

/** Margins of two assessments side by side: NaN where the other is, else within `within` after `scale`. */
function expectSame(one: readonly RiskSeries[], other: readonly RiskSeries[], within: number, scale = 1): void {
  expect(other.map((row) => row.risk)).toEqual(one.map((row) => row.risk));
  one.forEach((row, r) => {
    const plain = riskById(row.risk).unit !== 'length';
    row.margins.forEach((margin, at) => {
      const counterpart = other[r].margins[at] / (plain ? 1 : scale);
      if (Number.isNaN(margin)) expect(counterpart).toBeNaN();
      else expect(Math.abs(counterpart - margin), `${row.risk} at ${at}`).toBeLessThan(within);
    });
  });
}

describe('margins', () => {
  it('of this train are hand-checked once: heads 0.5 mm apart on the level straight leave 3.0 - 0.5 mm in buff', () => {
    const straightOn = trialOn(sampleTrack([straight(3)]), train, 1, -0.1);
    const override = assessRun(straightOn).find((row) => row.risk === 'override');
    expect(override?.margins[0]).toBeCloseTo(0.0025, 9);
  });

  it('are those of the mirror image', () => {
    fc.assert(
      fc.property(radius, force, (r, f) => {
        const track = route(r);
        // A chord placed to 1e-13 m and a pin to 1e-12 m; a deck looked up through its nearest point may pick the other of two equal ones.
        expectSame(assessRun(trialOn(track, train, 1, f)), assessRun(trialOn(mirroredTrack(track), train, 1, f)), 1e-8);
      }),
      { numRuns: 12 },
    );
  });

  it('grow with the model: lengths by k, masses and forces by k³, angles and shares not', () => {
    fc.assert(
      fc.property(radius, force, fc.double({ min: 0.5, max: 3, noNaN: true }), (r, f, k) => {
        const track = route(r);
        const larger = scaledTrack(track, k);
        const grown = train.map((vehicle) => scaledVehicle(vehicle, k));
        const one = assessRun(trialOn(track, train, 1, f));
        const other = assessRun(trialOn(larger, grown, k, f * k ** 3));
        // A chord placed to 1e-13 m and a pin to 1e-12 m at either size.
        expectSame(one, other, 1e-8, k);
      }),
      { numRuns: 12 },
    );
  });
});
