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

async function main(args: readonly string[]): Promise<ExitCode> {
  const { values, positionals } = parse(args);
  const [command, ...files] = positionals;
  if (values.version) {
    process.stdout.write(`${programVersion()}\n`);
    return exitCodes.passes;
  }
  if (values.help || command === 'help' || (command === undefined && args.length === 0)) {
    process.stdout.write(help);
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
  return command === 'trial' ? trialCommand(files[0], values) : sectionCommand(files[0], values);
}

async function trialCommand(file: string, values: Values): Promise<ExitCode> {
  const scene = readScene(file);
  const line = createProgressLine(process.stderr);
  try {
    const output = await runTrials(scene, values, line.show);
    line.clear();
    process.stdout.write(values.json ? `${JSON.stringify(output.report, null, 2)}\n` : output.text);
    return output.exitCode;
  } finally {
    line.clear();
  }
}

function sectionCommand(file: string, values: Values): ExitCode {
  if (values.json && values.csv) throw new BadInput('--json and --csv exclude each other.');
  const report = section(readScene(file), values.track, values.every);
  const text = values.json
    ? `${JSON.stringify(report, null, 2)}\n`
    : values.csv
      ? sectionCsv(report)
      : sectionText(report);
  process.stdout.write(text);
  return exitCodes.passes;
}

function programVersion(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return String((JSON.parse(text) as { version: unknown }).version);
}

// A reader that has seen enough (`| head`) closes the pipe: that is no error of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    const known = error instanceof BadInput;
    process.stderr.write(
      `${known ? error.message : String(error instanceof Error ? (error.stack ?? error) : error)}\n`,
    );
    process.exitCode = exitCodes.badInput;
  },
);
