import RAPIER from '@dimforge/rapier3d-compat';
import { Body, Vec3, World } from 'cannon-es';
import { odexSolver } from '../odexSolver.ts';
import { bench } from './train.ts';

/**
 * The same train on general engines, as point masses on an axis under forces written here: gravity on a plain grade,
 * rolling friction smoothed over 1 mm/s (none of them has friction that holds at rest), spring-and-damper couplings
 * and the motor's line. That is less than the project's solver does, so the comparison favours them.
 */
export interface Rival {
  readonly name: string;
  /** Runs the train for `seconds` and returns each vehicle's speed, m/s. */
  run(seconds: number): Float64Array;
}

const n = bench.vehicles;
const mass = Float64Array.from({ length: n }, (_, i) => (i === 0 ? bench.engineMass : bench.wagonMass));
/** The rotor counts as mass in the engine while its wheels grip, which they do throughout. */
const inertia = Float64Array.from(mass, (m, i) => (i === 0 ? m + bench.rotatingMass : m));
const pitch = Math.atan(bench.grade);
const SMOOTHING = 0.001;

/** Forces on every vehicle at offsets x from its place at rest and speeds v, N, into `out`. */
function forces(time: number, x: Float64Array, v: Float64Array, out: Float64Array): void {
  const g = 9.80665;
  for (let i = 0; i < n; i++) {
    const weight = mass[i]! * g;
    out[i] = -weight * Math.sin(pitch) - weight * Math.cos(pitch) * bench.coulomb * Math.tanh(v[i]! / SMOOTHING);
  }
  for (let j = 0; j + 1 < n; j++) {
    const f = bench.stiffness * (x[j]! - x[j + 1]!) + bench.damping * (v[j]! - v[j + 1]!);
    out[j]! -= f;
    out[j + 1]! += f;
  }
  const setting = bench.setting * Math.min(time / bench.ramp, 1);
  out[0]! += bench.stallForce * setting - (bench.stallForce / bench.freeSpeed) * v[0]!;
}

const f = new Float64Array(n);
const xs = new Float64Array(n);
const vs = new Float64Array(n);

export const cannon: Rival = {
  name: 'cannon-es',
  run(seconds) {
    const world = new World({ gravity: new Vec3(0, 0, 0) });
    const bodies = Array.from(inertia, (m) => new Body({ mass: m, linearDamping: 0, angularDamping: 0 }));
    for (const body of bodies) world.addBody(body);
    const steps = Math.round(seconds / bench.step);
    for (let k = 0; k < steps; k++) {
      for (let i = 0; i < n; i++) {
        xs[i] = bodies[i]!.position.x;
        vs[i] = bodies[i]!.velocity.x;
      }
      forces(k * bench.step, xs, vs, f);
      for (let i = 0; i < n; i++) bodies[i]!.force.x = f[i]!;
      world.step(bench.step);
    }
    return Float64Array.from(bodies, (body) => body.velocity.x);
  },
};

await RAPIER.init();

export const rapier: Rival = {
  name: 'Rapier',
  run(seconds) {
    const world = new RAPIER.World({ x: 0, y: 0, z: 0 });
    world.timestep = bench.step;
    // Its own substeps move bodies by mean velocities, which lets the couplings' fastest swing grow without bound.
    world.numSolverIterations = 1;
    const bodies = Array.from(inertia, (m) =>
      world.createRigidBody(RAPIER.RigidBodyDesc.dynamic().setAdditionalMass(m).setCanSleep(false).lockRotations()),
    );
    const steps = Math.round(seconds / bench.step);
    const push = { x: 0, y: 0, z: 0 };
    for (let k = 0; k < steps; k++) {
      for (let i = 0; i < n; i++) {
        xs[i] = bodies[i]!.translation().x;
        vs[i] = bodies[i]!.linvel().x;
      }
      forces(k * bench.step, xs, vs, f);
      for (let i = 0; i < n; i++) {
        push.x = f[i]!;
        bodies[i]!.resetForces(true);
        bodies[i]!.addForce(push, true);
      }
      world.step();
    }
    const speeds = Float64Array.from(bodies, (body) => body.linvel().x);
    world.free();
    return speeds;
  },
};

export const odex: Rival = {
  name: 'odex',
  run(seconds) {
    const solver = odexSolver(2 * n, 1e-9);
    const slope = (t: number, y: number[]) => {
      for (let i = 0; i < n; i++) {
        xs[i] = y[i]!;
        vs[i] = y[n + i]!;
      }
      forces(t, xs, vs, f);
      return [...vs, ...Array.from(f, (force, i) => force / inertia[i]!)];
    };
    // The ramp's end is a corner: integrate up to it and on from it.
    const corner = solver.solve(slope, 0, new Array(2 * n).fill(0), Math.min(bench.ramp, seconds)).y;
    const end = seconds > bench.ramp ? solver.solve(slope, bench.ramp, corner, seconds).y : corner;
    return Float64Array.from({ length: n }, (_, i) => end[n + i]!);
  },
};
