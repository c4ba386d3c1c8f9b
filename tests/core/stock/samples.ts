import type { Buffers, Coupling, Vehicle } from '../../../src/core/stock/types.ts';
import { arc, makeTrack, straight, transition } from '../../../src/core/track/index.ts';
import type { GradePoint, PlanElement, Track } from '../../../src/core/track/types.ts';

/** An upright-faced coupling that differs from another only in what a test is about. */
export const sampleCoupling = (change: Partial<Coupling> = {}): Coupling => ({
  kind: 'knuckle',
  mount: 'body',
  pivotInset: 0.008,
  reach: 0.01,
  headHeight: 0.0099,
  headHeightTolerance: 0.0005,
  facingHeight: 0.003,
  engagement: 0.0015,
  faceTilt: 0,
  faceFriction: 0.3,
  freeSwing: 0.35,
  draftStiffness: 4000,
  buffStiffness: 6000,
  damping: 2,
  slack: 0.0004,
  release: 20,
  ...change,
});

export interface Body {
  readonly pivotSpacing: number;
  readonly overhang: number;
  readonly rearOverhang?: number;
  readonly coupling?: Partial<Coupling>;
  readonly buffers?: Buffers | null;
  readonly bogies?: boolean;
}

/** A coach of the given body with the same coupling and buffers at both ends, lengths m. */
export function sampleVehicle(body: Body, change: Partial<Vehicle> = {}): Vehicle {
  const rearOverhang = body.rearOverhang ?? body.overhang;
  const end = { coupling: sampleCoupling(body.coupling), buffers: body.buffers ?? null };
  return {
    name: 'Sample',
    kind: 'coach',
    mass: 0.12,
    bodyLength: body.pivotSpacing + body.overhang + rearOverhang,
    bodyWidth: 0.034,
    bodyHeight: 0.045,
    underside: 0.004,
    massHeight: 0.022,
    massAhead: 0,
    pivotSpacing: body.pivotSpacing,
    frontOverhang: body.overhang,
    rearOverhang,
    rigidWheelbase: 0.03,
    bogies: body.bogies ?? true,
    wheelRadius: 0.006,
    gauge: 0.0165,
    front: end,
    rear: end,
    rolling: { coulomb: 0.02, perSpeed: 0, breakaway: 1.1 },
    drive: null,
    ...change,
  };
}

/** A level or graded track of the given elements, starting at the origin and heading east. */
export const sampleTrack = (
  elements: readonly PlanElement[],
  points: readonly GradePoint[] = [{ chainage: 0, height: 0 }],
): Track => makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements, profile: { points } });

/** A route with everything on it: easements, both hands of curve, a summit curve, a sag and an unrounded break of grade. */
export function variedElements(radius: number): PlanElement[] {
  const k = 1 / radius;
  return [
    straight(0.7),
    transition(0.3, 0, k),
    arc(radius, 1.2),
    transition(0.4, k, -k),
    arc(radius, -0.9),
    straight(0.25),
    arc(1.3 * radius, 0.5),
    straight(0.7),
  ];
}

export const variedGrades: readonly GradePoint[] = [
  { chainage: 0, height: 0 },
  { chainage: 0.8, height: 0.004, curve: { length: 0.5 } },
  { chainage: 1.7, height: 0.031, curve: { radius: 12 } },
  { chainage: 2.6, height: 0.022 },
  { chainage: 3.4, height: 0.038 },
];
