import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { commandLine } from '../../../src/cli/commandLine.ts';
import { type SurveyReport, surveyReportSchema } from '../../../src/cli/survey/surveyReport.ts';
import { bundledPath, bundledScene } from '../../scene/sample.ts';

const folder = mkdtempSync(join(tmpdir(), 'gradewright-survey-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function survey(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  const said = { out: '', err: '' };
  const sink = (key: 'out' | 'err') => (text: string) => {
    said[key] += text;
    return true;
  };
  const code = await commandLine(['survey', ...args], {
    out: { write: sink('out') },
    err: { isTTY: false, write: sink('err') },
  });
  return { code, ...said };
}

const harebell = bundledPath('08-harebell-spiral.json');
const foxglove = bundledPath('09-foxglove-ramp.json');

describe('gradewright survey', () => {
  it('says which nuts to turn, first of all, and exits with 1', async () => {
    const { code, out, err } = await survey(harebell);
    expect(err).toBe('');
    expect(out.split('\n')[2]).toBe('Turn the nuts of supports 6 and 17.');
    expect(out).toMatch(/ {2}1\. Support 6: 2 \d\/\d turns down on M8/);
    expect(out).toContain('No fewer supports can do it: proven.');
    expect(code).toBe(1);
  });

  it('advises no shim where noise explains all, and exits with 0', async () => {
    const { code, out } = await survey(foxglove);
    expect(out.split('\n')[2]).toBe('No shim is advised: no support is shown to be off.');
    expect(out).toContain('Noise explains all 49 readings');
    expect(code).toBe(0);
  });

  it('writes one JSON document as its schema says, twice the same to the letter', async () => {
    const first = await survey(harebell, '--json');
    const second = await survey(harebell, '--json');
    expect(second.out).toBe(first.out);
    const report = JSON.parse(first.out) as SurveyReport;
    expect(surveyReportSchema.safeParse(report).error).toBeUndefined();
    expect(report.wrong.map(({ support }) => support)).toEqual([6, 17]);
    expect(report.mend).toMatchObject({ outcome: 'mended', proven: true, value: 2 });
    expect(report.covarianceMm2).toHaveLength(25);
  });

  /** The spiral with other wishes for its mending, as a file. */
  const wishing = (name: string, wishes: object): string => {
    const scene = bundledScene('08-harebell-spiral.json');
    const surveys = scene.surveys?.map((one) => ({ ...one, mend: { ...one.mend, ...wishes } }));
    const path = join(folder, name);
    writeFileSync(path, JSON.stringify({ ...scene, surveys }));
    return path;
  };
  const mendOf = async (path: string) => {
    const { out, code } = await survey(path, '--json');
    const report = JSON.parse(out) as SurveyReport;
    expect(surveyReportSchema.safeParse(report).error).toBeUndefined();
    return { code, mend: report.mend };
  };

  it('names limits that clash and what each would have to become, exits with 1, and each eased so far can be kept', async () => {
    // Support 6 stands 2.8 mm high between locked ends; lowered by no more than 1 mm it stays a hump steeper than 2.3 %.
    const asked = { greatestGradePercent: 2.2, leastGradePercent: 2.15, largestDropMm: 1 };
    const path = wishing('clash.json', asked);
    const { out, code } = await survey(path);
    expect(code).toBe(1);
    const said = out.split('\n');
    expect(said[2]).toBe('The limits cannot all be kept.');
    expect(said[3]).toMatch(
      /^ {2}What cannot be kept together: the greatest grade, the most a support is lowered, at /,
    );
    expect(said[4]).toBe('  Easing any one of these is enough:');
    const grade = /^ {2}The greatest grade would have to be (\S+)\s% instead of 2\.20\s% /m.exec(out)?.[1];
    const drop = /^ {2}The most a support is lowered would have to be (\S+)\smm instead of 1\.00\smm /m.exec(out)?.[1];
    const { mend, code: jsonCode } = await mendOf(path);
    expect(jsonCode).toBe(1);
    if (mend.outcome !== 'impossible') throw new Error(mend.outcome);
    expect(mend.together).toBe(false);
    expect(mend.conflicts.map(({ limit, bound }) => [limit, bound])).toEqual([
      ['greatestGrade', expect.closeTo(2.2, 9)],
      ['largestDrop', expect.closeTo(1, 9)],
    ]);
    expect([...new Set(mend.irreducible.map(({ limit }) => limit))].sort()).toEqual(['greatestGrade', 'largestDrop']);
    // As told each can be kept; a hundredth of a per cent tighter it cannot.
    const [neededGrade, neededDrop] = mend.conflicts.map(({ needed }) => needed);
    expect(Number(grade) - neededGrade).toBeGreaterThan(-2e-5);
    expect(Number(grade) - neededGrade).toBeLessThan(0.01);
    expect(Number(drop) - neededDrop).toBeGreaterThan(-2e-5);
    expect(Number(drop) - neededDrop).toBeLessThan(0.01);
    const outcomes = [
      { greatestGradePercent: Number(grade) },
      { greatestGradePercent: Number(grade) - 0.01 },
      { largestDropMm: Number(drop) },
    ].map(async (eased, i) => (await mendOf(wishing(`eased${i}.json`, { ...asked, ...eased }))).mend.outcome);
    expect(await Promise.all(outcomes)).toEqual(['mended', 'impossible', 'mended']);
  });

  it('says that both have to give way where neither can be eased enough alone', async () => {
    // Ends locked 2.2 % apart: no line between them is everywhere flatter, and none everywhere steeper.
    const path = wishing('together.json', { greatestGradePercent: 2.1, leastGradePercent: 2.3 });
    const { out, code } = await survey(path);
    expect(code).toBe(1);
    expect(out).toContain('No limit alone can be eased enough. All of these together would do:');
    const { mend } = await mendOf(path);
    if (mend.outcome !== 'impossible') throw new Error(mend.outcome);
    expect(mend.together).toBe(true);
    expect(mend.conflicts.map(({ limit }) => limit)).toEqual(['greatestGrade', 'leastGrade']);
    for (const { needed } of mend.conflicts) expect(needed).toBeCloseTo(2.2, 4);
    const eased = wishing('both.json', { greatestGradePercent: 2.2, leastGradePercent: 2.2 });
    expect((await mendOf(eased)).mend.outcome).toBe('mended');
  });

  it('names the locked supports that it could be done with', async () => {
    const changes = { largestRiseMm: 1, largestDropMm: 1 };
    const path = wishing('locked.json', { ...changes, locked: [1, 6, 17, 25] });
    const { out, code } = await survey(path);
    expect(code).toBe(1);
    expect(out).not.toContain('Easing any one');
    const { mend } = await mendOf(path);
    if (mend.outcome !== 'impossible') throw new Error(mend.outcome);
    expect(mend.unlock).toEqual([6, 17]);
    expect(out).toContain('It could be done if supports 6 and 17 could be touched.');
    expect((await mendOf(wishing('opened.json', { ...changes, locked: [1, 25] }))).mend.outcome).toBe('mended');
  });

  it('takes a table of readings, with the slip in it pointed out', async () => {
    const rows = Array.from({ length: 23 }, (_, i) => `${800 + 400 * i};${i === 9 ? '1,26' : '2,2'}`);
    const path = join(folder, 'readings.csv');
    writeFileSync(path, ['base = 300 mm', 'level step = 0.1 %', 'chainage mm;grade %', ...rows].join('\n'));
    const { code, out } = await survey(harebell, '--readings', path);
    expect(out).toContain('fits when its 1.26 is degrees, not per cent: 1.26° is 2.20');
    expect(code).toBe(0);
  });

  it.each([
    [['--readings', join(folder, 'none.csv')], /^Cannot read .*none\.csv/],
    [['--objective', 'cheapest'], /--objective is one of fewest, flattest, least, not "cheapest"/],
    [['--survey', 'tenth'], /no survey "tenth"/],
    [['--csv'], /--csv does not go with survey/],
  ])('with %j exits with 2 and says what is wrong', async (args, message) => {
    const { code, err, out } = await survey(harebell, ...args);
    expect(err).toMatch(message);
    expect(out).toBe('');
    expect(code).toBe(2);
  });

  it('names the line of a table that cannot be read', async () => {
    const path = join(folder, 'bad.csv');
    writeFileSync(path, 'support;height mm\n1;10\n2;ten\n');
    const { code, err } = await survey(harebell, '--readings', path);
    expect(err).toMatch(/bad\.csv cannot be read:\nline 3: “ten”/);
    expect(code).toBe(2);
  });
});
