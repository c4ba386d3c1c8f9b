import type { FoundProfile } from '../../core/study/profile/index.ts';
import type { Scene } from '../../scene/index.ts';
import { compileScene } from '../../sim/index.ts';
import { bestProfile, type ProfileMiss } from '../../sim/study/bestProfile.ts';
import { curveWorth } from '../../sim/study/index.ts';
import { presentRuling, profileTaskOf, scenePoints } from '../../sim/study/sceneProfile.ts';
import { loadSolver } from '../../sim/survey/solver.ts';
import { BadInput, exitCodes } from '../exitCodes.ts';
import { finiteMm } from '../reportFields.ts';
import { csvOf } from '../studies/studyOutcome.ts';
import type { StudyOutput } from '../studies/sweep.ts';
import type { BestReport } from './bestReport.ts';

export interface BestOptions {
  /** Id of the track; the first when left out. */
  readonly track?: string | undefined;
  /** Chainages, mm, whose heights stay. */
  readonly hold: readonly string[];
  readonly radius?: string | undefined;
  readonly steepest?: string | undefined;
  readonly towards?: string | undefined;
  readonly over?: string | undefined;
  readonly curve?: string | undefined;
  readonly headroom?: string | undefined;
}

/** What a builder sets places and heights to, m. */
const setting = { place: 1e-3, height: 1e-4 };

/**
 * The profile with the least ruling grade on the plan of a track, ends and held heights as they are. Numbers in mm, `steepest` per cent. Exit code:
 * passes when the rounded profile keeps all that is asked. Throws BadInput for what says nothing.
 */
export async function best(scene: Scene, options: BestOptions): Promise<StudyOutput<BestReport>> {
  const track = options.track ?? scene.tracks[0].id;
  const towards = towardsOf(options.towards);
  const headroom = options.headroom === undefined ? null : numberOf('headroom', options.headroom, 0) / 1e3;
  try {
    const task = profileTaskOf(compileScene(scene), track, {
      held: options.hold.map((text) => numberOf('hold', text, 0) / 1e3),
      verticalRadius: numberOf('radius', options.radius ?? '10000', 0) / 1e3,
      steepest: numberOf('steepest', options.steepest ?? '6', 0) / 100,
      towards,
      window: numberOf('over', options.over ?? '0', 0) / 1e3,
      curveLength: numberOf('curve', options.curve ?? String(curveRuleMm), 0) / 1e3,
      every: nodeMm / 1e3,
      headroom,
      deckHalfWidth: (scene.deck.widthMm ?? (70 * scene.scale.gaugeMm) / 16.5) / 2e3,
    });
    const found = bestProfile(await loadSolver(), task, setting);
    const presentPercent = presentRuling(task) * 100;
    const head = { report: 'gradewright-best', version: 1, scene: scene.name, track, presentPercent } as const;
    if (found.kind === 'impossible') {
      const way = found.inTheWay.join(' or ');
      return {
        report: { ...head, impossible: [...found.inTheWay] },
        text: `${scene.name}, ${track}: no profile keeps all that is asked${way === '' ? '' : `; it would without ${way}`}.\n`,
        csv: '',
        exitCode: exitCodes.fails,
      };
    }
    const rounded = profileFields(found.rounded);
    const lines = rounded.points.map(
      ({ atMm, heightMm, verticalCurveLengthMm: curve }) =>
        `  ${atMm.toFixed(1).padStart(9)} mm  ${heightMm.toFixed(found.setting.height < setting.height ? 2 : 1).padStart(7)} mm${curve === undefined ? '' : `  curve ${curve.toFixed(0)} mm`}`,
    );
    return {
      report: {
        ...head,
        leastPercent: found.least * 100,
        proven: found.proven,
        floorPercent: found.floor * 100,
        exact: profileFields(found.exact),
        rounded,
        misses: found.misses.map(missFields),
        heightStepMm: found.setting.height * 1e3,
        keepsLimits: found.kept,
      },
      text:
        `${scene.name}, ${track}: ruling grade with curves ${presentPercent.toFixed(3)} % now, at best ${(found.least * 100).toFixed(3)} % ` +
        `(${found.proven ? 'proven' : 'not proven'}; no profile has less than ${(found.floor * 100).toFixed(3)} %), ` +
        `${rounded.rulingPercent.toFixed(3)} % as rounded${found.kept ? '' : `, which misses ${found.misses.map(missText).join(' and ')}`}\n${lines.join('\n')}\n`,
      csv: csvOf(['atMm', 'heightMm', 'verticalCurveLengthMm'], rounded.points),
      exitCode: found.kept ? exitCodes.passes : exitCodes.fails,
    };
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}

/** The rule of the trade for what a curve is worth, as a length, mm; vertical curves begin and end at steps of this, mm. */
export const curveRuleMm = curveWorth * 1e3;
const nodeMm = 50;

/** Which climbs count, as `--towards` says. */
export function towardsOf(word = 'both'): 'end' | 'start' | 'both' {
  if (word === 'end' || word === 'start' || word === 'both') return word;
  throw new BadInput(`--towards is end, start or both, not "${word}".`);
}

/** The number that an option says, no less than `least`. */
export function numberOf(option: string, text: string, least: number): number {
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (Number.isFinite(value) && value >= least) return value;
  throw new BadInput(`--${option} is a number from ${least}, not "${text}".`);
}

const missFields = ({ limit, at, asked, found }: ProfileMiss) => {
  const scale = limit === 'steepest' ? 100 : 1e3;
  return { limit, atMm: at * 1e3, asked: asked * scale, found: found * scale };
};

function missText(miss: ProfileMiss): string {
  const { limit, atMm, asked, found } = missFields(miss);
  const at = `at ${atMm.toFixed(0)} mm`;
  if (limit === 'heights') return `a height to be met ${at} by ${found.toFixed(2)} mm`;
  if (limit === 'clearances') return `the headroom ${at} by ${(-found).toFixed(2)} mm`;
  if (limit === 'steepest') return `the steepest grade ${at}: ${found.toFixed(3)} % where ${asked} % is allowed`;
  return `the vertical radius ${at}: ${found.toFixed(0)} mm where ${asked.toFixed(0)} mm is asked`;
}

const profileFields = (found: FoundProfile) => ({
  rulingPercent: found.ruling * 100,
  steepestPercent: found.steepest * 100,
  verticalRadiusMm: finiteMm(found.verticalRadius),
  heightMissedMm: found.heightMissed * 1e3,
  clearanceSpareMm: finiteMm(found.clearanceSpare),
  points: scenePoints(found.points),
});
