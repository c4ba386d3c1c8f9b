// Over 300 lines for a reason: one beam, its hinges, steps and refusals, checked against each other on the same few strips.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bentStrip,
  gradeBreaks,
  type HeightPieces,
  makeTrack,
  type StripSpec,
  straight,
  TrackError,
} from '../../../../src/core/track/index.ts';
import { evenly } from '../../../evenly.ts';

/** Supports `span` apart from 0, a departure each. */
const row = (span: number, ...departures: number[]): StripSpec['supports'] =>
  departures.map((departure, i) => ({ chainage: i * span, departure }));

interface Bent {
  y: number;
  slope: number;
  moment: number;
  shear: number;
}

/** The strip at `s`, straight from the pieces: the last that starts at or before it, else the first. */
function at(pieces: HeightPieces, s: number): Bent {
  let k = 0;
  while (k + 1 < pieces.startChainage.length && pieces.startChainage[k + 1] <= s) k++;
  const t = s - pieces.startChainage[k];
  const [a, b, c, d] = [pieces.a[k], pieces.b[k], pieces.c[k], pieces.d[k]];
  return {
    y: a + t * (b + t * (c + t * d)),
    slope: b + t * (2 * c + 3 * t * d),
    moment: 2 * c + 6 * t * d,
    shear: 6 * d,
  };
}

function refusal(spec: StripSpec): TrackError {
  try {
    bentStrip(spec);
  } catch (error) {
    if (error instanceof TrackError) return error;
  }
  throw new Error('nothing was refused');
}

describe('a strip without hinges', () => {
  it('over three supports bends as a beam loaded in the middle: y = (3u - 4u³)·δ over half the span', () => {
    // Simply supported beam of span 2h, point load in the middle, any beam table; u = s/2h.
    const pieces = bentStrip({ supports: row(0.5, 0, 0.004, 0), hinges: [] });
    for (const u of [0.1, 0.25, 0.4]) expect(at(pieces, u).y).toBeCloseTo((3 * u - 4 * u ** 3) * 0.004, 16);
    expect(at(pieces, 0).slope).toBeCloseTo(3 * 0.004, 16);
  });

  it('stays straight over supports in line and goes on straight beyond them', () => {
    const pieces = bentStrip({ supports: row(0.3, 0.001, 0.002, 0.003, 0.004), hinges: [] });
    for (const s of [-1, 0, 0.45, 0.9, 3]) {
      expect(at(pieces, s).y).toBeCloseTo(0.001 + s / 300, 15);
      expect(Math.abs(at(pieces, s).moment)).toBeLessThan(1e-14);
    }
    const bent = bentStrip({ supports: row(0.3, 0, 0.002, 0), hinges: [] });
    expect(at(bent, -0.2).y).toBeCloseTo(-0.2 * at(bent, 0).slope, 16);
    expect(at(bent, 0.8).y).toBeCloseTo(0.2 * at(bent, 0.6).slope, 16);
  });

  it('passes through every support, smooth to the second derivative, free at its ends', () => {
    const departures = fc.array(evenly(-0.01, 0.01), { minLength: 2, maxLength: 30 });
    const gaps = fc.array(fc.double({ min: 0.05, max: 0.6, noNaN: true }), { minLength: 30, maxLength: 30 });
    fc.assert(
      fc.property(departures, gaps, (heights, steps) => {
        let chainage = -0.4;
        const supports = heights.map((departure, i) => {
          chainage += steps[i];
          return { chainage, departure };
        });
        const pieces = bentStrip({ supports, hinges: [] });
        supports.forEach(({ chainage: s, departure }, i) => {
          expect(Math.abs(at(pieces, s).y - departure)).toBeLessThan(1e-15);
          const before = at(pieces, s - 1e-12);
          const after = at(pieces, s + 1e-12);
          expect(Math.abs(after.slope - before.slope)).toBeLessThan(1e-9);
          expect(Math.abs(after.moment - before.moment)).toBeLessThan(1e-8);
          if (i === 0 || i + 1 === supports.length) expect(Math.abs(before.moment)).toBeLessThan(1e-8);
        });
      }),
    );
  });

  it('bends less, in the mean square of its curvature, than any other smooth line through the supports', () => {
    // The variational property of the natural spline, tried against the spline plus a bump that is 0 at the supports.
    const supports = row(0.25, 0, 0.002, -0.001, 0.003, 0);
    const pieces = bentStrip({ supports, hinges: [] });
    const energy = (bump: number): number => {
      let sum = 0;
      for (let i = 0; i < 4000; i++) {
        const s = (i + 0.5) / 4000;
        sum += (at(pieces, s).moment - bump * (4 * Math.PI) ** 2 * Math.sin(4 * Math.PI * s)) ** 2 / 4000;
      }
      return sum;
    };
    expect(energy(0)).toBeLessThan(energy(1e-4));
    expect(energy(0)).toBeLessThan(energy(-1e-4));
  });

  it('is 0 everywhere over no supports', () => {
    expect(at(bentStrip({ supports: [], hinges: [] }), 5).y).toBe(0);
  });
});

