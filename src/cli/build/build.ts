import { coarsePitches, type Thread } from '../../core/survey/index.ts';
import { parseLength } from '../../core/units/index.ts';
import { sheetsDxf, sheetsSvg } from '../../export/sheets/index.ts';
import type { Scene } from '../../scene/index.ts';
import { type BuildPlan, buildPlan } from '../../sim/build/index.ts';
import { compileScene } from '../../sim/index.ts';
import { BadInput } from '../exitCodes.ts';
import { unknownId } from '../unknownId.ts';

/** What `build` is told, as a builder writes it. */
export interface BuildWords {
  readonly track?: string | undefined;
  readonly every?: string | undefined;
  readonly sheet?: string | undefined;
  readonly kerf?: string | undefined;
  readonly longest?: string | undefined;
}

/** A sheet as timber merchants of metric countries sell it, and a saw's cut; the longest curved piece is one that a person turns on a bench. Assumptions. */
const usual = { sheet: '2440x1220', kerf: '3 mm', longest: '600 mm' } as const;

/** What a railway is built of. Throws BadInput for an unknown track, or an amount that is none. */
export function build(scene: Scene, words: BuildWords): BuildPlan {
  const { track, every, sheet = usual.sheet, kerf = usual.kerf, longest = usual.longest } = words;
  if (track !== undefined && !scene.tracks.some(({ id }) => id === track)) {
    throw unknownId('track', track, scene.tracks);
  }
  const sides = sheet.split(/[x×]/);
  if (sides.length !== 2)
    throw new BadInput(`--sheet ${sheet}: two sides with an x between. For example --sheet 2440x1220.`);
  const [a, b] = sides.map((side) => amount('sheet', side, false));
  const wish = {
    sheet: {
      length: Math.max(a, b),
      width: Math.min(a, b),
      kerf: amount('kerf', kerf, true),
      longest: amount('longest', longest, false),
    },
    ...(track !== undefined && { trackId: track }),
    ...(every !== undefined && { every: amount('every', every, false) }),
  };
  try {
    return buildPlan(compileScene(scene), wish);
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}

/** A length that an option names, m: longer than 0, or 0 where that is one. */
function amount(option: string, words: string, mayBeNone: boolean): number {
  const parsed = parseLength(words, { most: longestLength });
  if (!parsed.ok) throw new BadInput(`--${option} ${parsed.message}`);
  if (parsed.value < 0 || (parsed.value === 0 && !mayBeNone) || (option === 'every' && parsed.value < leastSpacing)) {
    throw new BadInput(`--${option} ${words}: a length longer than ${option === 'every' ? '10 mm' : '0'}.`);
  }
  return parsed.value;
}

/** Longest length that an option takes, and the closest that supports stand, m. */
const longestLength = 100;
const leastSpacing = 0.01;

/** A thread by its name. Throws BadInput for one that is not in the list. */
export function threadOf(name: string | undefined): { name: string; pitchMm: number } | null {
  if (name === undefined) return null;
  if (!Object.hasOwn(coarsePitches, name)) {
    throw new BadInput(`--thread ${name}: one of ${Object.keys(coarsePitches).join(', ')} (ISO 261, coarse).`);
  }
  return { name, pitchMm: coarsePitches[name as Thread] * 1e3 };
}

const drawings = { svg: sheetsSvg, dxf: sheetsDxf } as const;

/** The drawing of all sheets in a format. Throws BadInput for one that is not in the list. */
export function drawingOf(format: string): (plan: BuildPlan) => string {
  if (!Object.hasOwn(drawings, format)) throw new BadInput(`--drawing ${format}: svg or dxf.`);
  return drawings[format as keyof typeof drawings];
}
