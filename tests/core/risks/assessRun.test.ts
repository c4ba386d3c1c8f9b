import { describe, expect, it } from 'vitest';
import { assessRun, riskById, risks } from '../../../src/core/risks/index.ts';
import type { RiskDefinition } from '../../../src/core/risks/types.ts';
import { straight } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { madeUpTrial, passing, sampleDrive } from './samples.ts';

const level = sampleTrack([straight(6)]);
const body = { pivotSpacing: 0.1, overhang: 0.03 };
const engine = sampleVehicle(body, { kind: 'locomotive', drive: sampleDrive() });
const coach = sampleVehicle(body);
const train = [engine, coach, coach, coach];

describe('a whole run', () => {
  const context = madeUpTrial(level, train, passing(2, 4, 0.01, { force: 0.1, gripUse: 0.5 }));
  const series = assessRun(context);

  it('has a row for every risk that can arise, frames by subjects', () => {
    const shape = Object.fromEntries(series.map((row) => [row.risk, row.margins.length / row.subjects]));
    // No buffers, no deck above and no curve.
    const told = ['stall', 'wheelspin', 'override', 'coupler-swing', 'parting', 'wheel-climb', 'jack-knife'];
    expect(shape).toEqual(Object.fromEntries(told.map((risk) => [risk, 201])));
    expect(series.find((row) => row.risk === 'parting')?.subjects).toBe(3);
    expect(series.find((row) => row.risk === 'wheelspin')?.subjects).toBe(1);
  });

  it('places joints between their vehicles and vehicles at their origin', () => {
    const parting = series.find((row) => row.risk === 'parting');
    const { chainage } = context.run;
    expect(parting?.chainages[7 * 3 + 1]).toBeCloseTo((chainage[7 * 4 + 1] + chainage[7 * 4 + 2]) / 2, 9);
    expect(series.find((row) => row.risk === 'wheelspin')?.chainages[7]).toBe(chainage[7 * 4]);
  });

  it('names the first of equal worst moments', () => {
    const even: RiskDefinition = {
      ...riskById('override'),
      prepare: () => ({
        sample: (_, __, out) => {
          out.margin = 1;
        },
        parts: () => [],
      }),
    };
    const [{ worst }] = assessRun(context, [even]);
    expect([worst?.frame, worst?.subject]).toEqual([0, 0]);
  });

  it('has no worst where it has nothing to say', () => {
    expect(series.find((row) => row.risk === 'override')?.worst).toBeNull();
    expect(series.find((row) => row.risk === 'stall')?.worst).toBeNull();
  });

  it('names every risk once', () => {
    expect(new Set(risks.map(({ id }) => id)).size).toBe(risks.length);
    for (const { plenty, near } of risks) expect(near).toBeLessThan(plenty);
  });

  it('shares between rows only where their subjects are, so that a run can be handed to another thread', () => {
    const margins = series.map((row) => row.margins.buffer);
    expect(new Set(margins).size).toBe(margins.length);
    for (const row of series) {
      const { subject } = riskById(row.risk);
      const alike = series.filter((other) => riskById(other.risk).subject === subject);
      for (const other of series) expect(other.chainages === row.chainages).toBe(alike.includes(other));
    }
  });
});

describe('a risk given from outside the list', () => {
  it('needs no more than its definition: here the second vehicle runs out of track', () => {
    const endOfTrack: RiskDefinition = {
      id: 'headroom',
      subject: 'vehicle',
      unit: 'length',
      plenty: 1,
      near: 0.1,
      prepare: ({ path, run }) => ({
        sample(frame, vehicle, out) {
          out.value = run.chainage[frame.index * run.vehicles + vehicle];
          out.limit = path.track.length;
          out.margin = vehicle === 1 ? out.limit - out.value : Number.NaN;
          out.governing = null;
        },
        parts: () => [],
      }),
    };
    const moments = passing(2, 3, 0.25);
    const { worst, margins } = assessRun(madeUpTrial(level, train, moments), [endOfTrack])[0];
    expect(margins).toHaveLength(5 * 4);
    expect(worst?.frame).toBe(4);
    expect(worst?.subject).toBe(1);
    expect(worst?.margin).toBeCloseTo(6 - (3 - 0.164), 9);
  });
});

describe('a light engine', () => {
  it('has no joints and is assessed all the same', () => {
    const series = assessRun(madeUpTrial(level, [engine], [{ lead: 2, gripUse: 0.3 }]));
    expect(series.map((row) => row.risk)).toEqual(['stall', 'wheelspin']);
  });
});
