import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beamReactions,
  beamSag,
  beamState,
  bentStrip,
  gradeBreaks,
  makeTrack,
  type StripSpec,
  straight,
  stripMaterials,
  stripSection,
  TrackError,
  trackPoint,
} from '../../../../src/core/track/index.ts';
import { evenly } from '../../../evenly.ts';

const supportsAt = (span: number, ...departures: number[]): StripSpec['supports'] =>
  departures.map((departure, i) => ({ chainage: i * span, departure }));

const refusal = (spec: StripSpec): TrackError => {
  try {
    bentStrip(spec);
  } catch (error) {
    if (error instanceof TrackError) return error;
  }
  throw new Error('nothing was refused');
};

/** Nine supports 0.2 m apart, joints between and at them, two strips, a weight; what the draws leave standing. */
const anyLoadedStrip: fc.Arbitrary<StripSpec> = fc
  .record({
    departures: fc.array(evenly(-0.004, 0.004), { minLength: 9, maxLength: 9 }),
    hinges: fc.uniqueArray(fc.constantFrom(0.32, 0.53, 0.8, 1.13, 1.4), { maxLength: 3 }),
    change: fc.constantFrom(0.4, 1, 1.2),
    thin: fc.double({ min: 2, max: 40, noNaN: true }),
    at: fc.double({ min: 0.01, max: 1.59, noNaN: true }),
    force: evenly(0, 20),
    clamped: fc.boolean(),
  })
  .map(({ departures, hinges, change, thin, at, force, clamped }) => ({
    supports: supportsAt(0.2, ...departures),
    hinges: hinges.sort((p, q) => p - q),
    steps: hinges.slice(0, 1).map((chainage) => ({ chainage, rise: 0.001, over: 0.03 })),
    sections: [
      { from: 0, stiffness: 40, weight: 6 },
      { from: change, stiffness: thin, weight: 3 },
    ],
    loads: [{ chainage: at, force }],
    creep: 0,
    clampedStart: clamped,
  }));

