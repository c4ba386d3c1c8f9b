/* Over 300 lines for a reason: all that the command line promises, command by command. */
import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { commandLine } from '../../src/cli/commandLine.ts';
import { type SectionReport, sectionReportSchema } from '../../src/cli/section.ts';
import { type TrialReport, trialReportSchema } from '../../src/cli/trial/trialReport.ts';
import { bounds, parseScene } from '../../src/scene/index.ts';
import { bundledPath, sample, sampleWith } from '../scene/sample.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'gradewright-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Starting Node with a TypeScript loader takes seconds on a busy machine. */
const patience = 120_000;

interface Said {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line as a person's shell does. */
const gradewright = (...args: string[]): Promise<Said> =>
  new Promise((resolve) => {
    const command = ['--import', 'tsx', 'src/cli/main.ts', ...args];
    execFile(process.execPath, command, { cwd: root, maxBuffer: 1e8 }, (error, out, err) => {
      resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err });
    });
  });

/** The same without a process of its own, for what the shell has no part in. */
async function inThisProcess(...args: string[]): Promise<Said> {
  const said: Record<'out' | 'err', string[]> = { out: [], err: [] };
  const code = await commandLine(args, {
    out: { write: (text) => said.out.push(text) },
    err: { isTTY: false, write: (text) => said.err.push(text) > 0 },
  });
  return { code, out: said.out.join(''), err: said.err.join('') };
}