describe('a hinge at a support', () => {
  it('parts the strip into two beams that share its height', () => {
    const supports = row(0.4, 0, 0.003, 0.001, -0.002, 0);
    const parted = bentStrip({ supports, hinges: [0.8] });
    const left = bentStrip({ supports: supports.slice(0, 3), hinges: [] });
    const right = bentStrip({ supports: supports.slice(2), hinges: [] });
    for (const s of [-0.1, 0.2, 0.7, 0.79999]) expect(at(parted, s)).toEqual(at(left, s));
    for (const s of [0.8, 1, 1.5, 2]) expect(at(parted, s)).toEqual(at(right, s));
  });

  it('over every support makes straight planks', () => {
    const parted = bentStrip({ supports: row(0.5, 0, 0.002, 0.001, 0), hinges: [0, 0.5, 1, 1.5] });
    expect(at(parted, 0.25)).toMatchObject({ y: expect.closeTo(0.001, 16), moment: 0 });
    expect(at(parted, 0.75).y).toBeCloseTo(0.0015, 16);
  });

  it('a micrometre off counts as at it', () => {
    const supports = row(0.5, 0, 0.002, 0.001, 0);
    expect(bentStrip({ supports, hinges: [0.5 + 9e-7] })).toEqual(bentStrip({ supports, hinges: [0.5] }));
  });
});

