import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, dot, subtract, type Vec3 } from '../../../src/core/math/vec3.ts';
import { jointGeometry } from '../../../src/core/stock/index.ts';
import { headPlaces } from '../../../src/stage/lens/lensFrame.ts';
import { couplingPlace, pivotPlace } from '../../../src/stage/stock/couplingPlace.ts';
import { sampleVehicle } from '../../core/stock/samples.ts';
import { bufferedWagon, standing, windingTrack } from '../samples.ts';

const track = windingTrack();

/** Drawn heads and the core's answer about the same two vehicles. */
function drawn(headOff: number, at: number, mount: 'body' | 'bogie' = 'body') {
  const long = sampleVehicle({ pivotSpacing: 0.12, overhang: 0.03, coupling: { mount, reach: 0.014 } });
  const leading = {
    ...long,
    rear: { ...long.rear, coupling: { ...long.rear.coupling, headHeight: 0.0099 + headOff } },
  };
  const trailing = bufferedWagon();
  const [placedLeading, placedTrailing] = standing(track, [leading, trailing], at);
  const subject = { leading, trailing, placedLeading, placedTrailing };
  return {
    subject,
    heads: headPlaces(subject),
    geometry: jointGeometry(leading, trailing, placedLeading, placedTrailing),
  };
}

describe('drawn heads', () => {
  it('stand as far apart in height as the core says, on grades, curves and bogies', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.001, max: 0.001, noNaN: true }),
        fc.double({ min: 0.4, max: 2.1, noNaN: true }),
        fc.constantFrom('body' as const, 'bogie' as const),
        (headOff, at, mount) => {
          const { subject, heads, geometry } = drawn(headOff, at, mount);
          const a = subject.placedLeading.ahead;
          const b = subject.placedTrailing.ahead;
          const ahead: Vec3 = [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
          const size = Math.hypot(...ahead);
          const level = Math.hypot(ahead[0], ahead[1]);
          const up: Vec3 = [
            (-ahead[2] * ahead[0]) / (size * level),
            (-ahead[2] * ahead[1]) / (size * level),
            level / size,
          ];
          const apart = dot(subtract(heads.leading, heads.trailing), up);
          // Heads are drawn at their reach along the shank, the core reckons the reach in plan: a share of grade squared.
          expect(Math.abs(apart - geometry.verticalOffset)).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('show a head fitted 1 mm high as 1 mm high on level straight track', () => {
    const { heads } = drawn(0.001, 0.4);
    // Both couplings' own heights: 9.9 and 9.0 mm.
    expect(heads.leading[2] - heads.trailing[2]).toBeCloseTo(0.0009 + 0.001, 9);
  });

  it('meet face to face when heads of one height stand at the free length on straight track', () => {
    const { heads } = drawn(-0.0009, 0.4);
    expect(Math.hypot(heads.leading[0] - heads.trailing[0], heads.leading[1] - heads.trailing[1])).toBeLessThan(1e-9);
  });
});

describe('couplingPlace', () => {
  it('points at the mate in plan and has square axes', () => {
    const { subject } = drawn(0, 1.4);
    const mate = pivotPlace(subject.trailing, subject.placedTrailing, 'front');
    const { pivot, out, left, up } = couplingPlace(subject.leading, subject.placedLeading, 'rear', mate);
    const [dx, dy] = [mate[0] - pivot[0], mate[1] - pivot[1]];
    expect(dx * out[1] - dy * out[0]).toBeCloseTo(0, 12);
    expect(dx * out[0] + dy * out[1]).toBeGreaterThan(0);
    for (const [a, b] of [
      [out, left],
      [left, up],
      [up, out],
    ]) {
      expect(dot(a, b)).toBeCloseTo(0, 12);
      expect(dot(a, a)).toBeCloseTo(1, 12);
    }
  });

  it('of a free end lies along its vehicle', () => {
    const { subject } = drawn(0, 0.4);
    const { out } = couplingPlace(subject.leading, subject.placedLeading, 'front', null);
    expect(distance(out, subject.placedLeading.ahead)).toBeLessThan(1e-12);
  });
});