describe('a strip with weight', () => {
  it('rests its whole weight on its supports, and balances about its start when free there', () => {
    fc.assert(
      fc.property(anyLoadedStrip, (strip) => {
        const [first, second] = strip.sections ?? [];
        const load = strip.loads?.[0] ?? { chainage: 0, force: 0 };
        const thick = second.from * first.weight;
        const thin = (1.6 - second.from) * second.weight;
        const reactions = beamReactions(strip);
        expect(reactions.reduce((sum, r) => sum + r, 0)).toBeCloseTo(thick + thin + load.force, 9);
        const turning = reactions.reduce((sum, r, i) => sum + r * 0.2 * i, 0);
        const weighed = (thick * second.from) / 2 + (thin * (second.from + 1.6)) / 2 + load.force * load.chainage;
        expect(turning - beamState(strip, 0).moment).toBeCloseTo(weighed, 9);
      }),
    );
  });

  it('keeps its supports, and its moment and shear at every support without a joint but for what that carries', () => {
    fc.assert(
      fc.property(anyLoadedStrip, (strip) => {
        const { steps: _steps, ...sawn } = strip;
        const reactions = beamReactions(sawn);
        sawn.supports.forEach(({ chainage, departure }, i) => {
          expect(beamState(sawn, chainage).departure).toBeCloseTo(departure, 13);
          const parted = sawn.hinges.some((hinge) => Math.abs(hinge - chainage) < 1e-6);
          if (i === 0 || i === 8 || parted) return;
          const [before, after] = [beamState(sawn, chainage - 1e-9), beamState(sawn, chainage + 1e-9)];
          expect(after.slope).toBeCloseTo(before.slope, 7);
          expect(after.moment).toBeCloseTo(before.moment, 5);
          expect(after.shear - before.shear).toBeCloseTo(reactions[i], 5);
        });
        for (const hinge of sawn.hinges) {
          if (sawn.supports.some((support) => Math.abs(support.chainage - hinge) < 1e-6)) continue;
          const [before, after] = [beamState(sawn, hinge - 1e-9), beamState(sawn, hinge + 1e-9)];
          expect(Math.abs(before.moment) + Math.abs(after.moment)).toBeLessThan(1e-6);
          expect(after.shear).toBeCloseTo(before.shear, 5);
        }
      }),
    );
  });

  it('bends as the sum of what supports, weight and load do alone', () => {
    fc.assert(
      fc.property(anyLoadedStrip, evenly(0, 1.6), (strip, s) => {
        const none = strip.supports.map((support) => ({ ...support, departure: 0 }));
        const weightless = strip.sections?.map((section) => ({ ...section, weight: 0 })) ?? [];
        const { steps: _steps, ...plain } = strip;
        const supportsAlone = { ...strip, sections: weightless, loads: [] };
        const weightAlone = { ...plain, supports: none, loads: [] };
        const loadAlone = { ...plain, supports: none, sections: weightless };
        const sum = [supportsAlone, weightAlone, loadAlone].reduce((y, part) => y + beamState(part, s).departure, 0);
        expect(beamState(strip, s).departure).toBeCloseTo(sum, 12);
      }),
    );
  });

  it('sags more in time by the creep, and its supports carry the same', () => {
    // A single span: 5wl⁴/384EI, then 1.8 times as much.
    const strip: StripSpec = {
      supports: supportsAt(0.4, 0, 0),
      hinges: [],
      sections: [{ from: 0, stiffness: 10, weight: 6 }],
      creep: 0.8,
    };
    const atOnce = (5 * 6 * 0.4 ** 4) / (384 * 10);
    const pieces = bentStrip(strip);
    const [a, b, c, d, e] = [pieces.a[1], pieces.b[1], pieces.c[1], pieces.d[1], pieces.e[1]];
    expect(a + 0.2 * (b + 0.2 * (c + 0.2 * (d + 0.2 * e)))).toBeCloseTo(-1.8 * atOnce, 15);
    expect(beamReactions(strip)[0]).toBeCloseTo(1.2, 14);
  });

  it('gives way most to a train over the middle of an end span', () => {
    const strip: StripSpec = {
      supports: supportsAt(0.3, 0, 0, 0, 0),
      hinges: [],
      sections: [stripSection(stripMaterials['birch-ply'], 0.006, 0.06)],
    };
    const middle = beamSag(strip, 3, 0.15);
    expect(middle).toBeGreaterThan(beamSag(strip, 3, 0.45));
    expect(middle).toBeGreaterThan(beamSag(strip, 3, 0.05));
    // 300 g between supports 300 mm apart on 6 mm ply: less than the simple beam's Pl³/48EI = 0.174 mm.
    expect(middle * 1000).toBeGreaterThan(0.1);
    expect(middle * 1000).toBeLessThan((3 * 0.3 ** 3 * 1000) / (48 * 9.72));
  });
});

describe('a strip that changes its thickness', () => {
  it('bends more where it is thinner: a raised support draws the slack side into the curve', () => {
    // Two spans, right one of stiffness k times the left: moment at the raised support is 3·2δ/(h²(1 + 1/k))·EI.
    const strip = (k: number): StripSpec => ({
      supports: supportsAt(1, 0, 0.01, 0),
      hinges: [],
      sections: [
        { from: 0, stiffness: 1, weight: 0 },
        { from: 1, stiffness: k, weight: 0 },
      ],
    });
    expect(beamState(strip(1), 1 - 1e-12).moment).toBeCloseTo(-0.03, 9);
    expect(beamState(strip(0.25), 1 - 1e-12).moment).toBeCloseTo(-0.06 / 5, 9);
  });
});

