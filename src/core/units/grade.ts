import { atan, tan } from '../math/index.ts';
import { lengthRules } from './length.ts';
import { type MeasureRules, readMeasure, type Unit } from './measure.ts';
import { formatNumber, thinSpace } from './number.ts';
import { accept, type Bounds, type Kind, longestText, type Reading, refuse } from './reading.ts';
import { plainSpelling, splitSign } from './spelling.ts';

export type GradeForm = 'one-in' | 'percent' | 'permille' | 'degree';

const kind: Kind = { called: 'a grade', examples: '1 in 42, 1:42, 2.38 %, 23.8 ‰, 1.36°, 10 mm per m or level' };

const percent: Unit = { shown: '%', times: 1, over: 100 };
const permille: Unit = { shown: '‰', times: 1, over: 1000 };
/** The tangent is taken after reading: a degree is not a fixed share of a grade. */
const degree: Unit = { shown: '°', times: Math.PI, over: 180 };

const plainNumber: Unit = { shown: '', times: 1, over: 1 };

const shareRules: MeasureRules = {
  units: {
    '%': percent,
    percent,
    'per cent': percent,
    pct: percent,
    '‰': permille,
    permille,
    'per mille': permille,
    'mm/m': permille,
    '°': degree,
    deg: degree,
    degs: degree,
    degree,
    degrees: degree,
  },
};

/** Steepest grade taken. Above 1 in 1 the two numbers of `1 in N` have been swapped, or a unit is wrong. */
export const steepestGrade = 1;

/** `1/42` is a grade; `1/2` is more likely half a per cent, and is asked about. The border is a 10 % grade. */
const leastSlashRun = 10;

export interface GradeOptions extends Bounds {
  /** What a bare number means: N of `1 in N`, per cent, … Without it a bare number is refused, save 0. */
  readonly bare?: GradeForm;
}

type Found = { readonly value: number; readonly read: string } | { readonly why: string };

/**
 * Reads a grade such as `1 in 42`, `1:42`, `2.38%`, `23.8‰`, `1.36°`, `1/8" per ft`, `12 mm in 600 mm` or `level`; `down`
 * or a minus makes it fall. The value is rise over plan distance: 2 % is 0.02 and 2° is tan 2° = 0.0349.
 */
export function parseGrade(text: string, options: GradeOptions = {}): Reading {
  if (text.length > longestText) return refuse(text, 'it is too long for one grade', kind);
  const { sign, rest, problem } = splitDirection(plainSpelling(text));
  if (problem) return refuse(text, problem, kind);
  const found = readSteepness(rest, options.bare);
  if ('why' in found) return refuse(text, found.why, kind);
  if (found.value > steepestGrade) {
    return refuse(text, `${found.read} is steeper than 1 in 1, which no railway here can be`, kind);
  }
  const value = sign * found.value;
  const form: GradeForm = found.read.endsWith('%') ? 'one-in' : 'percent';
  const understood =
    value === 0
      ? { value, written: 'level', other: '' }
      : { value, written: `${found.read} ${value < 0 ? 'down' : 'up'}`, other: formatGrade(Math.abs(value), { form }) };
  return accept(text, understood, options, kind, (bound) => formatGrade(bound, { form: 'percent' }));
}

function splitDirection(plain: string): { sign: 1 | -1; rest: string; problem?: string } {
  const { sign, rest } = splitSign(plain);
  const word = /^(up|down|rising|falling) (.+)$|^(.+) (up|down|rising|falling)$/i.exec(rest);
  if (!word) return { sign, rest };
  if (rest !== plain) return { sign, rest, problem: 'a sign and a word for the direction together are unclear' };
  const direction = (word[1] ?? word[4])!.toLowerCase();
  return { sign: direction === 'down' || direction === 'falling' ? -1 : 1, rest: (word[2] ?? word[3])! };
}

function readSteepness(rest: string, bare: GradeForm | undefined): Found {
  if (rest === '') return { why: 'nothing was written' };
  if (/^[-+]/.test(rest)) return { why: 'there are two signs' };
  if (/^(level|flat)$/i.test(rest)) return { value: 0, read: 'level' };
  return readRatio(rest) ?? readLengths(rest) ?? readShare(rest, bare);
}