describe('a hinge between supports', () => {
  it('hangs a plank on a cantilever, worked by hand', () => {
    // Supports at 0, 1, 3; hinge at 2. The right plank has one support and the hinge, so it carries no load and stays
    // straight, and neither does the left bend: the line through the first two supports runs on to the hinge.
    const pieces = bentStrip({
      supports: [
        { chainage: 0, departure: 0 },
        { chainage: 1, departure: 0.003 },
        { chainage: 3, departure: 0.001 },
      ],
      hinges: [2],
    });
    expect(at(pieces, 2).y).toBeCloseTo(0.006, 15);
    expect(at(pieces, 2.5).y).toBeCloseTo(0.0035, 15);
    expect(at(pieces, 1.5).slope).toBeCloseTo(0.003, 15);
    expect(at(pieces, 2.5).slope).toBeCloseTo(-0.005, 15);
  });

  it('between two stiff strips makes each bend the other, worked by hand', () => {
    // Supports at 0, 1, 3, 4 at heights 0, 0, δ, δ; hinge at 2, a shear V through it. A strip pinned at 0 and 1 with a
    // load V at its end 1 beyond deflects V·1²·(1+1)/3EI there (overhanging beam, any beam table), so the hinge is at
    // w = 2V/3 from the left and δ - 2V/3 from the right: w = δ/2.
    const delta = 0.006;
    const pieces = bentStrip({
      supports: [
        { chainage: 0, departure: 0 },
        { chainage: 1, departure: 0 },
        { chainage: 3, departure: delta },
        { chainage: 4, departure: delta },
      ],
      hinges: [2],
    });
    expect(at(pieces, 2).y).toBeCloseTo(delta / 2, 15);
    expect(Math.abs(at(pieces, 2).moment)).toBeLessThan(1e-15);
    // y‴ = -V/EI in sign: |V| = 3w/2 over the cantilever from 1 to 2.
    expect(Math.abs(at(pieces, 1.5).shear)).toBeCloseTo((3 * delta) / 4, 14);
    expect(at(pieces, 2 - 1e-9).shear).toBeCloseTo(at(pieces, 2 + 1e-9).shear, 14);
  });

  it('holds a suspended plank between two hinges of one span', () => {
    const supports = row(1, 0, 0.001, 0.005, 0.004);
    const pieces = bentStrip({ supports, hinges: [1.25, 1.75] });
    // No load crosses a plank without supports, so both neighbours are straight too.
    expect(at(pieces, 1.25).y).toBeCloseTo(0.00125, 15);
    expect(at(pieces, 1.75).y).toBeCloseTo(0.00525, 15);
    expect(at(pieces, 1.5).y).toBeCloseTo(0.00325, 15);
  });

  it('keeps height and shear continuous and the moment 0 at every hinge, and supports at their heights', () => {
    const departures = fc.array(evenly(-0.01, 0.01), { minLength: 9, maxLength: 9 });
    const hinges = fc.uniqueArray(fc.constantFrom(0.3, 0.52, 0.9, 1.1, 1.33, 1.6), { maxLength: 4 });
    fc.assert(
      fc.property(departures, hinges, (heights, places) => {
        const spec = { supports: row(0.2, ...heights), hinges: places };
        let pieces: HeightPieces;
        try {
          pieces = bentStrip(spec);
        } catch (error) {
          // Some draws are mechanisms; those are tried on their own below.
          expect(error).toBeInstanceOf(TrackError);
          return;
        }
        for (const { chainage, departure } of spec.supports) expect(at(pieces, chainage).y).toBeCloseTo(departure, 14);
        for (const hinge of places) {
          if (spec.supports.some((support) => Math.abs(support.chainage - hinge) < 1e-9) || hinge >= 1.6) continue;
          const before = at(pieces, hinge - 1e-10);
          const after = at(pieces, hinge + 1e-10);
          expect(Math.abs(after.y - before.y)).toBeLessThan(1e-10);
          expect(Math.abs(before.moment) + Math.abs(after.moment)).toBeLessThan(1e-7);
          expect(Math.abs(after.shear - before.shear)).toBeLessThan(1e-9 * (1 + Math.abs(before.shear)));
        }
      }),
    );
  });

  it('shows as a break of grade on the track, and a support without a hinge does not', () => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(4)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 4, height: 0.08 },
        ],
        strip: {
          supports: [
            { chainage: 0, departure: 0 },
            { chainage: 1, departure: 0.003 },
            { chainage: 3, departure: 0.001 },
          ],
          hinges: [2],
        },
      },
    });
    expect(gradeBreaks(track)).toEqual([
      { chainage: 2, before: expect.closeTo(0.023, 14), after: expect.closeTo(0.015, 14) },
    ]);
  });
});

