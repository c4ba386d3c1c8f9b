import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { BadInput, type ExitCode, exitCodes } from './exitCodes.ts';
import { help } from './help.ts';
import { createProgressLine } from './progressLine.ts';
import { readScene } from './readScene.ts';
import { section, sectionCsv, sectionText } from './section.ts';
import { runTrials } from './trial.ts';

const options = {
  trial: { type: 'string' },
  train: { type: 'string' },
  track: { type: 'string' },
  every: { type: 'string' },
  json: { type: 'boolean' },
  csv: { type: 'boolean' },
  version: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

/** Where a command writes: results to `out`, everything else to `err`. */
export interface Streams {
  readonly out: { write(text: string): unknown };
  readonly err: { readonly isTTY: boolean; write(text: string): boolean };
}

type Values = ReturnType<typeof parse>['values'];

const taken: Readonly<Record<string, readonly (keyof Values)[]>> = {
  trial: ['trial', 'train', 'json'],
  section: ['track', 'every', 'json', 'csv'],
  help: [],
};

function parse(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new BadInput(error instanceof Error ? error.message : String(error));
  }
}

/** Does what the arguments ask and answers with the exit code. Bad input is told on `err`; an error of the program is thrown. */
export async function commandLine(args: readonly string[], streams: Streams): Promise<ExitCode> {
  try {
    return await obey(args, streams);
  } catch (error) {
    if (!(error instanceof BadInput)) throw error;
    streams.err.write(`${error.message}\n`);
    return exitCodes.badInput;
  }
}

async function obey(args: readonly string[], { out, err }: Streams): Promise<ExitCode> {
  const { values, positionals } = parse(args);
  const [command, ...files] = positionals;
  if (values.version) {
    out.write(`${programVersion()}\n`);
    return exitCodes.passes;
  }
  if (values.help || command === 'help' || (command === undefined && args.length === 0)) {
    out.write(help);
    return exitCodes.passes;
  }
  const allowed = command === undefined ? undefined : taken[command];
  if (command === undefined || allowed === undefined) {
    throw new BadInput(`There is no command "${command ?? ''}". Commands: trial, section, help.`);
  }
  for (const key of Object.keys(values) as (keyof Values)[]) {
    if (!allowed.includes(key)) throw new BadInput(`--${key} does not go with ${command}.`);
  }
  if (files.length !== 1) throw new BadInput(`Name one scene file: gradewright ${command} scenes/01-wren-gill.json`);
  return command === 'trial' ? trialCommand(files[0], values, { out, err }) : sectionCommand(files[0], values, out);
}

async function trialCommand(file: string, values: Values, { out, err }: Streams): Promise<ExitCode> {
  const scene = readScene(file);
  const line = createProgressLine(err);
  try {
    const output = await runTrials(scene, values, line.show);
    line.clear();
    out.write(values.json ? `${JSON.stringify(output.report, null, 2)}\n` : output.text);
    return output.exitCode;
  } finally {
    line.clear();
  }
}

function sectionCommand(file: string, values: Values, out: Streams['out']): ExitCode {
  if (values.json && values.csv) throw new BadInput('--json and --csv exclude each other.');
  const report = section(readScene(file), values.track, values.every);
  const text = values.json
    ? `${JSON.stringify(report, null, 2)}\n`
    : values.csv
      ? sectionCsv(report)
      : sectionText(report);
  out.write(text);
  return exitCodes.passes;
}

function programVersion(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return String((JSON.parse(text) as { version: unknown }).version);
}