describe('a step at a joint', () => {
  const stepped = (over: number): StripSpec => ({
    supports: supportsAt(0.3, 0, 0, 0, 0, 0, 0),
    hinges: [0.75],
    steps: [{ chainage: 0.75, rise: 0.001, over }],
  });

  it('puts the strip up by its rise between one side and the other, and shares the tilt', () => {
    // Level supports, spans of 0.3 m, joint mid-span between supports 3 and 4: by symmetry each side is half a millimetre off.
    const before = beamState(stepped(1e-9), 0.75 - 1e-6);
    const after = beamState(stepped(1e-9), 0.75 + 1e-6);
    expect(before.departure).toBeCloseTo(-0.0005, 7);
    expect(after.departure).toBeCloseTo(0.0005, 7);
  });

  it('is bridged smoothly, steepest at 1.5 times the rise over the length where the strips lie level', () => {
    const strip: StripSpec = {
      supports: supportsAt(0.3, 0, 0, 0),
      hinges: [0.3],
      steps: [{ chainage: 0.3, rise: 0.001, over: 0.04 }],
    };
    // At a support the strip after the joint starts a millimetre up and runs down to the next support over 0.3 m.
    expect(beamState(strip, 0.28).departure).toBeCloseTo(0, 14);
    expect(beamState(strip, 0.32).departure).toBeCloseTo((0.001 * 0.28) / 0.3, 14);
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(0.6)],
      profile: { points: [{ chainage: 0, height: 0 }], strip },
    });
    expect(gradeBreaks(track)).toEqual([]);
    const rise = (0.001 * 0.28) / 0.3 / 0.04;
    // The cubic's slope in the middle is 1.5·rise - (sum of the end slopes)/4.
    expect(trackPoint(track, 0.3).grade).toBeCloseTo(1.5 * rise + 0.001 / 0.3 / 4, 13);
  });

  it('is refused away from a joint, without a length, and where bridges overlap', () => {
    const at = (chainage: number, over = 0.04): StripSpec => ({
      ...stepped(0.04),
      steps: [{ chainage, rise: 0.001, over }],
    });
    expect(refusal(at(0.7)).message).toBe('The step at chainage 0.7 m is at no joint of the strip.');
    expect(refusal(at(0.75, 0)).problem).toBe('bad-step');
    const two = {
      ...stepped(0.04),
      hinges: [0.73, 0.3],
      steps: [
        { chainage: 0.3, rise: 0.001, over: 0.5 },
        { chainage: 0.73, rise: 0.001, over: 0.5 },
      ],
    };
    expect(refusal(two)).toMatchObject({ problem: 'bad-step', amount: expect.closeTo(0.07, 12) });
  });
});

describe('what a strip cannot have', () => {
  const sections = [{ from: 0, stiffness: 1, weight: 1 }];
  const plain: StripSpec = { supports: supportsAt(0.3, 0, 0, 0), hinges: [] };

  it('is a section that starts within a span, out of order or without stiffness', () => {
    const within = refusal({ ...plain, sections: [...sections, { from: 0.4, stiffness: 1, weight: 1 }] });
    expect(within).toMatchObject({ problem: 'bad-section', chainage: 0.4, amount: expect.closeTo(0.1, 12) });
    expect(refusal({ ...plain, sections: [...sections, ...sections] }).problem).toBe('bad-section');
    expect(refusal({ ...plain, sections: [{ from: 0, stiffness: 0, weight: 1 }] }).problem).toBe('bad-section');
    expect(refusal({ ...plain, sections, creep: -1 }).problem).toBe('bad-section');
  });

  it('is a load without a stiffness under it, or off the supports', () => {
    expect(refusal({ ...plain, loads: [{ chainage: 0.1, force: 1 }] }).problem).toBe('bad-load');
    const beyond = refusal({ ...plain, sections, loads: [{ chainage: 0.7, force: 1 }] });
    expect(beyond).toMatchObject({ problem: 'bad-load', amount: expect.closeTo(0.1, 12) });
  });

  it('is a moment or a reaction without a stiffness', () => {
    expect(beamState(plain, 0.1).moment).toBeNaN();
    expect(() => beamReactions(plain)).toThrow(RangeError);
  });

  it('is no thickness', () => {
    expect(() => stripSection(stripMaterials.mdf, 0, 0.06)).toThrow(RangeError);
    // 12 mm by 100 mm of E 3 GPa: bt³/12 = 1.44e-8 m⁴ and 43.2 N·m²; 0.9 kg/m of board and 0.1 of track weigh 9.81 N/m.
    const section = stripSection(stripMaterials.mdf, 0.012, 0.1, 0.1);
    expect(section.stiffness).toBeCloseTo(43.2, 10);
    expect(section.weight).toBeCloseTo(9.80665, 10);
  });
});
