import { describe, expect, it } from 'vitest';
import { beamReactions, beamSag, beamState, bentStrip, type StripSpec } from '../../src/core/track/index.ts';

/** Spans of `span` m on level supports, EI = 1 N·m² and 1 N/m unless said otherwise. */
const level = (count: number, span = 1, weight = 1, stiffness = 1): StripSpec => ({
  supports: Array.from({ length: count + 1 }, (_, i) => ({ chainage: i * span, departure: 0 })),
  hinges: [],
  sections: [{ from: 0, stiffness, weight }],
});

/** The greatest sag between two places and where, by walking. */
function deepest(strip: StripSpec, from: number, to: number): { sag: number; at: number } {
  let [sag, at] = [0, from];
  for (let i = 0; i <= 4000; i++) {
    const s = from + ((to - from) * i) / 4000;
    const here = -beamState(strip, s).departure;
    if (here > sag) [sag, at] = [here, s];
  }
  return { sag, at };
}

describe('a simply supported beam', () => {
  // Textbook formulas, from memory: 5wl⁴/384EI and wl²/8; Pl³/48EI and Pl/4; Pa²b²/3EIl under a load off the middle.
  it('under a uniform load sags by 5wl⁴/384EI with a moment of wl²/8', () => {
    const strip = level(1, 0.35, 2.5, 1.3);
    const { departure, moment, slope } = beamState(strip, 0.175);
    expect(-departure).toBeCloseTo((5 * 2.5 * 0.35 ** 4) / (384 * 1.3), 15);
    expect(moment).toBeCloseTo((2.5 * 0.35 ** 2) / 8, 14);
    expect(slope).toBeCloseTo(0, 15);
    expect(beamReactions(strip)).toEqual([expect.closeTo(0.4375, 14), expect.closeTo(0.4375, 14)]);
  });

  it('under a load in the middle sags by Pl³/48EI, off the middle by Pa²b²/3EIl under the load', () => {
    const strip = level(1, 0.6, 0, 2);
    expect(beamSag(strip, 3, 0.3)).toBeCloseTo((3 * 0.6 ** 3) / (48 * 2), 15);
    expect(beamSag(strip, 3, 0.2)).toBeCloseTo((3 * 0.2 ** 2 * 0.4 ** 2) / (3 * 2 * 0.6), 15);
    const loaded = { ...strip, loads: [{ chainage: 0.2, force: 3 }] };
    expect(beamState(loaded, 0.2).moment).toBeCloseTo((3 * 0.2 * 0.4) / 0.6, 14);
    expect(beamReactions(loaded)).toEqual([expect.closeTo(2, 14), expect.closeTo(1, 14)]);
    // Greatest sag of a load at b from the far end: Pb(l²-b²)^1.5/(9√3·EIl) at √((l²-b²)/3) from the near one; textbook, from memory.
    const b = 0.2;
    const mirrored = { ...strip, loads: [{ chainage: 0.4, force: 3 }] };
    const found = deepest(mirrored, 0, 0.6);
    expect(found.sag).toBeCloseTo((3 * b * (0.36 - b * b) ** 1.5) / (9 * Math.sqrt(3) * 2 * 0.6), 9);
    expect(found.at).toBeCloseTo(Math.sqrt((0.36 - b * b) / 3), 3);
  });
});

describe('a beam clamped at both ends', () => {
  const clamped = (strip: StripSpec): StripSpec => ({ ...strip, clampedStart: true, clampedEnd: true });

  it('under a uniform load has Wl²/12 at the ends, Wl²/24 in the middle and Wl³/384EI of sag', () => {
    // Civil Engineering Formulas, "Case 5. Beam fixed both ends, continuous load, uniformly distributed" (W the whole load).
    const strip = clamped(level(1, 2, 3, 5));
    const load = 6;
    expect(beamState(strip, 0).moment).toBeCloseTo((-load * 2) / 12, 13);
    expect(beamState(strip, 1).moment).toBeCloseTo((load * 2) / 24, 13);
    expect(-beamState(strip, 1).departure).toBeCloseTo((load * 2 ** 3) / (384 * 5), 14);
    // D = Wx²(l² - 2lx + x²)/24EIl, same page.
    expect(-beamState(strip, 0.5).departure).toBeCloseTo((load * 0.25 * (4 - 2 + 0.25)) / (24 * 5 * 2), 14);
  });

  it('under a load in the middle sags a quarter of the simple beam', () => {
    // Pl³/192EI; textbook formula, from memory.
    expect(beamSag(clamped(level(1, 0.5, 0, 2)), 4, 0.25)).toBeCloseTo((4 * 0.5 ** 3) / (192 * 2), 15);
  });

  it('at one end only carries 5/8 of a uniform load there', () => {
    // Propped cantilever: moment wl²/8 and 5wl/8 at the clamp, sag wl⁴/185EI at 0.4215 l from the prop; textbook, from memory.
    const strip = { ...level(1), clampedStart: true };
    expect(beamState(strip, 0).moment).toBeCloseTo(-1 / 8, 14);
    const found = deepest(strip, 0, 1);
    expect(1 / found.sag).toBeCloseTo(184.6, 1);
    expect(1 - found.at).toBeCloseTo(0.4215, 3);
  });
});

