/**
 * Times the solver beside general engines, all in one process, each case round by round with its rivals, so that what else
 * the machine does meets all alike. Rates are the best of several rounds, since other work only ever slows a round; ratios
 * are what counts, though a short go meets a quiet moment sooner than a long one. Beside its speed stands by how much a rival ends otherwise
 * than this solver; where an engine that solves the same equations is beyond the tolerance, the line says so and the command fails. `--json` prints everything.
 */
import { run, runEnsemble, startRun } from '../../src/core/dynamics/index.ts';
import { groundFor, startOn, toEnd } from '../../src/core/dynamics/run.ts';
import type { RunInput } from '../../src/core/dynamics/types.ts';
import { type Difference, difference, disagrees, type End, ownEnd, settled, underWay } from './agreement.ts';
import { chainBound } from './chainBound.ts';
import { agreementOf, forty, steadyForty } from './forty.ts';
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
  /** By how much it ends otherwise than this solver, and whether that is too much; null where nothing comparable moved. */
  differs: { by: Difference; sameEquations: boolean; disagrees: boolean } | null;
}

/** Does its work once, and says for how many vehicle-steps it was good, in how long, ms, and how the train ended. */
type Timed = () => { vehicleSteps: number; took: number; end?: End };

function ours(input: RunInput, seconds: number): Timed {
  return () => {
    const stepper = startRun(input);
    const began = performance.now();
    const over = stepper.advance(seconds);
    const took = performance.now() - began;
    if (over) throw new Error(`the run ended before ${seconds} s`);
    const { steps, vehicles } = stepper.finish();
    return { vehicleSteps: steps * vehicles, took };
  };
}

function theirs({ run: go }: Rival, task: Task, seconds: number): Timed {
  return () => {
    const began = performance.now();
    const end = go(seconds, task);
    const took = performance.now() - began;
    return { vehicleSteps: (seconds / bench.step) * task.vehicles, took, end };
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
    return { vehicleSteps: runs.reduce((sum, one) => sum + one.steps * one.vehicles, 0), took };
  };
}

/** Many runs on ground laid before, so that only the trains' own work is timed. */
function manyOnGround(inputs: readonly RunInput[]): Timed {
  const ground = groundFor(inputs[0]!);
  return many(inputs, (all) =>
    all.map((input) => {
      const stepper = startOn(ground, input);
      const done = toEnd(stepper);
      stepper.leave();
      return done;
    }),
  );
}

/** Bare elimination and back substitution over as many vehicles. */
function bound(vehicles: number): Timed {
  return () => {
    const steps = 20_000;
    const { took } = chainBound(vehicles, steps);
    return { vehicleSteps: vehicles * steps, took };
  };
}

/** Times the entries of one case against each other, all of them in every round. */
function race(what: string, vehicles: number, entries: readonly (readonly [string, Timed])[], rounds = ROUNDS): Row[] {
  const rows = entries.map(([engine]): Row => ({ engine, case: what, vehicles, rate: 0, differs: null }));
  for (let round = 0; round < rounds; round++) {
    entries.forEach(([, timed], e) => {
      for (let spent = 0; spent < TURN; ) {
        const { vehicleSteps, took } = timed();
        spent += took;
        rows[e]!.rate = Math.max(rows[e]!.rate, vehicleSteps / took / 1000);
      }
    });
  }
  return rows;
}

