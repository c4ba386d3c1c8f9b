/**
 * Times the solver beside general engines, all in one process, each case round by round with its rivals, so that what else
 * the machine does meets all alike. Rates are the best of several rounds, since other work only ever slows a round; ratios
 * are what counts, though a short go meets a quiet moment sooner than a long one. `--json` prints everything, speeds at the end included, by which the engines agree.
 */
import { run, runEnsemble, startRun, steadyRun } from '../../src/core/dynamics/index.ts';
import type { RunInput } from '../../src/core/dynamics/types.ts';
import { chainBound } from './chainBound.ts';
import { cannon, odex, type Rival, rapier } from './rivals.ts';
import { bench, ensembleOnHelix, long, onHelix, plain, plainGrade, slackRich, type Task } from './train.ts';

const ROUNDS = 7;
/** Clock time each entry has in a round, ms: all alike to be compiled and to meet a quiet moment, however short one go. */
const TURN = 150;
const own = 'gradewright';

interface Row {
  engine: string;
  case: string;
  vehicles: number;
  /** Million vehicle-steps of 1 ms a second of clock. */
  rate: number;
  /** Speed of the engine and of the last wagon at the end, m/s; null where nothing comparable moved. */
  speeds: [number, number] | null;
}

/** Does its work once, and says for how many vehicle-steps it was good, in how long, ms. */
type Timed = () => { vehicleSteps: number; took: number; speeds: [number, number] | null };

function ours(input: RunInput, seconds: number): Timed {
  return () => {
    const stepper = startRun(input);
    const began = performance.now();
    const over = stepper.advance(seconds);
    const took = performance.now() - began;
    if (over) throw new Error(`the run ended before ${seconds} s`);
    const { steps, vehicles, frames, speed } = stepper.finish();
    const last = (frames - 1) * vehicles;
    return { vehicleSteps: steps * vehicles, took, speeds: [speed[last]!, speed[last + vehicles - 1]!] };
  };
}

function theirs({ run: go }: Rival, task: Task, seconds: number): Timed {
  return () => {
    const began = performance.now();
    const end = go(seconds, task);
    const took = performance.now() - began;
    return { vehicleSteps: (seconds / bench.step) * task.vehicles, took, speeds: [end[0]!, end[task.vehicles - 1]!] };
  };
}

/** Many whole runs, preparation included. */
function many(
  inputs: readonly RunInput[],
  how: (inputs: readonly RunInput[]) => { steps: number; vehicles: number }[],
) {
  return (): ReturnType<Timed> => {
    const began = performance.now();
    const runs = how(inputs);
    const took = performance.now() - began;
    return { vehicleSteps: runs.reduce((sum, one) => sum + one.steps * one.vehicles, 0), took, speeds: null };
  };
}

/** Bare elimination and back substitution over as many vehicles. */
function bound(vehicles: number): Timed {
  return () => {
    const steps = 20_000;
    const { took } = chainBound(vehicles, steps);
    return { vehicleSteps: vehicles * steps, took, speeds: null };
  };
}

/** Times the entries of one case against each other, all of them in every round. */
function race(what: string, vehicles: number, entries: readonly (readonly [string, Timed])[], rounds = ROUNDS): Row[] {
  const rows = entries.map(([engine]): Row => ({ engine, case: what, vehicles, rate: 0, speeds: null }));
  for (let round = 0; round < rounds; round++) {
    entries.forEach(([, timed], e) => {
      for (let spent = 0; spent < TURN; ) {
        const { vehicleSteps, took, speeds } = timed();
        spent += took;
        rows[e]!.rate = Math.max(rows[e]!.rate, vehicleSteps / took / 1000);
        rows[e]!.speeds = speeds;
      }
    });
  }
  return rows;
}

/** A task on the plain grade; a rival that is slow runs a share of the time, and its speed is that of its own end. */
const versus = (task: Task, seconds: number, ...rivals: readonly (readonly [Rival, number])[]) =>
  race(task.name, task.vehicles, [
    [own, ours(plainGrade(task), seconds)],
    ...rivals.map(([rival, share]) => [rival.name, theirs(rival, task, seconds * share)] as const),
  ]);

/** Best of the rounds, ms. */
function best(work: () => void): number {
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    const began = performance.now();
    work();
    least = Math.min(least, performance.now() - began);
  }
  return least;
}

