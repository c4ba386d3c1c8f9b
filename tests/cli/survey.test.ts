import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { commandLine } from '../../src/cli/commandLine.ts';
import { type SurveyReport, surveyReportSchema } from '../../src/cli/surveyReport.ts';
import { bundledPath } from '../scene/sample.ts';

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
