import { describe, expect, it } from 'vitest';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import { bodyParts } from '../../../src/stage/stock/body.ts';
import { bodySizes } from '../../../src/stage/stock/bodySizes.ts';
import { bufferHead, couplingHalf } from '../../../src/stage/stock/couplingSolid.ts';
import { axleOffsets, bogieFrame, wheelset } from '../../../src/stage/stock/running.ts';
import { lookKey } from '../../../src/stage/stock/stockShapes.ts';
import { sampleCoupling, sampleVehicle } from '../../core/stock/samples.ts';
import { bounds, bufferedWagon, enclosedVolume, vertices } from '../samples.ts';

const drive = {
  drivenMass: 0.2,
  adhesion: 0.2,
  slidingAdhesion: 0.15,
  slipScale: 0.05,
  stallForce: 1,
  freeSpeed: 0.5,
  rotatingMass: 0.5,
  worm: true,
  drawbarHeight: 0.01,
  drivenWheelbase: 0.06,
  transferShare: 0,
};

const kinds: [string, Vehicle][] = [
  ['coach', sampleVehicle({ pivotSpacing: 0.15, overhang: 0.04, rearOverhang: 0.05 })],
  ['van', bufferedWagon()],
  ['open', bufferedWagon(0, { bodyHeight: 0.03 })],
  ['tender', sampleVehicle({ pivotSpacing: 0.05, overhang: 0.01, bogies: false }, { kind: 'tender' })],
  ['centre-cab', sampleVehicle({ pivotSpacing: 0.1, overhang: 0.03 }, { kind: 'locomotive', drive })],
  ['tank-engine', sampleVehicle({ pivotSpacing: 0.06, overhang: 0.03, bogies: false }, { kind: 'locomotive', drive })],
];

describe.each(kinds)('the body of a %s', (form, vehicle) => {
  const { far, shell } = bodyParts(vehicle);

  it('has its form', () => {
    expect(bodySizes(vehicle).form).toBe(form);
  });

  it('reaches from body end to body end, to its width and to its height', () => {
    const { low, high } = bounds(vertices(shell));
    expect(high[0]).toBeCloseTo(vehicle.pivotSpacing / 2 + vehicle.frontOverhang, 9);
    expect(low[0]).toBeCloseTo(-vehicle.pivotSpacing / 2 - vehicle.rearOverhang, 9);
    expect(high[2]).toBeGreaterThan(0.97 * vehicle.bodyHeight);
    expect(high[2]).toBeLessThan(vehicle.bodyHeight + 1e-9);
    // Flat marks stand a tenth of a millimetre proud.
    expect(high[1]).toBeGreaterThan(0.9 * (vehicle.bodyWidth / 2));
    expect(high[1]).toBeLessThan(vehicle.bodyWidth / 2 + 2e-4);
    expect(low[1]).toBeCloseTo(-high[1], 9);
  });

  it('is the same left and right', () => {
    const mirror = new Set(vertices(far).map(([x, y, z]) => [x, Math.abs(y), z].map((v) => v.toFixed(7)).join()));
    for (const [x, y, z] of vertices(far))
      expect(mirror.has([x, Math.abs(y), z].map((v) => v.toFixed(7)).join())).toBe(true);
  });

  it('shows its outside', () => {
    expect(enclosedVolume(far)).toBeGreaterThan(0.2 * vehicle.bodyLength * vehicle.bodyWidth * vehicle.bodyHeight);
  });

  it('stays few enough vertices for a processor to draw', () => {
    expect(far.role.length).toBeLessThan(900);
    expect(far.strokes.from.length / 3).toBeLessThan(260);
  });
});