/** A task on the plain grade; a rival that is slow runs a share of the time, and is held against this solver at its own end. */
function versus(task: Task, seconds: number, most: Difference, ...rivals: readonly (readonly [Rival, number])[]) {
  const input = plainGrade(task);
  const rows = race(task.name, task.vehicles, [
    [own, ours(input, seconds)],
    ...rivals.map(([rival, share]) => [rival.name, theirs(rival, task, seconds * share)] as const),
  ]);
  rivals.forEach(([{ run: go, sameEquations }, share], r) => {
    const by = difference(ownEnd(input, seconds * share), go(seconds * share, task));
    rows[r + 1]!.differs = { by, sameEquations, disagrees: sameEquations && disagrees(by, most) };
  });
  return rows;
}

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
  ...versus(plain, bench.seconds, settled, [cannon, 1], [odex, 1], [rapier, 1 / 8]),
  ...versus(slackRich, bench.seconds, settled, [cannon, 1], [odex, 1], [rapier, 1 / 8]),
  ...versus(long, 5, underWay, [cannon, 1], [odex, 1], [rapier, 1 / 10]),
  ...race(
    '256 trains on the helix for 2 s, on one core',
    bench.vehicles,
    [
      [own, many(members, runEnsemble)],
      ['without preparation', manyOnGround(members)],
      ['one train without it', manyOnGround(members.slice(0, 1))],
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

/** One train for longer and longer. */
const duration = [10, 40, 160].map((seconds) => {
  const [row] = race(
    `${seconds} s`,
    bench.vehicles,
    [[own, ours(onHelix(bench.vehicles, bench.setting, 16), seconds)]],
    4,
  );
  return { seconds, nanosecondsPerVehicleStep: 1000 / row!.rate };
});

const thirty = forty();
const preparation = {
  steadyPassMs: best(() => {
    steadyForty(thirty);
  }),
  steadyPassOf: `30 different vehicles, ${thirty.path.track.length.toFixed(0)} m of track, stations 20 mm apart`,
  steadyPassAgreement: agreementOf(thirty),
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
  rows: rows.map(({ engine, case: what, vehicles, rate, differs }) => ({
    engine,
    case: what,
    vehicles,
    millionVehicleStepsPerSecond: rate,
    ownIsTimesFaster: rows.find((row) => row.case === what && row.engine === own)!.rate / rate,
    differs,
  })),
  shareOfDependentChain: helix[0]!.rate / helix[1]!.rate,
  scaling,
  duration,
  preparation,
  memory,
};

const share = (part: number) => `${(100 * part).toPrecision(2)} %`;

/** How a rival's end differs, in words. */
function wordsOf(differs: Row['differs']): string {
  if (differs === null) return '';
  const { by, sameEquations } = differs;
  const verdict = differs.disagrees ? 'disagrees: ' : sameEquations ? '' : 'single precision, iterative: ';
  return `${verdict}differs by ${share(by.speed)} of speed, ${share(by.way)} of way, ${share(by.force)} of force`;
}

if (process.argv.includes('--json')) console.log(JSON.stringify(report, null, 2));
else {
  console.log(`${report.stepMs} ms steps, best of ${ROUNDS} rounds`);
  for (const [r, row] of report.rows.entries()) {
    if (row.case !== report.rows[r - 1]?.case) console.log(`\n${row.case}, ${row.vehicles} vehicles`);
    const rate = `${row.millionVehicleStepsPerSecond.toFixed(2)} M/s`;
    const ratio = row.engine === own ? '' : `own is x ${row.ownIsTimesFaster.toFixed(2)}`;
    console.log(`  ${row.engine.padEnd(28)}${rate.padStart(11)}   ${ratio.padEnd(16)}${wordsOf(row.differs)}`);
  }
  console.log(`\n${(100 * report.shareOfDependentChain).toFixed(0)} % of the dependent chain alone, on the helix`);
  for (const { vehicles, nanosecondsPerVehicleStep } of scaling)
    console.log(`${String(vehicles).padStart(4)} vehicles: ${nanosecondsPerVehicleStep.toFixed(1)} ns a vehicle-step`);
  for (const { seconds, nanosecondsPerVehicleStep } of duration)
    console.log(`${String(seconds).padStart(4)} s: ${nanosecondsPerVehicleStep.toFixed(1)} ns a vehicle-step`);
  const { steadyShare, speed, force } = preparation.steadyPassAgreement;
  console.log(`steady pass ${preparation.steadyPassMs.toFixed(1)} ms: ${preparation.steadyPassOf}`);
  console.log(
    `  differs from the full run by ${share(speed)} of speed, ${share(force)} of force where motion is steady, ${share(steadyShare)} of the way`,
  );
  console.log(`start of a run ${preparation.startMs.toFixed(0)} ms: ${preparation.startOf}`);
  console.log(`a frame takes ${memory.bytesPerFrameAndVehicle.toFixed(0)} bytes a vehicle`);
}
if (rows.some(({ differs }) => differs?.disagrees)) process.exitCode = 1;
