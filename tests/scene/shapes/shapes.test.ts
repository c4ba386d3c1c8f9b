/* Over 300 lines for a reason: every shape is held to the same promises. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trackPoint } from '../../../src/core/track/index.ts';
import {
  parseScene,
  type ShapedScene,
  type ShapeScale,
  type ShapeValues,
  type StartingShape,
  shapeScales,
  startingShapes,
  usualValues,
} from '../../../src/scene/index.ts';
import { compileScene, compileTrial } from '../../../src/sim/index.ts';
import { scaleNamed, shapeNamed } from './named.ts';

/** Way between the places looked at, m. */
const every = 0.02;

/** Values all over what a shape's fields allow, and near what is usual. */
const valuesOf = (shape: StartingShape, scale: ShapeScale): fc.Arbitrary<ShapeValues> =>
  fc.record(
    Object.fromEntries(
      shape.fields.map(({ id, low, high, usual, unit }) => {
        const middle = usual(scale);
        const near = fc.double({ min: 0.4, max: 2, noNaN: true }).map((times) => middle * times);
        const any = fc.oneof(near, fc.double({ min: low, max: high, noNaN: true }));
        const held = any.map((value) => Math.min(high, Math.max(low, value)));
        return [id, unit === 'percent' ? held : held.map(Math.round)];
      }),
    ),
  );

/** What the compiled railway really has, in the promise's terms. */
function measured({ scene }: ShapedScene) {
  const tracks = [...compileScene(scene).tracks.values()];
  const all = tracks.map((track) =>
    Array.from({ length: Math.ceil(track.length / every) + 1 }, (_, k) =>
      trackPoint(track, Math.min(k * every, track.length)),
    ),
  );
  const points = all.flat();
  const heights = points.map(({ z }) => z);
  return {
    tracks,
    all,
    riseMm: 1000 * (Math.max(...heights) - Math.min(...heights)),
    gradePercent: 100 * Math.max(...points.map(({ grade }) => Math.abs(grade))),
    radiusMm: 1000 / Math.max(...points.map(({ curvature }) => Math.abs(curvature))),
  };
}

/** The least height of one piece of track over another that it crosses or lies over, mm; null where none does. */
function leastOver({ tracks, all }: ReturnType<typeof measured>): number | null {
  let least: number | null = null;
  tracks.forEach((_, a) => {
    all[a].forEach((p) => {
      for (let b = a; b < tracks.length; b++) {
        for (const q of all[b]) {
          if (Math.hypot(p.x - q.x, p.y - q.y) > every) continue;
          const up = Math.abs(p.z - q.z);
          // Nearer than half a deck they are one line, or meet on the level.
          if (up > 0.01 && (least === null || up < least)) least = up;
        }
      }
    });
  });
  return least === null ? null : 1000 * least;
}

