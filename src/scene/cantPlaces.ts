import { elementStartsMm } from './places.ts';
import type { SceneElement, SceneTrack } from './schema/trackSchema.ts';

/** Cant at a chainage, mm: positive where the right rail is the higher one. */
export interface PlacedCant {
  readonly atMm: number;
  readonly cantMm: number;
}

/** A canted curve that stands beside one of other cant with no transition and no room to run in. */
export interface CantGap {
  /** Number of the element the run-in would lie on, from 0. */
  readonly element: number;
  /** What it needs and has, mm; NaN needed when the file gives no rampMm. */
  readonly neededMm: number;
  readonly hasMm: number;
}

const leveled = (element: SceneElement | undefined): number => {
  if (element === undefined || !('turn' in element) || element.cantMm === undefined) return 0;
  return element.turn === 'left' ? element.cantMm : -element.cantMm;
};

/** Lengths that miss by less than this, mm, fit. */
const slackMm = 1e-6;

/**
 * The cant along a track: constant on curves, linear over transitions from one neighbour's to the other's, and where two
 * meet without a transition over rampMm of the one that has less. Two transitions in a row meet level.
 */
export function placedCants(track: SceneTrack): {
  readonly cants: readonly PlacedCant[];
  readonly gaps: readonly CantGap[];
} {
  const { alignment, cant } = track;
  const starts = elementStartsMm(track);
  const cants: PlacedCant[] = [];
  const gaps: CantGap[] = [];
  const put = (atMm: number, cantMm: number): void => {
    const last = cants[cants.length - 1];
    if (last === undefined || atMm > last.atMm + slackMm) cants.push({ atMm, cantMm });
  };
  alignment.forEach((element, index) => {
    if (element.kind === 'transition') {
      if (index === 0) put(starts[0], 0);
      return;
    }
    const level = leveled(element);
    const ramp = (neighbour: SceneElement | undefined): number => {
      const meets = neighbour !== undefined && neighbour.kind !== 'transition';
      const gives = meets && leveled(neighbour) !== level && Math.abs(level) < Math.abs(leveled(neighbour));
      return gives ? (cant?.rampMm ?? Number.NaN) : 0;
    };
    const [into, out] = [ramp(alignment[index - 1]), ramp(alignment[index + 1])];
    const hasMm = starts[index + 1] - starts[index];
    if (!(into + out <= hasMm + slackMm)) gaps.push({ element: index, neededMm: into + out, hasMm });
    put(starts[index] + into, level);
    put(starts[index + 1] - out, level);
  });
  if (alignment[alignment.length - 1].kind === 'transition') put(starts[alignment.length], 0);
  return { cants, gaps };
}
