import { describe, expect, it } from 'vitest';
import { controlDefaults, defaultForceModel } from '../../src/core/dynamics/index.ts';
import { couplingDefaults, driveDefaults, guideDefaults } from '../../src/scene/defaults.ts';
import { parseScene, type SceneVehicle, vehicleOf } from '../../src/scene/index.ts';
import { compileScene, compileTrial } from '../../src/sim/index.ts';
import { sample, sampleScene } from './sample.ts';

const withCoupling = (fields: object) => ({ ...sample, couplings: [{ id: 'bar', kind: 'hook-and-bar', ...fields }] });
const withDrive = (drive: object, massG = 300) => ({
  ...sample,
  stock: [{ ...sample.stock[0], massG, drive }, sample.stock[1]],
});
const problemsOf = (input: unknown) => {
  const parsed = parseScene(input);
  return parsed.ok ? [] : parsed.problems;
};
const vehicleIn = (input: unknown, index = 0) => {
  const parsed = parseScene(input);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return vehicleOf(parsed.scene, parsed.scene.stock[index] as SceneVehicle);
};

describe('couplings of a scene', () => {
  it('take a second stage, a guide with its defaults, and coupling again', () => {
    const { coupling } = vehicleIn(
      withCoupling({ draftSecond: { fromMm: 0.5, stiffnessNPerMm: 30 }, guide: {}, recouples: true, releaseN: 2 }),
    ).front;
    expect(coupling.draftSecond?.from).toBeCloseTo(0.0005, 12);
    expect(coupling.draftSecond?.stiffness).toBe(30_000);
    expect(coupling.buffSecond).toBeUndefined();
    expect(coupling.guide?.lengthening).toBeCloseTo(guideDefaults.lengthenMm.value / 1000, 12);
    expect(coupling.guide?.fullSwing).toBeCloseTo((20 * Math.PI) / 180, 12);
    expect(coupling.recouples).toBe(true);
  });

  it('have none of these unless asked for, but for magnets, which let go and couple again', () => {
    const plain = vehicleIn(sample).front.coupling;
    for (const field of ['draftSecond', 'buffSecond', 'guide', 'recouples']) expect(field in plain).toBe(false);
    expect(plain.release).toBe(Number.POSITIVE_INFINITY);
    const magnet = vehicleIn(withCoupling({ kind: 'magnetic' })).front.coupling;
    expect(magnet.release).toBe(couplingDefaults.magnetic.releaseN?.value);
    expect(magnet.recouples).toBe(true);
    expect(magnet.slack).toBe(0);
  });

  it('refuse a second stage softer than the first', () => {
    const problems = problemsOf(withCoupling({ buffSecond: { fromMm: 0.5, stiffnessNPerMm: 2 } }));
    expect(problems.map(({ path }) => path)).toEqual(['couplings[0].buffSecond.stiffnessNPerMm']);
    expect(problems[0]?.allowed).toContain('4 N/mm');
  });

  it('of one piece have no play', () => {
    expect(vehicleIn(withCoupling({ kind: 'rigid-bar' })).front.coupling.slack).toBe(0);
  });
});

describe('axles of an engine', () => {
  const axles = [{ aheadMm: 30 }, { aheadMm: -30 }, { aheadMm: 60, driven: false, springNPerMm: 0.3 }];

  it('share the driven and the idle weight among them', () => {
    const { drive } = vehicleIn(withDrive({ drivenMassG: 240, axles }));
    expect(drive?.axles?.map((axle) => axle.share)).toEqual([0.4, 0.4, expect.closeTo(0.2, 12)]);
    expect(drive?.axles?.[0]?.stiffness).toBe(driveDefaults.axleStiffnessNPerMm.value * 1000);
    expect(drive?.axles?.[2]?.stiffness).toBe(300);
    expect(drive?.axles?.[2]?.ahead).toBeCloseTo(0.06, 12);
    expect(drive?.axles?.some((axle) => 'grip' in axle)).toBe(false);
  });

  it('with tyres grip as told, over the coefficient of the drive, and the motor is sized for what they grip together', () => {
    const tyred = [{ aheadMm: 30, adhesion: 0.5 }, { aheadMm: -30 }, axles[2]!];
    const drive = vehicleIn(withDrive({ drivenMassG: 240, adhesion: 0.2, axles: tyred })).drive!;
    const plain = vehicleIn(withDrive({ drivenMassG: 240, adhesion: 0.2, axles })).drive!;
    expect(drive.axles?.map(({ grip }) => grip)).toEqual([2.5, undefined, undefined]);
    expect(drive.stallForce / plain.stallForce).toBeCloseTo((2.5 + 1) / 2, 12);
  });

  it.each([
    [
      'none driven',
      [
        { aheadMm: 30, driven: false },
        { aheadMm: -30, driven: false },
      ],
      240,
    ],
    ['all in one place', [{ aheadMm: 30 }, { aheadMm: 30 }], 300],
    ['idle ones with nothing to carry', axles, 300],
    ['weight left on no axle', axles.slice(0, 2), 240],
  ])('are refused: %s', (_name, list, drivenMassG) => {
    expect(problemsOf(withDrive({ drivenMassG, axles: list })).map(({ path }) => path)).toEqual([
      'stock[0].drive.axles',
    ]);
  });
});

describe('a worm by its lead angle', () => {
  it.each([
    [{ wormLeadDeg: 4 }, true],
    [{ wormLeadDeg: 12 }, false],
    [{ wormLeadDeg: 12, worm: true }, true],
    [{}, true],
  ])('%j: locks %s', (drive, locks) => {
    expect(vehicleIn(withDrive(drive)).drive?.worm).toBe(locks);
  });
});

describe('orders and forces of a trial', () => {
  const trialOf = (fields: object) => {
    const parsed = parseScene({ ...sample, trials: [{ ...sampleScene().trials[0], ...fields }] });
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
    return compileTrial(compileScene(parsed.scene), sampleScene().trials[0]!.id);
  };

  it('carry a speed to hold, in metres a second', () => {
    const [order] = trialOf({ orders: [{ atS: 0, setting: 0.8, holdMmPerS: 250 }] }).script.orders;
    expect(order?.hold).toBeCloseTo(0.25, 12);
    expect(order?.setting).toBe(0.8);
    const [open] = trialOf({ orders: [{ atS: 0, setting: 0.8 }] }).script.orders;
    expect(open && 'hold' in open).toBe(false);
  });

  it('choose the edge of curve drag and its constants', () => {
    const { forces } = trialOf({ forces: { curveDrag: 'high', curveGaugeFactor: 0.8 } }).options;
    expect(forces).toEqual({ ...defaultForceModel, curveDrag: 'high', curveGaugeFactor: 0.8 });
  });

  it('leave the controller to its row of defaults', () => {
    for (const { value, low, high } of Object.values(controlDefaults)) {
      expect(low).toBeLessThanOrEqual(value);
      expect(value).toBeLessThanOrEqual(high);
    }
  });
});