describe.each(startingShapes.map((shape) => [shape.id, shape] as const))('%s', (_, shape) => {
  it.each(shapeScales.map((scale) => [scale.name, scale] as const))(
    'makes a sound railway with its usual numbers in %s',
    (_name, scale) => {
      const made = shape.make(scale, usualValues(shape, scale));
      const parsed = parseScene(made.scene);
      expect(parsed.ok ? [] : parsed.problems).toEqual([]);
      const compiled = compileScene(made.scene);
      for (const { id } of made.scene.trials) expect(() => compileTrial(compiled, id)).not.toThrow();
      for (const { what, source } of made.because)
        expect(`${what} ${source}`).toMatch(/NEM \d{3}|no source|assumption/);
    },
  );

  it('has what it promises or refuses in words, whatever the numbers', () => {
    let made = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...shapeScales).chain((scale) => fc.tuple(fc.constant(scale), valuesOf(shape, scale))),
        ([scale, values]) => {
          let shaped: ShapedScene;
          try {
            shaped = shape.make(scale, values);
          } catch (error) {
            expect(error).toBeInstanceOf(RangeError);
            expect((error as Error).message).toMatch(/\d.*\.$/);
            return;
          }
          made++;
          const { promise } = shaped;
          expect(parseScene(shaped.scene).ok).toBe(true);
          const is = measured(shaped);
          expect(is.riseMm).toBeCloseTo(promise.riseMm, 3);
          expect(is.gradePercent).toBeLessThanOrEqual(promise.gradePercent + 1e-6);
          expect(is.radiusMm).toBeGreaterThanOrEqual(promise.radiusMm * (1 - 1e-9));
          // The chain is tangent, and eased where trains run: no jump of place or direction.
          for (const track of is.tracks) {
            for (const jump of track.jumps) {
              expect(Math.abs(jump.position) + Math.abs(jump.heading)).toBeLessThan(1e-9);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
    expect(made).toBeGreaterThan(5);
  });
});

describe('a helix', () => {
  it('of 600 mm and 2.5 % in H0 keeps the height NEM 102 asks for, under a deck of 17 mm', () => {
    const made = shapeNamed('helix').make(scaleNamed('HO'), {
      riseMm: 320,
      radiusMm: 600,
      gradePercent: 2.5,
      lowMm: 0,
    });
    const least = leastOver(measured(made)) ?? 0;
    // 59 mm clear, and 9 + 3 + 5 mm of deck.
    expect(least).toBeGreaterThanOrEqual(59 + 17);
    // 320 mm at 2.5 % are 12.8 m or more; quarter turns of 0.94 m.
    const climb = compileScene(made.scene).tracks.get('climb');
    expect(made.promise.gradePercent).toBeLessThanOrEqual(2.5);
    expect(320 / made.promise.gradePercent / 10).toBeLessThan(12.8 + 0.95);
    expect(climb?.length).toBeGreaterThan(12.8);
  });

  it('too tight to run under itself is refused with the radius that would do', () => {
    expect(() => shapeNamed('helix').make(scaleNamed('HO'), { riseMm: 320, radiusMm: 450, gradePercent: 2 })).toThrow(
      /a radius of 6\d0 mm or more/,
    );
  });
});

describe('a double helix', () => {
  const asked = { innerMm: 438, outerMm: 505, perTurnMm: 80, turns: 4, lowMm: 0 };

  it.each([0, 300])(
    'of 438 and 505 mm that rises 80 mm a turn is as steep as its radii make it, with easements of %i mm',
    (easeMm) => {
      const made = shapeNamed('double-helix').make(scaleNamed('OO'), { ...asked, easeMm });
      const { tracks } = compileScene(made.scene);
      // 2π·505/80 and 2π·438/80.
      for (const [id, oneIn] of [
        ['outer', 39.66],
        ['inner', 34.4],
      ] as const) {
        const track = tracks.get(id);
        if (track === undefined) throw new Error(id);
        expect(1 / trackPoint(track, track.length / 2).grade).toBeCloseTo(oneIn, 2);
        expect(trackPoint(track, track.length).z).toBeCloseTo(0.32, 9);
      }
      expect(made.promise.clearMm).toBe(63);
    },
  );

  it('has both tracks 67 mm apart and at one height wherever they pass the same spoke', () => {
    const made = shapeNamed('double-helix').make(scaleNamed('OO'), { ...asked, easeMm: 300 });
    const compiled = compileScene(made.scene);
    const [outer, inner] = ['outer', 'inner'].map((id) => compiled.tracks.get(id)!);
    for (const turns of [0.5, 1.3, 2, 3.6]) {
      const at = (track: typeof outer, radius: number) =>
        trackPoint(track, track.length / 2 + (turns - 2) * 2 * Math.PI * radius);
      const [o, i] = [at(outer, 0.505), at(inner, 0.438)];
      expect(o.z).toBeCloseTo(i.z, 9);
      expect(Math.hypot(o.x - i.x, o.y - i.y)).toBeCloseTo(0.067, 9);
    }
  });

  it('refuses what cannot be, with what would do', () => {
    const make = (values: ShapeValues) => () =>
      shapeNamed('double-helix').make(scaleNamed('OO'), { ...asked, ...values });
    expect(make({ outerMm: 440 })).toThrow(/an outer radius of 455 mm or more/);
    expect(make({ perTurnMm: 17 })).toThrow(/nothing under a deck of 17 mm/);
  });
});

describe('a crossover or S-bend', () => {
  it('lies as far to the side as two curves and the straight between them reach', () => {
    const made = shapeNamed('s-bend').make(scaleNamed('OO'), {
      radiusMm: 914,
      angleDeg: 12,
      betweenMm: 258,
      coaches: 5,
    });
    const track = compileScene(made.scene).tracks.get('over');
    if (track === undefined) throw new Error('over');
    const [start, end] = [trackPoint(track, 0), trackPoint(track, track.length)];
    // 2·914·(1 - cos 12°) and 258·sin 12°.
    expect(1000 * (end.y - start.y)).toBeCloseTo(39.946 + 53.641, 2);
    expect(end.heading).toBeCloseTo(start.heading, 12);
    expect(made.scene.trains[0].vehicles).toMatchObject([{ stock: 'tank-engine' }, { stock: 'coach', count: 5 }]);
  });
});

describe('a viaduct', () => {
  it('leaves the clear height of NEM 102 over the line it crosses unless it is told otherwise', () => {
    // 59 mm clear and 17 mm of deck.
    expect(leastOver(measured(shapeNamed('viaduct').make(scaleNamed('HO'), { lowMm: 40 }))) ?? 0).toBeCloseTo(76, 3);
  });

  it('takes rise over grade and one vertical curve more, whether or not the lower line shares the climb', () => {
    const asked = { riseMm: 80, gradePercent: 2.5, curveMm: 500, lowMm: 40 };
    const alone = shapeNamed('viaduct').make(scaleNamed('OO'), asked);
    // 80 mm at 1 in 40 are 3200 mm, and 500 mm for the curves.
    expect(alone.scene.tracks[0].alignment[1]).toMatchObject({ lengthMm: 3700 });
    expect(leastOver(measured(alone)) ?? 0).toBeCloseTo(80, 3);
    const shared = shapeNamed('viaduct').make(scaleNamed('OO'), { ...asked, sunkMm: 40 });
    // Half the rise, half the grade; the curves stay.
    expect(shared.scene.tracks[0].alignment[1]).toMatchObject({ lengthMm: 2100 });
    expect(leastOver(measured(shared)) ?? 0).toBeCloseTo(80, 3);
    expect(() => shapeNamed('viaduct').make(scaleNamed('OO'), { ...asked, sunkMm: 80 })).toThrow(
      /40 mm share the climb/,
    );
  });
});

describe('a ramp', () => {
  it('takes all the wall there is, and says how long a wall it needs', () => {
    const ramp = shapeNamed('ramp');
    const made = ramp.make(scaleNamed('HO'), { riseMm: 80, gradePercent: 2.5, wallMm: 9000 });
    expect(made.promise.gradePercent).toBeLessThan(2.5);
    expect(() => ramp.make(scaleNamed('HO'), { riseMm: 80, gradePercent: 2.5, wallMm: 3500 })).toThrow(
      /80 mm at 2.5 % take 3200 mm and two leads of \d+ mm: a wall of \d+ mm/,
    );
  });
});