/** `1 in 42`, `1:42`, `1/42`: two plain numbers. */
function readRatio(rest: string): Found | undefined {
  const ratio = /^([\d.,]+) ?(?:in|per|:|\/) ?([\d.,]+)$/i.exec(rest);
  if (!ratio) {
    if (/^[\d.,]+ ?in$/i.test(rest)) return { why: 'this is a length in inches, or a “1 in N” without its N' };
    return /^[\d.,]+ ?[:/]$/.test(rest) ? { why: 'the second number is missing' } : undefined;
  }
  const [rise, run] = [ratio[1]!, ratio[2]!].map((number) => readMeasure(number, { units: {}, bare: plainNumber }));
  if (!rise!.ok) return { why: rise!.why };
  if (!run!.ok) return { why: run!.why };
  if (rest.includes('/') && run!.value > 0 && run!.value < leastSlashRun) {
    return { why: `${rest} could be a fraction of a per cent; write ${ratio[1]} in ${ratio[2]} if that is meant` };
  }
  if (run!.value === 0) return { why: 'nothing can rise over no distance' };
  return { value: rise!.value / run!.value, read: `${ratio[1]} in ${ratio[2]}` };
}

/** `12 mm in 600 mm`, `1/8" per ft`, `10 mm per m`: a rise over a distance, each with its unit. */
function readLengths(rest: string): Found | undefined {
  let unclear: Found | undefined;
  for (const divider of rest.matchAll(/ (?:in|per)(?= )/gi)) {
    const before = rest.slice(0, divider.index).trim();
    const after = rest.slice(divider.index + divider[0].length).trim();
    const rise = readMeasure(before, lengthRules);
    const run = readMeasure(/^\d/.test(after) ? after : `1 ${after}`, lengthRules);
    if (rise.ok && run.ok && run.value > 0 && rise.value >= 0) {
      return { value: rise.value / run.value, read: `${rise.read} in ${run.read}` };
    }
    if (rise.ok !== run.ok) unclear = { why: 'a rise in a distance needs a unit on both, or on neither' };
  }
  return unclear;
}

function readShare(rest: string, bare: GradeForm | undefined): Found {
  const number = readMeasure(rest, { units: {}, bare: plainNumber });
  if (number.ok && number.value === 0) return { value: 0, read: 'level' };
  if (number.ok && bare === 'one-in') return { value: 1 / number.value, read: `1 in ${number.read.trim()}` };
  if (number.ok && bare === undefined) {
    return { why: `${rest} alone could be per cent, degrees or “1 in ${rest}”; write which` };
  }
  const share = readMeasure(rest, {
    ...shareRules,
    bare: { percent, permille, degree, 'one-in': undefined }[bare ?? 'one-in'],
  });
  if (!share.ok) return { why: share.why };
  if (share.unit !== degree) return { value: share.value, read: share.read };
  // Past 45° the tangent soon means nothing, and past 90° it changes sign.
  if (share.value > Math.PI / 4) return { why: 'it is steeper than 45°' };
  return { value: tan(share.value), read: share.read.replace(' °', '°') };
}

export interface GradeStyle {
  /** Default one-in. */
  readonly form?: GradeForm;
  /** Decimals. Default: 2 for per cent and degrees, 1 for per mille; N gets 1 below 100, else none, zeros left out. */
  readonly digits?: number;
  /** A plus before what rises. */
  readonly signed?: boolean;
}

/** Flatter than this is written as level in the one-in form: N would be a number nobody can build to. */
const flattestShown = 1 / 100_000;

/** Writes a grade given as rise over plan distance: `1 in 42`, `2.38 %`, `23.8 ‰`, `1.36°`, `level`. */
export function formatGrade(grade: number, style: GradeStyle = {}): string {
  const form = style.form ?? 'one-in';
  if (!Number.isFinite(grade)) return '–';
  const signed = style.signed === undefined ? {} : { signed: style.signed };
  if (form === 'one-in') {
    const steepness = Math.abs(grade);
    if (steepness < flattestShown) return 'level';
    const n = 1 / steepness;
    const number = formatNumber(n, { digits: style.digits ?? (n < 100 ? 1 : 0), trim: style.digits === undefined });
    const sign = grade < 0 ? '−' : style.signed ? '+' : '';
    return `${sign}1 in ${number}`;
  }
  if (form === 'degree') {
    return `${formatNumber((atan(grade) * 180) / Math.PI, { digits: style.digits ?? 2, ...signed })}°`;
  }
  const [factor, usual, mark] = form === 'percent' ? [100, 2, '%'] : [1000, 1, '‰'];
  return formatNumber(grade * factor, { digits: style.digits ?? usual, ...signed }) + thinSpace + mark;
}
