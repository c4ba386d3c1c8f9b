import { clearGround, type Ground } from './chain.ts';
import { checkRun, groundFor, startOn, toEnd } from './run.ts';
import type { Run, RunInput } from './types.ts';

/**
 * Runs many trains one after another, each as `run` would and with the same bits: for sweeps of a parameter, and for runs
 * with inputs drawn at random.
 *
 * Tabulating a route takes longer than running a train over it. Inputs that agree in the track, the vehicles (the same
 * objects), the force model and the place of the start share one tabulation, so members should share what they do not
 * change: another script or time step costs nothing, another vehicle or force constant a tabulation.
 *
 * @returns one run for each input, in the order of the inputs
 * @throws RangeError as `startRun`, before any train has run
 */
export function runEnsemble(inputs: readonly RunInput[]): Run[] {
  for (const input of inputs) checkRun(input);
  const shared: { readonly input: RunInput; readonly ground: Ground }[] = [];
  const runs = inputs.map((input) => {
    let known = shared.find(({ input: other }) => sameRoute(input, other));
    if (known === undefined) {
      known = { input, ground: groundFor(input) };
      shared.push(known);
    }
    const stepper = startOn(known.ground, input);
    const done = toEnd(stepper);
    stepper.leave();
    return done;
  });
  for (const { ground } of shared) clearGround(ground);
  return runs;
}

/** Whether two inputs have the same route tables. */
function sameRoute(a: RunInput, b: RunInput): boolean {
  const { vehicles } = a.train;
  const others = b.train.vehicles;
  return (
    a.path.track === b.path.track &&
    a.script.start === b.script.start &&
    vehicles.length === others.length &&
    vehicles.every((vehicle, i) => vehicle === others[i]) &&
    sameForces(a.options.forces, b.options.forces)
  );
}

const sameForces = (a: RunInput['options']['forces'], b: RunInput['options']['forces']): boolean =>
  a === b || (Object.keys(a) as (keyof typeof a)[]).every((name) => a[name] === b[name]);