const helix = race('helix, full force model', bench.vehicles, [
  [own, ours(onHelix(), bench.seconds)],
  ['dependent chain alone', bound(bench.vehicles)],
  ['cannon-es, plain grade', theirs(cannon, plain, bench.seconds)],
  ['odex, plain grade', theirs(odex, plain, bench.seconds)],
  ['Rapier, plain grade', theirs(rapier, plain, bench.seconds / 8)],
]);
const members = ensembleOnHelix(256, 2);
const rows = [
  ...helix,
  ...versus(plain, bench.seconds, [cannon, 1], [odex, 1], [rapier, 1 / 8]),
  ...versus(slackRich, bench.seconds, [cannon, 1], [odex, 1], [rapier, 1 / 8]),
  ...versus(long, 5, [cannon, 1], [odex, 1], [rapier, 1 / 10]),
  ...race(
    '256 trains on the helix for 2 s, preparation included',
    bench.vehicles,
    [
      [own, many(members, runEnsemble)],
      ['each by itself (8 of them)', many(members.slice(0, 8), (inputs) => inputs.map(run))],
    ],
    3,
  ),
];

const scaling = [5, 20, 80, 200, 500].map((vehicles) => {
  const seconds = Math.max(400 / vehicles, 4);
  const [row] = race(`${vehicles}`, vehicles, [[own, ours(onHelix(vehicles, 0.3), seconds)]], 4);
  return { vehicles, nanosecondsPerVehicleStep: 1000 / row!.rate };
});

const thirty = onHelix(30);
const preparation = {
  steadyPassMs: best(() => {
    steadyRun(thirty, { every: 0.02, setting: 0.7 });
  }),
  steadyPassOf: `30 vehicles, ${thirty.path.track.length.toFixed(0)} m of track, stations 20 mm apart`,
  startMs: best(() => {
    startRun(onHelix());
  }),
  startOf: `tables of a helix of ${onHelix().path.track.length.toFixed(0)} m for two kinds of vehicle`,
};

/** One frame: its time, two numbers a vehicle, four a joint, seven an engine; see recorder.ts. */
const bytesPerFrame = 8 * (1 + 2 * bench.vehicles + 4 * (bench.vehicles - 1) + 7);
const memory = { bytesPerFrame, bytesPerFrameAndVehicle: bytesPerFrame / bench.vehicles };

const report = {
  stepMs: bench.step * 1000,
  rounds: ROUNDS,
  rows: rows.map(({ engine, case: what, vehicles, rate, speeds }) => ({
    engine,
    case: what,
    vehicles,
    millionVehicleStepsPerSecond: rate,
    ownIsTimesFaster: rows.find((row) => row.case === what && row.engine === own)!.rate / rate,
    engineSpeedMetresPerSecond: speeds?.[0] ?? null,
    lastSpeedMetresPerSecond: speeds?.[1] ?? null,
  })),
  shareOfDependentChain: helix[0]!.rate / helix[1]!.rate,
  scaling,
  preparation,
  memory,
};

if (process.argv.includes('--json')) console.log(JSON.stringify(report, null, 2));
else {
  console.log(`${report.stepMs} ms steps, best of ${ROUNDS} rounds`);
  for (const [r, row] of report.rows.entries()) {
    if (row.case !== report.rows[r - 1]?.case) console.log(`\n${row.case}, ${row.vehicles} vehicles`);
    const rate = `${row.millionVehicleStepsPerSecond.toFixed(2)} M/s`;
    const ratio = row.engine === own ? '' : `own is x ${row.ownIsTimesFaster.toFixed(2)}`;
    const [first, last] = [row.engineSpeedMetresPerSecond, row.lastSpeedMetresPerSecond];
    const ends = first === null ? '' : `ends at ${first.toFixed(6)}, ${last!.toFixed(6)} m/s`;
    console.log(`  ${row.engine.padEnd(28)}${rate.padStart(11)}   ${ratio.padEnd(16)}${ends}`);
  }
  console.log(`\n${(100 * report.shareOfDependentChain).toFixed(0)} % of the dependent chain alone, on the helix`);
  for (const { vehicles, nanosecondsPerVehicleStep } of scaling)
    console.log(`${String(vehicles).padStart(4)} vehicles: ${nanosecondsPerVehicleStep.toFixed(1)} ns a vehicle-step`);
  console.log(`steady pass ${preparation.steadyPassMs.toFixed(1)} ms: ${preparation.steadyPassOf}`);
  console.log(`start of a run ${preparation.startMs.toFixed(0)} ms: ${preparation.startOf}`);
  console.log(`a frame takes ${memory.bytesPerFrameAndVehicle.toFixed(0)} bytes a vehicle`);
}
