import { measures } from '../sim/study/index.ts';

/** A command of the program as its help tells it. */
export interface HelpPage {
  /** How it is written. */
  readonly usage: string;
  /** What it does, in one line. */
  readonly does: string;
  readonly options: readonly (readonly [option: string, meaning: string])[];
  /** Whole commands to be copied. */
  readonly examples: readonly string[];
}

const workersOption = ['--workers 2', 'threads that run trials; one for each core, up to four, when left out'] as const;

const measureOption = ['--measure WORD', `told of each: ${measures.map(({ id }) => id).join(', ')}`] as const;

/** Options of every study. */
const studyOptions = [
  ['--trial ID', 'only this trial; all that the numbers matter to when left out'],
  ['--risk ID', 'this risk alone decides; everything when left out'],
  ['--limit "WORD<=AMOUNT"', 'a measure has to keep this too, <= or >=, in any unit: "room-depth<=1600mm"'],
  ['--quick', 'the quasi-static pass instead of full runs: run-ins and starts are left out'],
  workersOption,
  ['--json', 'one JSON document instead (docs/reference)'],
  ['--csv', 'comma-separated values instead'],
] as const;

/** The commands that read a scene file. `gradewright help NAME` prints a page. */
export const helpPages = {
  trial: {
    usage: 'gradewright trial FILE [--trial ID] [--train ID] [--explain] [--json]',
    does: 'Runs the trials of a scene file and says what they found, the gravest first.',
    options: [
      ['--trial ID', 'only this trial'],
      ['--train ID', 'only trials of this train; with --trial: that trial with this train'],
      ['--explain', 'says of every check, in two sentences, what it is'],
      ['--json', 'one JSON document instead (docs/reference/trial.schema.json)'],
    ],
    examples: [
      'gradewright trial scenes/01-wren-gill.json',
      'gradewright trial scenes/01-wren-gill.json --trial propelled-down --json',
    ],
  },
  section: {
    usage: 'gradewright section FILE [--track ID] [--every LENGTH] [--json | --csv]',
    does: 'Long section of a track: chainage, place, height, heading, curvature, grade, cant, twist.',
    options: [
      ['--track ID', 'this track; the first when left out'],
      ['--every 10mm', 'step between rows, in any unit (10mm, 1/2in, 0.1m); 100 mm when left out'],
      ['--json', 'one JSON document instead (docs/reference/section.schema.json)'],
      ['--csv', 'comma-separated values instead'],
    ],
    examples: ['gradewright section scenes/01-wren-gill.json --every 10mm --csv'],
  },
  sweep: {
    usage: 'gradewright sweep FILE --vary ADDRESS=FROM..TO [--vary …] [options] [--json | --csv]',
    does: 'Varies one number of a scene, or two, and says where passing turns into failing: exit 1 when nothing passes.',
    options: [
      ['--vary ADDRESS=FROM..TO', 'the number and its range; twice for a map of two numbers'],
      ['--list', 'shows every number that can be varied, with its address'],
      ['--points 9', 'values evenly apart; 9 when left out, 6 either way for a map'],
      measureOption,
      ['--edge 5mm', 'pins edges down to this; a 64th of the range when left out'],
      ...studyOptions,
    ],
    examples: [
      'gradewright sweep scenes/01-wren-gill.json --list',
      'gradewright sweep scenes/01-wren-gill.json --vary tracks/gill-line/supports/off/38/byMm=-3..3 --trial propelled-down',
    ],
  },
  chance: {
    usage: 'gradewright chance FILE --vary ADDRESS=LOW..HIGH [--vary …] [options] [--json | --csv]',
    does: 'With what probability trials pass when numbers are only known within ranges, and which number decides.',
    options: [
      ['--vary ADDRESS=LOW..HIGH', 'a number and the range it lies in; as many as are uncertain'],
      ['--draws 40', 'runs of every trial; 40 when left out'],
      ['--seed 1', 'another seed gives other draws'],
      ...studyOptions,
    ],
    examples: ['gradewright chance scenes/07-thistledown-bank.json --vary stock/tank-engine/massG=200..230 --quick'],
  },
  compare: {
    usage: 'gradewright compare FILE [--with ADDRESS=VALUE] [--variant ID] [options] [--json | --csv]',
    does: 'Sets a scene beside variants of it: what each comes to, and what its tracks take.',
    options: [
      ['--with ADDRESS=VALUE', 'a variant; several numbers with ";" between, a name with ":" before'],
      ['--variant ID', 'a variant of the scene file; all of them when nothing is named'],
      measureOption,
      ...studyOptions,
    ],
    examples: [
      'gradewright compare scenes/01-wren-gill.json --with "Long mouth: tracks/gill-line/alignment/mouth/lengthMm=450"',
    ],
  },
  best: {
    usage:
      'gradewright best FILE [--track ID] [--hold CHAINAGE] [--vary ADDRESS=FROM..TO …] [options] [--json | --csv]',
    does: 'The profile with the least ruling grade on the plan of a track, proven; with --vary the best plan too: exit 1 when none keeps all that is asked.',
    options: [
      ['--track ID', 'this track; the first that is varied, or the first, when left out'],
      [
        '--vary ADDRESS=FROM..TO',
        'a number to be chosen, one to eight; ..STEP behind it: its step, 1 mm, 0.1° or 0.01 % when left out',
      ],
      ['--aim WORD', 'the least ruling grade (the usual), or the greatest smallest margin of the trials'],
      ['--front', 'instead: every route that no other beats in grade, room and margin together'],
      ['--solve ADDRESS', 'a number worked out so that the track ends where it ends now; up to three'],
      ['--keep-end', 'the track must end where it ends now, whatever is chosen; --solve says so too'],
      ['--heights WORD', 'with --vary: best, found anew for every plan (the usual), or own, as the scene has them'],
      ['--least-radius 600', 'tightest radius in plan, mm'],
      ['--room 3800x1600', 'decks stay within this from the corner of the room, mm; within its walls when left out'],
      [
        '--allow WORD',
        'walls, obstacles or boards: this of the scene’s room is no limit; decks keep inside, clear and on them otherwise',
      ],
      ['--looks 300', 'railways looked at, at most'],
      ['--trial ID', 'only this trial; all that the numbers matter to when left out'],
      ['--risk ID', 'this risk alone decides; everything when left out'],
      workersOption,
      ['--hold 2400', 'the height at this chainage, mm, stays; as many as are fixed. The ends always stay'],
      ['--radius 10000', 'least vertical radius, mm'],
      ['--steepest 6', 'steepest grade anywhere, per cent'],
      ['--towards WORD', 'climbs that count: towards the end, the start, or both (the usual)'],
      ['--over 1200', 'the mean over a train this long rules, mm; the steepest place when left out'],
      ['--curve 813', 'curve drag as a grade: this over the radius, in mm and per cent'],
      ['--headroom 65', 'rail top to the rail or deck that passes over it, mm; not held when left out'],
      ['--json', 'one JSON document instead (docs/reference/best.schema.json)'],
      ['--csv', 'comma-separated values instead'],
    ],
    examples: [
      'gradewright best scenes/05-quayside-flyover.json --hold 2000 --radius 20000',
      'gradewright best scenes/02-marlow-fold.json --vary tracks/outer/alignment/fold/radiusMm=480..600..5 --room 4100x1700',
    ],
  },
  loads: {
    usage: 'gradewright loads FILE [--trial ID] [--engine ID] [--kind ID] [--most 40] [--json | --csv]',
    does: 'The greatest number of vehicles of each kind that each engine takes through each trial.',
    options: [
      ['--trial ID', 'only this trial'],
      ['--engine ID', 'vehicles of the stock with a drive; all of them when left out'],
      ['--kind ID', 'vehicles to be moved; all kinds without a drive when left out'],
      ['--most 40', 'vehicles asked about at most'],
      ['--risk ID', 'this risk alone decides; everything when left out'],
      workersOption,
      ['--json', 'one JSON document instead (docs/reference/loads.schema.json)'],
      ['--csv', 'comma-separated values instead'],
    ],
    examples: ['gradewright loads scenes/07-thistledown-bank.json --trial pulled-up --risk stall'],
  },
  survey: {
    usage: 'gradewright survey FILE [--survey ID | --readings FILE] [--track ID] [--objective WORD] [--json]',
    does: 'What the readings taken along a track say of its supports, and which to touch: exit 1 when some.',
    options: [
      ['--survey ID', 'this survey of the scene; the first when left out'],
      ['--readings FILE', 'a table of readings instead (docs/reference/commands.md)'],
      ['--track ID', 'of this track; the first that fits when left out'],
      ['--objective WORD', 'fewest supports touched (the usual), flattest line, or least change in all'],
      ['--json', 'one JSON document instead (docs/reference/survey.schema.json)'],
    ],
    examples: [
      'gradewright survey scenes/08-harebell-spiral.json',
      'gradewright survey scenes/08-harebell-spiral.json --readings readings.csv --objective flattest',
    ],
  },
  build: {
    usage: 'gradewright build FILE [--track ID] [--every LENGTH] [--thread M6] [--sheet 2440x1220] [--json | --csv]',
    does: 'What to build: the height of every support, blocks from turn to turn, the pieces to saw and the sheets they come out of.',
    options: [
      ['--track ID', 'only this track; all of them when left out'],
      ['--every 300mm', 'lays supports this far apart on tracks that have none'],
      ['--thread M6', 'also by how many turns a nut stands above the one before (M4 to M12, coarse)'],
      ['--sheet 2440x1220', 'size of the sheets, mm or any unit; 2440x1220 when left out'],
      ['--kerf 3mm', 'width of the saw’s cut; 3 mm when left out'],
      ['--longest 600mm', 'longest curved piece; 600 mm when left out'],
      ['--drawing svg', 'the sheets at full size instead, to print or to saw by: svg or dxf'],
      ['--json', 'one JSON document instead (docs/reference/build.schema.json)'],
      ['--csv', 'the heights as comma-separated values instead'],
    ],
    examples: [
      'gradewright build scenes/01-wren-gill.json --thread M6',
      'gradewright build scenes/01-wren-gill.json --drawing dxf > sheets.dxf',
    ],
  },
  page: {
    usage: 'gradewright page FILE [--no-loads] [--inches] [--one-in] [--date WORDS] > page.html',
    does: 'One file of HTML to pass on or to print: verdict, cards, every train both ways, drawings with the bad places, ratings.',
    options: [
      ['--no-loads', 'leaves out what each engine takes up, the longest part of the work'],
      ['--inches', 'lengths in inches'],
      ['--one-in', 'grades as 1 in n'],
      ['--date WORDS', 'written on it as it is; today when left out'],
    ],
    examples: ['gradewright page scenes/01-wren-gill.json > wren-gill.html'],
  },
  import: {
    usage: 'gradewright import FILE.(csv|svg|dxf) [--tolerance LENGTH] [--scale NAME] [--eased] [--out FILE]',
    does: 'Makes a scene along a measured or drawn centreline: the fewest elements found within the tolerance.',
    options: [
      ['--tolerance 1mm', 'no point lies further off than this; 1 mm when left out'],
      ['--scale HO', 'gauge and vehicles: Z, N, TT, HO, OO, S, O, 1; HO when left out'],
      ['--eased', 'curves are eased, so that curvature never jumps'],
      ['--out FILE', 'writes the scene to a new file; to standard output when left out'],
    ],
    examples: ['gradewright import measured.csv --tolerance 2mm --eased --out my-line.json'],
  },
} as const satisfies Readonly<Record<string, HelpPage>>;

export type CommandName = keyof typeof helpPages;

export const commandNames = Object.keys(helpPages) as readonly CommandName[];

const codes = `Exit code: 0 all passes, 1 something fails, 2 input that has to be mended,
70 a fault of the program.
Results go to standard output, progress and errors to standard error.
Ctrl-C ends a study and prints what is done until then; twice ends the program.
`;

const columns = (rows: readonly (readonly [string, string])[], indent: string): string => {
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `${indent}${left.padEnd(width)}  ${right}\n`).join('');
};

/** What `gradewright help` prints. */
export function help(): string {
  const pages = commandNames.map((name) => {
    const { usage, does, options } = helpPages[name];
    return `  ${usage}\n      ${does}\n${columns(options, '      ')}`;
  });
  return `Gradewright: decide, build, prove and mend a model-railway route on grades.

${pages.join('\n')}
  gradewright help [COMMAND]
  gradewright --version

${codes}`;
}

/** What `gradewright help NAME` and `gradewright NAME --help` print. */
export function helpOn(name: CommandName): string {
  const { usage, does, options, examples } = helpPages[name];
  return `${usage}

${does}

${columns(options, '  ')}
For example:
${examples.map((one) => `  ${one}\n`).join('')}
${codes}`;
}
