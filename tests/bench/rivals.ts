import RAPIER from '@dimforge/rapier3d-compat';
import { Body, Vec3, World } from 'cannon-es';
import { odexSolver } from '../odexSolver.ts';
import type { End } from './agreement.ts';
import { bench, plain, type Task } from './train.ts';

/**
 * The same train on general engines, as point masses on an axis under forces written here: gravity on a plain grade,
 * rolling friction smoothed over 1 mm/s (none of them has friction that holds at rest), spring-and-damper couplings
 * and the motor's line. That is less than the project's solver does, so the comparison favours them.
 */
export interface Rival {
  readonly name: string;
  /** Whether it solves the same equations, so that it must come to the same end. */
  readonly sameEquations: boolean;
  /** Runs the train for `seconds`. */
  run(seconds: number, task?: Task): End;
}

const GRAVITY = 9.80665;
const SMOOTHING = 0.001;

/** One train's masses, and its forces. */
function axis({ vehicles: n, slack, grade }: Task) {
  const mass = Float64Array.from({ length: n }, (_, i) => (i === 0 ? bench.engineMass : bench.wagonMass));
  const pitch = Math.atan(grade);
  const play = slack / 2;
  const down = Float64Array.from(mass, (m) => m * GRAVITY * Math.sin(pitch));
  const drag = Float64Array.from(mass, (m) => m * GRAVITY * Math.cos(pitch) * bench.coulomb);
  return {
    n,
    /** The rotor counts as mass in the engine while its wheels grip, which they do throughout. */
    inertia: Float64Array.from(mass, (m, i) => (i === 0 ? m + bench.rotatingMass : m)),
    f: new Float64Array(n),
    xs: new Float64Array(n),
    vs: new Float64Array(n),
    /** Coupling forces of the last look at them, N. */
    joints: new Float64Array(n - 1),
    /** Forces on every vehicle at offsets x from its place at rest and speeds v, N, into `out`. */
    forces(time: number, x: Float64Array, v: Float64Array, out: Float64Array): void {
      const { joints } = this;
      for (let i = 0; i < n; i++) out[i] = -down[i]! - drag[i]! * Math.tanh(v[i]! / SMOOTHING);
      for (let j = 0; j + 1 < n; j++) {
        const e = x[j]! - x[j + 1]!;
        const damper = bench.damping * (v[j]! - v[j + 1]!);
        let f = bench.stiffness * e + damper;
        if (play > 0) {
          if (e > play) f = Math.max(bench.stiffness * (e - play) + damper, 0);
          else if (e < -play) f = Math.min(bench.stiffness * (e + play) + damper, 0);
          else f = 0;
        }
        joints[j] = f;
        out[j]! -= f;
        out[j + 1]! += f;
      }
      const setting = bench.setting * Math.min(time / bench.ramp, 1);
      out[0]! += bench.stallForce * setting - (bench.stallForce / bench.freeSpeed) * v[0]!;
    },
  };
}

/** How the train ends at offsets x from its place at rest and speeds v. */
function endOf(train: ReturnType<typeof axis>, seconds: number, x: number[], v: number[]): End {
  train.forces(seconds, Float64Array.from(x), Float64Array.from(v), train.f);
  return { speeds: v, way: x[0]!, force: Math.max(...train.joints.map(Math.abs)) };
}

export const cannon: Rival = {
  name: 'cannon-es',
  sameEquations: true,
  run(seconds, task = plain) {
    const train = axis(task);
    const { n, inertia, f, xs, vs } = train;
    const world = new World({ gravity: new Vec3(0, 0, 0) });
    const bodies = Array.from(inertia, (m) => new Body({ mass: m, linearDamping: 0, angularDamping: 0 }));
    for (const body of bodies) world.addBody(body);
    const steps = Math.round(seconds / bench.step);
    for (let k = 0; k < steps; k++) {
      for (let i = 0; i < n; i++) {
        xs[i] = bodies[i]!.position.x;
        vs[i] = bodies[i]!.velocity.x;
      }
      train.forces(k * bench.step, xs, vs, f);
      for (let i = 0; i < n; i++) bodies[i]!.force.x = f[i]!;
      world.step(bench.step);
    }
    return endOf(
      train,
      seconds,
      bodies.map((body) => body.position.x),
      bodies.map((body) => body.velocity.x),
    );
  },
};

await RAPIER.init();

export const rapier: Rival = {
  name: 'Rapier',
  sameEquations: false,
  run(seconds, task = plain) {
    const train = axis(task);
    const { n, inertia, f, xs, vs } = train;
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
      train.forces(k * bench.step, xs, vs, f);
      for (let i = 0; i < n; i++) {
        push.x = f[i]!;
        bodies[i]!.resetForces(true);
        bodies[i]!.addForce(push, true);
      }
      world.step();
    }
    const end = endOf(
      train,
      seconds,
      bodies.map((body) => body.translation().x),
      bodies.map((body) => body.linvel().x),
    );
    world.free();
    return end;
  },
};

export const odex: Rival = {
  name: 'odex',
  sameEquations: true,
  run(seconds, task = plain) {
    const train = axis(task);
    const { n, inertia, f, xs, vs } = train;
    const solver = odexSolver(2 * n, 1e-9);
    const slope = (t: number, y: number[]) => {
      for (let i = 0; i < n; i++) {
        xs[i] = y[i]!;
        vs[i] = y[n + i]!;
      }
      train.forces(t, xs, vs, f);
      return [...vs, ...Array.from(f, (force, i) => force / inertia[i]!)];
    };
    // The ramp's end is a corner: integrate up to it and on from it.
    const corner = solver.solve(slope, 0, new Array(2 * n).fill(0), Math.min(bench.ramp, seconds)).y;
    const end = seconds > bench.ramp ? solver.solve(slope, bench.ramp, corner, seconds).y : corner;
    return endOf(train, seconds, end.slice(0, n), end.slice(n));
  },
};