function fileOf(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

const twoTrials = [sample.trials[0], { ...sample.trials[0], id: 'pushed-up', name: 'Pushed up', leading: 'last' }];
const twice = fileOf('twice.json', { ...sample, trials: twoTrials });

describe('gradewright trial', { timeout: patience }, () => {
  it('writes findings to standard output, nothing to standard error, and exits with 0 when all pass', async () => {
    const { code, out, err } = await gradewright('trial', twice);
    expect(err).toBe('');
    expect(out).toMatch(/^Sample\n\nUp \(up\)\n {2}Arrives after \d+\.\d s: (near|passes)\.\n/);
    expect(out).toContain('Pushed up (pushed-up)');
    expect(out).toMatch(/Greatest pull [\d.]+\u2009N at joint \d, [\d.]+\u2009m/);
    expect(code).toBe(0);
  });

  it('exits with 1 when something fails, and names it first', async () => {
    const { code, out } = await gradewright('trial', bundledPath('01-wren-gill.json'), '--trial', 'propelled-down');
    expect(code).toBe(1);
    // 0.3 mm short as measured, 0.2 mm either way over the tolerances of two heads set with a gauge.
    expect(out.split('\n')[3]).toMatch(/: fails\.$/);
    expect(out.split('\n')[4]).toMatch(/^ {2}fails {4}Joint 6 rides up at/);
    expect(out).toMatch(/Margin −0\.\d\u2009mm, within tolerances −0\.\d to −0\.\d\u2009mm\./);
    expect(out).toContain('Try (not yet run): ');
  });

  it('exits with 1 when a train does not arrive', async () => {
    const path = fileOf('slow.json', sampleWith('trials.0.timeLimitS', 2));
    const { code, out } = await inThisProcess('trial', path);
    expect(code).toBe(1);
    expect(out).toContain('Has not arrived after 2.0 s: fails.');
  });

  it('writes one JSON document in full precision, twice the same to the letter', async () => {
    const first = await gradewright('trial', twice, '--json');
    const second = await gradewright('trial', twice, '--json');
    expect(first.err).toBe('');
    expect(second.out).toBe(first.out);
    const report = JSON.parse(first.out) as TrialReport;
    expect(trialReportSchema.safeParse(report).error).toBeUndefined();
    expect(report.trials.map((trial) => [trial.id, trial.propelled])).toEqual([
      ['up', false],
      ['pushed-up', true],
    ]);
    const [up, pushed] = report.trials;
    expect(up.vehicles).toEqual(['Engine', 'Coach', 'Coach']);
    expect(up.greatestDraft?.forceN).toBeGreaterThan(0);
    // The engine's own coupling carries both coaches.
    expect(up.greatestDraft?.joint).toBe(1);
    expect(pushed.greatestBuff?.forceN).toBeLessThan(0);
    // The same joint, by the same number.
    expect(pushed.greatestBuff?.joint).toBe(1);
    expect(pushed.greatestBuff?.vehicles).toEqual(up.greatestDraft?.vehicles);
    expect([up.leading, pushed.leading]).toEqual(['first', 'last']);
    expect(pushed.vehicles).toEqual(up.vehicles);
    expect(up.events.at(-1)).toMatchObject({ kind: 'arrived', vehicle: 1 });
    const { energy } = up;
    const spent = energy.kineticJ + energy.potentialJ + energy.storedJ + energy.rollingJ + energy.curveJ;
    const lost = energy.flangeJ + energy.couplerJ + energy.slipJ + energy.holdingJ;
    // The account closes to a millionth, which is what the solver promises.
    expect(Math.abs(energy.motorJ - spent - lost)).toBeLessThan(1e-6 * energy.motorJ + 1e-12);
    expect(up.risks.map((one) => one.risk)).toContain('stall');
    expect(new Set(up.risks.map((one) => one.risk)).size).toBe(up.risks.length);
  });

  it('runs only the trials of a train, or a trial with another train', async () => {
    const short = { id: 'short', name: 'Short', vehicles: [{ stock: 'engine' }, { stock: 'coach' }] };
    const path = fileOf('trains.json', { ...sample, trains: [...sample.trains, short] });
    const own = JSON.parse((await inThisProcess('trial', path, '--train', 'train', '--json')).out) as TrialReport;
    expect(own.trials.map((trial) => trial.train)).toEqual(['train']);
    const none = await inThisProcess('trial', path, '--train', 'short');
    expect(none.code).toBe(2);
    expect(none.err).toContain('No trial of this scene runs train "short"');
    const other = await inThisProcess('trial', path, '--trial', 'up', '--train', 'short', '--json');
    const report = JSON.parse(other.out) as TrialReport;
    expect(report.trials[0].vehicles).toEqual(['Engine', 'Coach']);
  });

  it.each([
    [['trial', 'nowhere.json'], 'There is no file nowhere.json (looked for /'],
    [['trial', 'nowhere.json'], 'Near there: scenes/'],
    [['trial', 'scenes/01-wren-gil.json'], 'Near there: scenes/01-wren-gill.json, '],
    [['trial', 'scenes/01-wren-gill.json/x'], 'There is no file'],
    [['trial', 'scenes'], 'scenes is a folder. Scene files in it: scenes/01-wren-gill.json, '],
    [['trial', 'src'], 'There is no scene file in it.'],
    [['trial'], 'trial takes one scene file and none is named'],
    [['trial', 'a.json', 'b.json'], 'trial takes one scene file and 2 are named'],
    [
      ['trial', 'a.json', '--every', '1mm'],
      '--every does not go with trial. Options of trial: --trial, --train, --explain, --json, --help.',
    ],
    [['trial', 'a.json', '--fast'], 'There is no option --fast'],
    [
      ['section', 'a.json', '--evry', '1mm'],
      'There is no option --evry; --every is the nearest. Options of section: --track',
    ],
    [['trial', 'a.json', '--trial'], '--trial needs a word after it: --trial ID, only this trial.'],
    [['trial', 'a.json', '--trial', '--json'], '--trial needs a word after it'],
    [['trial', 'a.json', '--json=1'], '--json takes no value'],
    [['trial', 'a.json', '--trial', 'a', '--trial', 'b'], '--trial stands there twice'],
    [['tryal', 'a.json'], 'There is no command "tryal"; "trial" is the nearest. Commands: trial, section'],
    [['help', 'sections'], 'There is no command "sections"; "section" is the nearest.'],
    [['--json'], 'No command is named. Commands: trial, section'],
  ])('refuses %j with 2 and a word on standard error', async (args, message) => {
    const { code, out, err } = await inThisProcess(...args);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(message);
  });

  it('refuses an unknown trial or train and names those there are', async () => {
    const trial = await inThisProcess('trial', twice, '--trial', 'down');
    expect(trial).toEqual({ code: 2, out: '', err: 'The scene has no trial "down". It has: up, pushed-up.\n' });
    const train = await inThisProcess('trial', twice, '--train', 'mail');
    expect(train).toEqual({ code: 2, out: '', err: 'The scene has no train "mail". It has: train.\n' });
  });

  it('names the ids most like the one asked for where there are many', async () => {
    const trials = Array.from({ length: 60 }, (_, k) => ({ ...sample.trials[0], id: `trial-${k}` }));
    const { err } = await inThisProcess('trial', fileOf('many.json', { ...sample, trials }), '--trial', 'trial-590');
    expect(err).toMatch(/^The scene has no trial "trial-590"\. It has: trial-5[09], trial-5/);
    expect(err.length).toBeLessThan(400);
  });

  it('says in which line and column a file stops being JSON', async () => {
    const path = fileOf('broken.json', JSON.stringify(sample, null, 2).replace('"OO",', '"OO"'));
    const { code, out, err } = await inThisProcess('trial', path);
    expect([code, out]).toEqual([2, '']);
    expect(err).toBe(
      [
        `${path} is not a scene that can be run:`,
        '  line 7, column 5',
        '    |     "gaugeMm": 16.5',
        '    |     ^',
        '    found:   a comma or } is missing: there is "\\""',
        '    allowed: a scene file in JSON',
        '    example: { "gradewright": 1, "name": "Wren Gill", … }',
        '',
      ].join('\n'),
    );
  });

  it('does not read a file larger than any scene', async () => {
    const { code, err } = await inThisProcess('trial', fileOf('huge.json', ' '.repeat(4 * bounds.text + 1)));
    expect(code).toBe(2);
    expect(err).toContain(`${4 * bounds.text + 1} bytes long, which no scene is`);
  });

  it('says where in a file something is wrong', async () => {
    const path = fileOf('wrong.json', sampleWith('tracks.0.alignment.1.radiusMm', -600));
    const { code, out, err } = await gradewright('trial', path);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toBe(
      [
        `${path} is not a scene that can be run:`,
        '  tracks[0].alignment[1].radiusMm',
        '    found:   -600',
        '    allowed: a number from 0.01 to 200000: Radius of the track centreline, mm.',
        '    example: 600',
        '',
      ].join('\n'),
    );
  });
});

describe('gradewright section', { timeout: patience }, () => {
  const path = fileOf('section.json', sample);

  it('writes a table, or values that a spreadsheet takes', async () => {
    const { code, out, err } = await gradewright('section', path, '--every', '1.5m');
    expect([code, err]).toEqual([0, '']);
    expect(out.split('\n')[0]).toBe('Sample, track line');
    expect(out.trimEnd().split('\n')).toHaveLength(7);
    const csv = (await gradewright('section', path, '--track', 'line', '--every', '1.5m', '--csv')).out
      .trimEnd()
      .split('\n');
    expect(csv[0]).toBe(
      'chainageMm,xMm,yMm,heightMm,headingDeg,curvaturePerM,gradePercent,verticalCurvaturePerM,cantMm,twistMmPerM',
    );
    expect(csv).toHaveLength(6);
    expect(Number(csv[5].split(',')[0])).toBeCloseTo(6000, 9);
  });

  it('writes one JSON document, every 100 mm when nothing else is asked', async () => {
    const { out } = await inThisProcess('section', path, '--json');
    const report = JSON.parse(out) as SectionReport;
    expect(sectionReportSchema.safeParse(report).error).toBeUndefined();
    expect(report.rows).toHaveLength(61);
    expect(report.rows[25]).toMatchObject({ curvaturePerM: 1 });
    expect(report.rows[60].heightMm).toBeCloseTo(80, 9);
    expect(report.rows[50].gradePercent).toBeCloseTo(2, 9);
  });

  const canted = (cantMm: number, rampMm?: number) => {
    const easement = rampMm === undefined ? [{ kind: 'transition', lengthMm: 400 }] : [];
    const curve = { kind: 'arc', radiusMm: 1000, turn: 'right', lengthMm: 1000, cantMm };
    const alignment = [{ kind: 'straight', lengthMm: 2000 }, ...easement, curve];
    const cant = { gaugeMm: 16.5, packed: 'outer', ...(rampMm !== undefined && { rampMm }) };
    const track = { ...sample.tracks[0], alignment, cant, supports: { everyMm: 300 } };
    return fileOf(`cant-${cantMm}-${rampMm}.json`, {
      ...sample,
      tracks: [track],
      trials: [{ ...sample.trials[0], finishMm: 2900 }],
    });
  };

  it('tells cant and twist, mm and mm in a metre, and holds them against the norm', async () => {
    const path = canted(0.8);
    const report = JSON.parse((await inThisProcess('section', path, '--json')).out) as SectionReport;
    expect(sectionReportSchema.safeParse(report).error).toBeUndefined();
    // The left rail of a right-hand curve is the outer one: 0.8 mm over 400 mm is 2 mm in a metre. The angle, not its sine, runs evenly.
    expect(report.rows[19]).toMatchObject({ cantMm: 0, twistMmPerM: 0 });
    expect(report.rows[22].cantMm).toBeCloseTo(-0.4, 3);
    expect(report.rows[22].twistMmPerM).toBeCloseTo(-2, 2);
    expect(report.rows[30].cantMm).toBeCloseTo(-0.8, 12);
    expect(report.cant).toMatchObject({ gaugeMm: 16.5, mostAtMm: 2400, allowedMm: 1, offEasement: [] });
    expect(report.cant?.mostMm).toBeCloseTo(-0.8, 12);
    expect(report.cant?.steepest).toMatchObject({ fromMm: 2000, toMm: 2400 });
    const { out } = await inThisProcess('section', path);
    expect(out).toContain('Cant at most 0.80 mm, at 2400.0 mm: within the 1.00 mm of NEM 114 (2007).\n');
    expect(out).toContain('Twist at most 2.00 mm in a metre, from 2000.0 to 2400.0 mm.\n');
    expect(out).not.toContain('runs in');
  });

  it('says when cant is more than the norm allows, and where it runs in off an easement', async () => {
    const { code, out } = await inThisProcess('section', canted(1.5, 250));
    expect(code).toBe(0);
    expect(out).toContain('Cant at most 1.50 mm, at 2000.0 mm: more than the 1.00 mm of NEM 114 (2007)');
    expect(out).toContain('Cant runs in from 1750.0 to 2000.0 mm, where the curvature stays;');
  });

  it('calls a cant of just what the norm allows within it', async () => {
    expect((await inThisProcess('section', canted(1))).out).toContain('within the 1.00 mm of NEM 114');
  });

  it('says nothing of cant on track that is level across', async () => {
    const report = JSON.parse((await inThisProcess('section', path, '--json')).out) as SectionReport;
    expect(report.cant).toBeUndefined();
    expect(report.rows.every(({ cantMm, twistMmPerM }) => cantMm === 0 && twistMmPerM === 0)).toBe(true);
    expect((await inThisProcess('section', path)).out).not.toContain('Cant');
  });

  it.each([
    [['--every', '3 parsecs'], '--every'],
    [['--every', '0'], '--every 0: rows come a step apart, and a step is longer than 0. For example --every 10mm.'],
    [['--every', '-5mm'], 'longer than 0'],
    [['--every', '0.01mm'], 'makes more than 200000 rows of this track. From about 0.03\u2009mm on it goes.'],
    [['--track', 'branch'], 'The scene has no track "branch". It has: line.'],
    [['--json', '--csv'], 'exclude each other'],
  ])('refuses %j', async (args, message) => {
    const { code, out, err } = await inThisProcess('section', path, ...args);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(message);
  });
});

describe('gradewright', { timeout: patience }, () => {
  it('makes a scene of a measured line, and says how far off it is', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'gradewright-import-'));
    try {
      const table = join(folder, 'line.csv');
      const rows = Array.from({ length: 41 }, (_, i) => `${0.5 + i * 0.1},0.5,${0.02 + i * 0.002}`);
      writeFileSync(table, `x (m),y (m),z (m)\n${rows.join('\n')}\n`);
      const out = join(folder, 'line.json');
      const done = await inThisProcess('import', table, '--tolerance', '0.5mm', '--scale', 'tt', '--out', out);
      expect(done).toMatchObject({ code: 0, err: '' });
      expect(done.out).toContain('Fitted to 41 places: 1 straight; 0.00 mm off at most.');
      expect(parseScene(readFileSync(out, 'utf8')).ok).toBe(true);
      expect((await inThisProcess('import', table)).out.startsWith('{')).toBe(true);
      // Never over a file that is there.
      expect(await inThisProcess('import', table, '--out', out)).toMatchObject({ code: 2 });
      const refused = await inThisProcess('import', table, '--scale', 'Q');
      expect(refused).toMatchObject({ code: 2, err: '--scale is one of Z, N, TT, HO, OO, S, O, 1, not "Q".\n' });
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('helps, and says its version', async () => {
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
    expect(await gradewright('--version')).toEqual({ code: 0, out: `${version}\n`, err: '' });
    const help = await gradewright('help');
    expect(help.code).toBe(0);
    expect(help.out).toContain('gradewright trial FILE');
    expect((await inThisProcess()).out).toBe(help.out);
    const page = await inThisProcess('help', 'trial');
    expect([page.code, page.err]).toEqual([0, '']);
    expect(page.out).toMatch(/^gradewright trial FILE /);
    expect(page.out).toContain('  --train ID  only trials of this train');
    expect(page.out).not.toContain('--every');
    for (const args of [
      ['trial', '--help'],
      ['trial', 'a.json', '-h'],
      ['--help', 'trial'],
    ]) {
      expect(await inThisProcess(...args)).toEqual(page);
    }
  });
});
