import type { StudyHooks } from '../core/study/index.ts';
import { createInProcessHost } from '../sim/index.ts';
import { createProbePool, type ProbeBy, type ProbePool } from '../sim/study/index.ts';
import type { Arguments } from './arguments.ts';
import { best } from './best/best.ts';
import { bestRoute } from './best/bestRoute.ts';
import { build, drawingOf, threadOf } from './build/build.ts';
import { buildReport } from './build/buildReport.ts';
import { buildCsv, buildText } from './build/buildText.ts';
import { listenForCallOff } from './callOff.ts';
import { BadInput, type ExitCode, exitCodes } from './exitCodes.ts';
import type { CommandName } from './help.ts';
import { importScene } from './importScene.ts';
import { page } from './page.ts';
import { createProgressLine } from './progressLine.ts';
import { readScene } from './readScene.ts';
import { section, sectionCsv, sectionText } from './section.ts';
import { chance } from './studies/chance.ts';
import { compare } from './studies/compare.ts';
import { loads } from './studies/loads.ts';
import type { StudyOptions } from './studies/studyTrials.ts';
import { workersOf } from './studies/studyWorkers.ts';
import { quantityList, type StudyOutput, sweep } from './studies/sweep.ts';
import { runSurvey } from './survey/survey.ts';
import { runTrials } from './trial/trial.ts';

/** Where a command writes: results to `out`, everything else to `err`; and what the process lends to studies. */
export interface Streams {
  readonly out: { write(text: string): unknown };
  readonly err: { readonly isTTY: boolean; write(text: string): boolean };
  /** Threads that run trials; this thread alone when left out. */
  readonly workers?: (count: number) => ProbePool;
  /** Where Ctrl-C is heard; nowhere when left out. */
  readonly interrupts?: Pick<NodeJS.Process, 'once' | 'off'>;
}

type Values = Arguments['values'];

/** Does what a command asks of one file. */
export type Command = (file: string, values: Values, streams: Streams) => ExitCode | Promise<ExitCode>;

