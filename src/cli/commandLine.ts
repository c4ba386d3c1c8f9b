import { readFileSync } from 'node:fs';
import { nearestWords } from '../scene/index.ts';
import { readArguments } from './arguments.ts';
import { commands, type Streams } from './commands.ts';
import { BadInput, type ExitCode, exitCodes } from './exitCodes.ts';
import { type CommandName, commandNames, help, helpOn } from './help.ts';

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

async function obey(args: readonly string[], streams: Streams): Promise<ExitCode> {
  const { words, values } = readArguments(args);
  const [first, ...rest] = words;
  if (values.version) {
    streams.out.write(`${programVersion()}\n`);
    return exitCodes.passes;
  }
  if (args.length === 0 || first === 'help' || (values.help && first === undefined)) {
    streams.out.write(rest[0] === undefined ? help() : helpOn(commandOf(rest[0])));
    return exitCodes.passes;
  }
  const command = commandOf(first);
  if (values.help) {
    streams.out.write(helpOn(command));
    return exitCodes.passes;
  }
  if (rest.length !== 1) {
    const found = rest.length === 0 ? 'none is named' : `${rest.length} are named`;
    throw new BadInput(`${command} takes one scene file and ${found}: gradewright ${command} scenes/01-wren-gill.json`);
  }
  return commands[command](rest[0], values, streams);
}

/** A word as the name of a command. Throws BadInput when it is none. */
function commandOf(word: string | undefined): CommandName {
  const found = commandNames.find((one) => one === word);
  if (found !== undefined) return found;
  const list = `Commands: ${commandNames.join(', ')}, help.`;
  if (word === undefined) throw new BadInput(`No command is named. ${list}`);
  const [nearest] = nearestWords(word, [...commandNames, 'help']);
  throw new BadInput(`There is no command "${word}"; "${nearest}" is the nearest. ${list}`);
}

function programVersion(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return String((JSON.parse(text) as { version: unknown }).version);
}