describe('running gear', () => {
  it('stands its treads on the rails, flanges inside the gauge', () => {
    const vehicle = bufferedWagon();
    const { low, high } = bounds(vertices(wheelset(vehicle)));
    expect(high[2]).toBeGreaterThan(vehicle.wheelRadius);
    const flanges = vertices(wheelset(vehicle)).filter(([x, , z]) => Math.hypot(x, z) > vehicle.wheelRadius * 1.01);
    for (const [, y] of flanges) expect(Math.abs(y)).toBeLessThan(vehicle.gauge / 2);
    const outer = vertices(wheelset(vehicle)).filter(([, y]) => Math.abs(y) > vehicle.gauge / 2);
    for (const [x, , z] of outer) expect(Math.hypot(x, z)).toBeLessThan(vehicle.wheelRadius * 1.001);
    expect(low[1]).toBeLessThan(-vehicle.gauge / 2);
  });

  it('has axles at the running points of a rigid frame, and half a wheelbase either side of a bogie pivot', () => {
    expect(axleOffsets(bufferedWagon())).toEqual([
      { end: 'front', by: 0 },
      { end: 'rear', by: 0 },
    ]);
    const bogies = axleOffsets(sampleVehicle({ pivotSpacing: 0.15, overhang: 0.04 }));
    expect(bogies).toEqual([
      { end: 'front', by: 0.015 },
      { end: 'front', by: -0.015 },
      { end: 'rear', by: 0.015 },
      { end: 'rear', by: -0.015 },
    ]);
    const three = axleOffsets(sampleVehicle({ pivotSpacing: 0.15, overhang: 0.04 }, { bogieAxles: 3 }));
    expect(three.map(({ by }) => by)).toEqual([0.015, 0, -0.015, 0.015, 0, -0.015]);
  });

  it('keeps a bogie frame above the rail', () => {
    const { low } = bounds(vertices(bogieFrame(sampleVehicle({ pivotSpacing: 0.15, overhang: 0.04 }))));
    expect(low[2]).toBeGreaterThan(0);
  });
});

describe('couplingHalf', () => {
  it.each(['hook-and-bar', 'loop', 'knuckle', 'close'] as const)(
    'of %s has its contact face at the reach, as high as the face that meets the mate',
    (kind) => {
      const coupling = sampleCoupling({ kind, reach: 0.016, facingHeight: 0.003 });
      const face = vertices(couplingHalf(coupling)).filter(([x]) => Math.abs(x - coupling.reach) < 1e-9);
      expect(face.length).toBeGreaterThan(0);
      const { high } = bounds(face);
      expect(high[2]).toBeLessThanOrEqual(0.0015 + 1e-12);
      const { low } = bounds(vertices(couplingHalf(coupling)));
      expect(low[2]).toBeCloseTo(-0.0015, 9);
    },
  );

  it.each(['link', 'rigid-bar'] as const)('of %s is drawn from the pivot on', (kind) => {
    const { low, high } = bounds(vertices(couplingHalf(sampleCoupling({ kind, reach: 0.0065, facingHeight: 0.004 }))));
    expect(low[0]).toBeLessThan(0.001);
    expect(high[0]).toBeGreaterThan(0.006);
  });
});

describe('bufferHead', () => {
  it('has its face at 0 and the width and height of the head', () => {
    const buffers = { spacing: 0.02, height: 0.0122, headWidth: 0.0052, headHeight: 0.004, length: 0.006 };
    const { low, high } = bounds(vertices(bufferHead(buffers)));
    expect(high[0]).toBe(0);
    // A polygon of sixteen corners keeps 98 % of its circle.
    expect(high[1] - low[1]).toBeGreaterThan(0.98 * 0.0052);
    expect(high[1] - low[1]).toBeLessThan(0.0052 + 1e-9);
    expect(high[2] - low[2]).toBeLessThan(0.004 + 1e-9);
  });
});

describe('lookKey', () => {
  it('is one for vehicles that differ only in name and mass', () => {
    const one = bufferedWagon();
    expect(lookKey({ ...one, name: 'Other', mass: 9 })).toBe(lookKey(one));
    expect(lookKey({ ...one, bodyHeight: 0.03 })).not.toBe(lookKey(one));
  });
});
