import type { FoundProfile } from '../core/study/profile/index.ts';
import type { Scene } from '../scene/index.ts';
import { compileScene } from '../sim/index.ts';
import { bestProfile } from '../sim/study/bestProfile.ts';
import { presentRuling, profileTaskOf, scenePoints } from '../sim/study/sceneProfile.ts';
import { loadSolver } from '../sim/survey/solver.ts';
import type { BestReport } from './bestReport.ts';
import { BadInput, exitCodes } from './exitCodes.ts';
import { csvOf } from './studyOutcome.ts';
import type { StudyOutput } from './sweep.ts';

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
  const towards = options.towards ?? 'both';
  if (towards !== 'end' && towards !== 'start' && towards !== 'both') {
    throw new BadInput(`--towards is end, start or both, not "${towards}".`);
  }
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
        `  ${atMm.toFixed(1).padStart(9)} mm  ${heightMm.toFixed(1).padStart(7)} mm${curve === undefined ? '' : `  curve ${curve.toFixed(0)} mm`}`,
    );
    return {
      report: {
        ...head,
        leastPercent: found.least * 100,
        proven: found.proven,
        floorPercent: found.floor * 100,
        exact: profileFields(found.exact),
        rounded,
        keepsLimits: found.kept,
      },
      text:
        `${scene.name}, ${track}: ruling grade with curves ${presentPercent.toFixed(3)} % now, at best ${(found.least * 100).toFixed(3)} % ` +
        `(${found.proven ? 'proven' : 'not proven'}; no profile has less than ${(found.floor * 100).toFixed(3)} %), ` +
        `${rounded.rulingPercent.toFixed(3)} % as rounded${found.kept ? '' : ', which misses a limit'}\n${lines.join('\n')}\n`,
      csv: csvOf(['atMm', 'heightMm', 'verticalCurveLengthMm'], rounded.points),
      exitCode: found.kept ? exitCodes.passes : exitCodes.fails,
    };
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}

/** HO rule of the trade, 32/R(in) per cent, as a length, mm; vertical curves begin and end at steps of this, mm. */
const curveRuleMm = 8.128;
const nodeMm = 50;

function numberOf(option: string, text: string, least: number): number {
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (Number.isFinite(value) && value >= least) return value;
  throw new BadInput(`--${option} is a number from ${least}, not "${text}".`);
}

const finite = (metres: number): number | null => (Number.isFinite(metres) ? metres * 1e3 : null);

const profileFields = (found: FoundProfile) => ({
  rulingPercent: found.ruling * 100,
  steepestPercent: found.steepest * 100,
  verticalRadiusMm: finite(found.verticalRadius),
  heightMissedMm: found.heightMissed * 1e3,
  clearanceSpareMm: finite(found.clearanceSpare),
  points: scenePoints(found.points),
});