describe('a continuous beam of two equal spans under a uniform load', () => {
  // Civil Engineering Reference Manual, 15th edition: reactions 3/8, 5/4, 3/8 wL; moment -wL²/8 over the middle; 9/128 wL² in
  // the spans; sag 0.00541 wL⁴/EI at 0.4215 L; y = w/48EI·(L³x - 3Lx³ + 2x⁴).
  const strip = level(2);

  it('has the reactions and moments of the manual', () => {
    expect(beamReactions(strip)).toEqual([0.375, 1.25, 0.375].map((r) => expect.closeTo(r, 13)));
    expect(beamState(strip, 1).moment).toBeCloseTo(-1 / 8, 13);
    expect(beamState(strip, 3 / 8).moment).toBeCloseTo(9 / 128, 13);
  });

  it('sags by 0.00541 wL⁴/EI at 0.4215 L, along the printed curve', () => {
    const found = deepest(strip, 0, 1);
    // Printed cut off, not rounded: 0.0054161.
    expect(Math.floor(found.sag * 1e5)).toBe(541);
    expect(found.at).toBeCloseTo(0.4215, 3);
    for (const x of [0.1, 0.3, 0.7]) {
      expect(-beamState(strip, x).departure).toBeCloseTo((x - 3 * x ** 3 + 2 * x ** 4) / 48, 14);
    }
  });
});

describe('a continuous beam of three equal spans', () => {
  it('under a uniform load on all: 0.4 and 1.1 wL, -0.1 wL² and 0.0069 wL⁴/EI at 0.446 L', () => {
    // Engineering page of beam design formulas, case 4S-1 (three span, equal spans, uniformly distributed): reactions 0.400 and
    // 1.100 wL, moments 0.080, 0.100 and 0.025 wL², sag 0.0069 wL⁴/EI at 0.446 L.
    const strip = level(3);
    expect(beamReactions(strip)).toEqual([0.4, 1.1, 1.1, 0.4].map((r) => expect.closeTo(r, 13)));
    expect(beamState(strip, 0.4).moment).toBeCloseTo(0.08, 13);
    expect(beamState(strip, 1).moment).toBeCloseTo(-0.1, 13);
    expect(beamState(strip, 1.5).moment).toBeCloseTo(0.025, 13);
    const found = deepest(strip, 0, 1);
    expect(found.sag).toBeCloseTo(0.0069, 4);
    expect(found.at).toBeCloseTo(0.446, 3);
  });

  it('loaded on two spans only lifts off the far support: 0.383, 1.200, 0.450, -0.033 wL', () => {
    // The same collection, uniform load on two spans to one side: reactions as printed, moments 0.0735 at 0.383 L, 0.0534 in
    // the second span where its shear of 0.583 wL is used up (the page prints 0.538 L, its digits exchanged), -0.0333 at the third support, sag 0.0059 wL⁴/EI at 0.430 L.
    const strip = level(3);
    const part = {
      ...strip,
      sections: [
        { from: 0, stiffness: 1, weight: 1 },
        { from: 2, stiffness: 1, weight: 0 },
      ],
    };
    const reactions = beamReactions(part);
    [0.383, 1.2, 0.45, -0.033].forEach((r, i) => {
      expect(reactions[i]).toBeCloseTo(r, 3);
    });
    expect(beamState(part, 0.383).moment).toBeCloseTo(0.0735, 4);
    // Cut off, not rounded: 0.05347.
    expect(Math.floor(beamState(part, 1.583).moment * 1e4)).toBe(534);
    expect(beamState(part, 2).moment).toBeCloseTo(-0.0333, 4);
    const found = deepest(part, 0, 1);
    expect(found.sag).toBeCloseTo(0.0059, 4);
    expect(found.at).toBeCloseTo(0.43, 2);
  });
});

describe('settlement and trackbed sizes', () => {
  it('of the middle of three supports by δ draws 3EIδ/L² of moment there', () => {
    // Two equal spans, middle support sunk by δ: moment 3EIδ/L², textbook three-moment equation, from memory.
    const strip = {
      ...level(2, 0.5, 0, 4),
      supports: [0, -0.002, 0].map((departure, i) => ({ chainage: i * 0.5, departure })),
    };
    expect(beamState(strip, 0.5).moment).toBeCloseTo((3 * 4 * 0.002) / 0.25, 13);
  });

  it('leaves a 6 mm ply strip hundredths of a millimetre of sag over 350 mm under its own weight', () => {
    // E 9 GPa, 680 kg/m³: w/EI = ρg·12/(E·t²) whatever the width. 5wl⁴/384EI = 0.048 mm simply supported, a fifth of that in
    // a long continuous run (wl⁴/384EI); the size is a trade finding: "hundredths of a millimetre" (common practice, no source).
    const stiffness = (9e9 * 0.08 * 0.006 ** 3) / 12;
    const weight = 680 * 0.08 * 0.006 * 9.80665;
    const single = -beamState(level(1, 0.35, weight, stiffness), 0.175).departure;
    expect(single * 1000).toBeGreaterThan(0.01);
    expect(single * 1000).toBeLessThan(0.1);
    const inner = -beamState(level(9, 0.35, weight, stiffness), 4.5 * 0.35).departure;
    expect(inner / single).toBeCloseTo(0.2, 2);
  });

  it('is the same line whatever the stiffness when nothing weighs', () => {
    const supports = [0, 0.003, 0.001, 0.002].map((departure, i) => ({ chainage: i * 0.3, departure }));
    const pieces = (stiffness: number) =>
      bentStrip({ supports, hinges: [0.5], sections: [{ from: 0, stiffness, weight: 0 }] });
    expect(pieces(1)).toEqual(pieces(7));
    expect(pieces(1)).toEqual(bentStrip({ supports, hinges: [0.5] }));
  });
});
