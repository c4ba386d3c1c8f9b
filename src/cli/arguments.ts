import { parseArgs } from 'node:util';
import { nearestWords } from '../scene/index.ts';
import { BadInput } from './exitCodes.ts';
import { type CommandName, commandNames, helpPages } from './help.ts';

/** Every option of every command, and whether a word follows it. */
const options = {
  trial: { type: 'string' },
  train: { type: 'string' },
  track: { type: 'string' },
  every: { type: 'string' },
  thread: { type: 'string' },
  sheet: { type: 'string' },
  kerf: { type: 'string' },
  drawing: { type: 'string' },
  longest: { type: 'string' },
  survey: { type: 'string' },
  readings: { type: 'string' },
  objective: { type: 'string' },
  vary: { type: 'string', multiple: true },
  with: { type: 'string', multiple: true },
  variant: { type: 'string', multiple: true },
  tolerance: { type: 'string' },
  scale: { type: 'string' },
  out: { type: 'string' },
  eased: { type: 'boolean' },
  risk: { type: 'string' },
  measure: { type: 'string', multiple: true },
  limit: { type: 'string', multiple: true },
  points: { type: 'string' },
  edge: { type: 'string' },
  draws: { type: 'string' },
  aim: { type: 'string' },
  front: { type: 'boolean' },
  solve: { type: 'string', multiple: true },
  'keep-end': { type: 'boolean' },
  heights: { type: 'string' },
  'least-radius': { type: 'string' },
  room: { type: 'string' },
  allow: { type: 'string', multiple: true },
  looks: { type: 'string' },
  workers: { type: 'string' },
  hold: { type: 'string', multiple: true },
  radius: { type: 'string' },
  steepest: { type: 'string' },
  towards: { type: 'string' },
  over: { type: 'string' },
  curve: { type: 'string' },
  headroom: { type: 'string' },
  engine: { type: 'string', multiple: true },
  kind: { type: 'string', multiple: true },
  most: { type: 'string' },
  seed: { type: 'string' },
  quick: { type: 'boolean' },
  list: { type: 'boolean' },
  'no-loads': { type: 'boolean' },
  inches: { type: 'boolean' },
  'one-in': { type: 'boolean' },
  date: { type: 'string' },
  explain: { type: 'boolean' },
  json: { type: 'boolean' },
  csv: { type: 'boolean' },
  version: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

type Option = keyof typeof options;
type ListOption = { [O in Option]: (typeof options)[O] extends { multiple: true } ? O : never }[Option];
type SwitchOption = { [O in Option]: (typeof options)[O]['type'] extends 'boolean' ? O : never }[Option];
type WordOption = Exclude<Option, ListOption | SwitchOption>;

/** What a command line says: its words in order, and its options. */
export interface Arguments {
  readonly words: readonly string[];
  readonly values: Readonly<
    Partial<Record<WordOption, string>> &
      Partial<Record<ListOption, readonly string[]>> &
      Partial<Record<SwitchOption, true>>
  >;
}

/** Options that go with a command. */
const optionsOf = (name: CommandName): readonly string[] =>
  helpPages[name].options.map(([option]) => option.slice(2).split(' ')[0]);

const isCommand = (word: string | undefined): word is CommandName => commandNames.some((one) => one === word);

/** Reads a command line. Throws BadInput for an option that is not known, has no word, or does not go with the command. */
export function readArguments(args: readonly string[]): Arguments {
  const { tokens } = parseArgs({ args: [...args], options, allowPositionals: true, strict: false, tokens: true });
  const words = tokens.flatMap((token) => (token.kind === 'positional' ? token.value : []));
  const command = isCommand(words[0]) ? words[0] : undefined;
  const values: Record<string, string | true | string[]> = {};
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const { name, rawName, value } = token;
    if (!Object.hasOwn(options, name)) throw unknownOption(rawName, command);
    const known = options[name as Option];
    if (known.type === 'boolean' && value !== undefined) throw new BadInput(`${rawName} takes no value.`);
    // A value that looks like an option is one: `--trial --json` has no trial.
    const followed = value !== undefined && value !== '' && (token.inlineValue || !value.startsWith('--'));
    if (known.type === 'string' && !followed) throw new BadInput(valueMissing(rawName, command));
    if ('multiple' in known && value !== undefined) {
      values[name] = [...((values[name] as string[] | undefined) ?? []), value];
      continue;
    }
    if (Object.hasOwn(values, name)) throw new BadInput(`${rawName} stands there twice.`);
    values[name] = value ?? true;
  }
  const wrong = command && Object.keys(values).find((name) => name !== 'help' && !optionsOf(command).includes(name));
  if (command !== undefined && wrong !== undefined) {
    throw new BadInput(`--${wrong} does not go with ${command}. ${optionList(command)}`);
  }
  return { words, values };
}

const optionList = (command: CommandName): string =>
  `Options of ${command}: ${helpPages[command].options.map(([option]) => option.split(' ')[0]).join(', ')}, --help.`;

function unknownOption(rawName: string, command: CommandName | undefined): BadInput {
  const own = command === undefined ? Object.keys(options) : [...optionsOf(command), 'help'];
  const [nearest] = nearestWords(rawName.replace(/^-+/, ''), own);
  const list = command === undefined ? `There are: ${own.map((one) => `--${one}`).join(', ')}.` : optionList(command);
  return new BadInput(`There is no option ${rawName}; --${nearest} is the nearest. ${list}`);
}

function valueMissing(rawName: string, command: CommandName | undefined): string {
  const usage = command && helpPages[command].options.find(([option]) => option.split(' ')[0] === rawName);
  return `${rawName} needs a word after it${usage ? `: ${usage[0]}, ${usage[1]}` : ''}.`;
}
