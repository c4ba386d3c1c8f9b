/**
 * Times the solver beside general engines on one 20-vehicle train, all in one process run after run.
 * Rates are the best of several rounds, since other work on the machine only ever slows a round; ratios are what counts.
 */
import { startRun } from '../../src/core/dynamics/index.ts';
import type { RunInput } from '../../src/core/dynamics/types.ts';
import { cannon, odex, type Rival, rapier } from './rivals.ts';
import { bench, onHelix, plainGrade } from './train.ts';

const ROUNDS = 5;

interface Row {
  name: string;
  case: string;
  /** Million vehicle-steps of 1 ms a second of clock. */
  rate: number;
  /** Speed of the engine and of the last wagon at the end, m/s. */
  speeds: [number, number];
}

const rows: Row[] = [];

function ours(name: string, what: string, make: () => RunInput): void {
  let rate = 0;
  let speeds: [number, number] = [0, 0];
  for (let round = 0; round < ROUNDS; round++) {
    const stepper = startRun(make());
    const began = performance.now();
    const over = stepper.advance(bench.seconds);
    const took = performance.now() - began;
    if (over) throw new Error(`${name} on ${what} ended before ${bench.seconds} s`);
    const result = stepper.finish();
    rate = Math.max(rate, (result.steps * bench.vehicles) / took / 1000);
    const last = (result.frames - 1) * bench.vehicles;
    speeds = [result.speed[last]!, result.speed[last + bench.vehicles - 1]!];
  }
  rows.push({ name, case: what, rate, speeds });
}

function rival({ name, run }: Rival, seconds: number): void {
  let rate = 0;
  let speeds: [number, number] = [0, 0];
  for (let round = 0; round < ROUNDS; round++) {
    const began = performance.now();
    const end = run(seconds);
    const took = performance.now() - began;
    rate = Math.max(rate, ((seconds / bench.step) * bench.vehicles) / took / 1000);
    speeds = [end[0]!, end[bench.vehicles - 1]!];
  }
  rows.push({ name, case: 'plain grade', rate, speeds });
}

ours('gradewright', 'plain grade', plainGrade);
ours('gradewright', 'helix, full force model', onHelix);
rival(cannon, bench.seconds);
rival(odex, bench.seconds);
// Slow enough that a shorter run says the same; its speed is compared at its own end.
rival(rapier, bench.seconds / 4);

const helixRate = rows[1]!.rate;
const report = {
  vehicles: bench.vehicles,
  stepMs: bench.step * 1000,
  rounds: ROUNDS,
  rows: rows.map((row) => ({
    engine: row.name,
    case: row.case,
    millionVehicleStepsPerSecond: row.rate,
    helixRunIsTimesFaster: helixRate / row.rate,
    engineSpeedMetresPerSecond: row.speeds[0],
    lastSpeedMetresPerSecond: row.speeds[1],
  })),
};

if (process.argv.includes('--json')) console.log(JSON.stringify(report, null, 2));
else {
  console.log(`${bench.vehicles} vehicles, ${bench.step * 1000} ms steps, best of ${ROUNDS} rounds`);
  for (const row of report.rows) {
    console.log(
      `${row.engine.padEnd(12)} ${row.case.padEnd(24)} ${row.millionVehicleStepsPerSecond.toFixed(2).padStart(7)} M/s` +
        `   helix run is ${row.helixRunIsTimesFaster.toFixed(1).padStart(6)} times as fast` +
        `   ends at ${row.engineSpeedMetresPerSecond.toFixed(6)} m/s`,
    );
  }
}