export const commands: Readonly<Record<CommandName, Command>> = {
  trial: async (file, values, { out, err }) => {
    const scene = readScene(file);
    const output = await withProgress(err, (show) => runTrials(scene, values, show));
    out.write(values.json ? jsonOf(output.report) : output.text);
    return output.exitCode;
  },

  section(file, values, { out }) {
    const form = formOf(values);
    const report = section(readScene(file), values.track, values.every);
    out.write(form === 'json' ? jsonOf(report) : form === 'csv' ? sectionCsv(report) : sectionText(report));
    return exitCodes.passes;
  },

  sweep(file, values, streams) {
    const scene = readScene(file);
    if (values.list) {
      streams.out.write(quantityList(scene));
      return exitCodes.passes;
    }
    const { vary = [], points, edge, measure } = values;
    return study(values, streams, (hooks, probe) =>
      sweep(scene, { ...shared(values), vary, points, edge, measure }, hooks, probe),
    );
  },

  chance(file, values, streams) {
    const scene = readScene(file);
    const { vary = [], draws, seed } = values;
    return study(values, streams, (hooks, probe) =>
      chance(scene, { ...shared(values), vary, draws, seed }, hooks, probe),
    );
  },

  compare(file, values, streams) {
    const scene = readScene(file);
    const { with: spoken = [], variant = [], measure } = values;
    return study(values, streams, (hooks, probe) =>
      compare(scene, { ...shared(values), with: spoken, variant, measure }, hooks, probe),
    );
  },

  best(file, values, streams) {
    const scene = readScene(file);
    const { track, hold = [], radius, steepest, towards, over, curve, headroom } = values;
    const options = { track, hold, radius, steepest, towards, over, curve, headroom };
    const { vary, solve = [], aim, front, heights, room, allow, looks } = values;
    if (vary === undefined) {
      const lone = (
        ['aim', 'front', 'solve', 'keep-end', 'heights', 'least-radius', 'room', 'allow', 'looks'] as const
      ).find((name) => values[name] !== undefined);
      if (lone !== undefined) throw new BadInput(`--${lone} goes with --vary ADDRESS=FROM..TO.`);
      return study(values, streams, () => best(scene, options));
    }
    const { trial, risk } = shared(values);
    const choice = {
      vary,
      solve,
      aim,
      front,
      heights,
      room,
      allow,
      looks,
      keepEnd: values['keep-end'],
      leastRadius: values['least-radius'],
    };
    return study(values, streams, (hooks, probe) =>
      bestRoute(scene, { ...options, ...choice, trial, risk }, hooks, probe),
    );
  },

  loads(file, values, streams) {
    const scene = readScene(file);
    const { engine, kind, most } = values;
    const { trial, risk } = shared(values);
    return study(values, streams, (hooks, probe) => loads(scene, { trial, risk, engine, kind, most }, hooks, probe));
  },

  survey: async (file, values, { out }) => {
    const output = await runSurvey(readScene(file), values);
    out.write(values.json ? jsonOf(output.report) : output.text);
    return output.exitCode;
  },

  build(file, values, { out }) {
    const drawing = values.drawing;
    if (drawing !== undefined && (values.json || values.csv)) {
      throw new BadInput('--drawing, --json and --csv exclude each other.');
    }
    const form = formOf(values);
    const thread = threadOf(values.thread);
    const scene = readScene(file);
    const plan = build(scene, values);
    if (drawing !== undefined) {
      out.write(drawingOf(drawing)(plan));
      return exitCodes.passes;
    }
    const report = buildReport(scene.name, plan);
    out.write(form === 'json' ? jsonOf(report) : form === 'csv' ? buildCsv(report) : buildText(report, thread));
    return exitCodes.passes;
  },

  page: async (file, values, { out, err, interrupts }) => {
    const scene = readScene(file);
    const calling = new AbortController();
    const callOff = listenForCallOff(interrupts, () => calling.abort());
    try {
      const html = await withProgress(err, (show) =>
        page(scene, values, { onProgress: (done) => show('Working out the page', done), signal: calling.signal }),
      );
      out.write(html);
      return exitCodes.passes;
    } finally {
      callOff.end();
    }
  },

  import(file, values, { out, err }) {
    const { scene, words } = importScene(file, values);
    if (values.out === undefined) {
      out.write(scene);
      err.write(words);
    } else out.write(words);
    return exitCodes.passes;
  },
};

/** What every study takes from the command line. */
const shared = ({ trial, risk, limit, quick }: Values): StudyOptions => ({
  trial: trial === undefined ? undefined : [trial],
  risk,
  limit,
  quick,
});

async function study(
  values: Values,
  { out, err, workers = inThisThread, interrupts }: Streams,
  run: (hooks: StudyHooks, probe: ProbeBy) => Promise<StudyOutput<unknown>>,
): Promise<ExitCode> {
  const form = formOf(values);
  const pool = workers(workersOf(values.workers));
  const callOff = listenForCallOff(interrupts, () =>
    err.write('\nEnding with what is done; once more ends the program.\n'),
  );
  try {
    const output = await withProgress(err, (show) =>
      run(
        {
          onProgress: (done, known) => show(`${done} of ${known}`, done / known),
          stopped: callOff.stopped,
          width: pool.width,
        },
        (request) => pool.probe(request),
      ),
    );
    out.write(form === 'json' ? jsonOf(output.report) : form === 'csv' ? output.csv : output.text);
    return output.exitCode;
  } finally {
    callOff.end();
    pool.dispose();
  }
}

const inThisThread = (): ProbePool => createProbePool([createInProcessHost()]);

/** Runs something with a progress line that is gone when it ends, however it ends. */
async function withProgress<T>(
  err: Streams['err'],
  run: (show: (name: string, done: number) => void) => Promise<T>,
): Promise<T> {
  const line = createProgressLine(err);
  try {
    return await run(line.show);
  } finally {
    line.clear();
  }
}

function formOf({ json, csv }: Values): 'json' | 'csv' | 'text' {
  if (json && csv) throw new BadInput('--json and --csv exclude each other.');
  return json ? 'json' : csv ? 'csv' : 'text';
}

const jsonOf = (report: unknown): string => `${JSON.stringify(report, null, 2)}\n`;