describe('what cannot stand', () => {
  it('is one support, or hinges and no supports', () => {
    expect(refusal({ supports: row(1, 0), hinges: [] }).message).toBe(
      'A strip needs at least two supports to hold it, and has 1.',
    );
    expect(refusal({ supports: [], hinges: [1] }).problem).toBe('too-few-supports');
  });

  it('is a hinge in the only span', () => {
    const problem = refusal({ supports: row(1, 0, 0), hinges: [0.4] });
    expect(problem.problem).toBe('loose-strip');
    expect(problem.message).toBe(
      'Between the hinge at chainage 0.4 m and the support at chainage 1 m the strip has one support and can swing: add a support or splice a joint.',
    );
  });

  it('is three hinges in one span, and a hinged plank on one support beside a loose one', () => {
    const three = refusal({ supports: row(1, 0, 0, 0, 0), hinges: [1.2, 1.5, 1.8] });
    expect(three.message).toMatch(
      /^Between the hinge at chainage 1.5 m and the hinge at chainage 1.8 m the strip has no support/,
    );
    expect(refusal({ supports: row(1, 0, 0, 0), hinges: [0.5, 1.5] }).problem).toBe('loose-strip');
  });

  it('is a hinge beyond the outer supports', () => {
    const problem = refusal({ supports: row(1, 0, 0, 0), hinges: [2.25] });
    expect(problem.message).toMatch(/^The hinge at chainage 2.25 m lies 0.25 m beyond the outermost support/);
    expect([problem.chainage, problem.amount]).toEqual([2.25, 0.25]);
  });

  it('is supports that do not rise or are not finite', () => {
    const twice = [
      { chainage: 0, departure: 0 },
      { chainage: 0, departure: 0.001 },
    ];
    expect(refusal({ supports: twice, hinges: [] }).problem).toBe('supports-not-rising');
    expect(refusal({ supports: row(1, 0, Number.NaN), hinges: [] }).problem).toBe('bad-support');
    expect(refusal({ supports: row(1, 0, 0), hinges: [Number.NaN] }).problem).toBe('bad-hinge');
  });

  it('agrees with counting: every refused set of hinges has a motion, every accepted one has none', () => {
    // A plank has two freedoms, a support or a hinge takes one each where it acts; ranked by elimination.
    const places = fc.uniqueArray(fc.constantFrom(0.3, 0.6, 1.2, 1.5, 1.8, 2.4, 2.7), { maxLength: 6 });
    fc.assert(
      fc.property(places, fc.integer({ min: 2, max: 4 }), (hinges, count) => {
        const supports = row(1, ...new Array<number>(count).fill(0));
        const inside = hinges.filter((hinge) => hinge < count - 1).sort((p, q) => p - q);
        let refused = false;
        try {
          bentStrip({ supports, hinges: inside });
        } catch {
          refused = true;
        }
        expect(refused).toBe(rank(supports, inside) < 2 * (inside.length + 1));
      }),
    );
  });
});

/** The rank of the constraints on planks that may each shift (a) and tilt (b): a + b·s at supports, equal at hinges. */
function rank(supports: StripSpec['supports'], hinges: readonly number[]): number {
  const columns = 2 * (hinges.length + 1);
  const plank = (s: number): number => hinges.filter((hinge) => hinge < s).length;
  const rows = supports.map(({ chainage: s }) => {
    const line = new Array<number>(columns).fill(0);
    [line[2 * plank(s)], line[2 * plank(s) + 1]] = [1, s];
    return line;
  });
  hinges.forEach((s, i) => {
    const line = new Array<number>(columns).fill(0);
    [line[2 * i], line[2 * i + 1], line[2 * i + 2], line[2 * i + 3]] = [1, s, -1, -s];
    rows.push(line);
  });
  let found = 0;
  for (let column = 0; column < columns; column++) {
    const pivot = rows.slice(found).sort((p, q) => Math.abs(q[column]) - Math.abs(p[column]))[0];
    if (pivot === undefined || Math.abs(pivot[column]) < 1e-9) continue;
    const where = rows.indexOf(pivot);
    [rows[found], rows[where]] = [rows[where], rows[found]];
    for (let i = found + 1; i < rows.length; i++) {
      const factor = rows[i][column] / pivot[column];
      rows[i] = rows[i].map((value, j) => value - factor * pivot[j]);
    }
    found++;
  }
  return found;
}
