import { tidy } from '../edits/tidy.ts';
import type { SceneElement } from '../schema/trackSchema.ts';
import { type Because, easementFor, type ShapeScale } from './scales.ts';
import { usualCoaches } from './shape.ts';
import { usualTrainMm } from './stock.ts';

/** A bend with its easements, and how long it is, mm. */
export interface EasedBend {
  readonly elements: readonly SceneElement[];
  readonly lengthMm: number;
  readonly because: Because;
}

/** Least turning of the arc left between two easements, rad: below that the curve is all easement. */
const leastArc = 0.01;

/**
 * A bend of this radius (mm) that turns by `angle`, rad, in all, with an easement at each end: of NEM 113 unless `easeMm` says how long, 0 for none. From half a turn on the arc is a
 * helix. Throws RangeError, in words, when the easements alone turn further.
 */
export function easedBend(
  scale: ShapeScale,
  radiusMm: number,
  angle: number,
  turn: 'left' | 'right',
  { id, easeMm: said }: { readonly id?: string; readonly easeMm?: number } = {},
): EasedBend {
  const { mm: usualMm, because } = easementFor(scale, radiusMm);
  const easeMm = said ?? usualMm;
  const arc = angle - easeMm / radiusMm;
  if (arc < leastArc) {
    throw new RangeError(
      `Easements of ${easeMm} mm alone turn by ${Math.round((easeMm / radiusMm) * (180 / Math.PI))}°: a bend of ${Math.round((angle * 180) / Math.PI)}° needs a larger radius than ${radiusMm} mm.`,
    );
  }
  const name = id === undefined ? {} : { id };
  const ease: readonly SceneElement[] = easeMm > 0 ? [{ kind: 'transition', lengthMm: easeMm }] : [];
  const body: SceneElement =
    arc >= Math.PI
      ? { kind: 'helix', ...name, radiusMm, turn, turns: tidy(arc / (2 * Math.PI)) }
      : { kind: 'arc', ...name, radiusMm, turn, angleDeg: tidy((arc * 180) / Math.PI) };
  const reason =
    easeMm === usualMm
      ? because
      : {
          ...because,
          what: `Easements of ${easeMm} mm into ${radiusMm} mm`,
          source: `asked for: ${usualMm} mm, ${because.source}`,
        };
  return { elements: [...ease, body, ...ease], lengthMm: 2 * easeMm + arc * radiusMm, because: reason };
}

/** Plan length of the vertical curve where a grade begins or ends, mm. */
export function verticalCurveFor(scale: ShapeScale): { readonly mm: number; readonly because: Because } {
  const mm = Math.ceil(40_000 / scale.ratio / 10) * 10;
  return {
    mm,
    because: {
      what: `Vertical curves of ${mm} mm where a grade begins and ends`,
      source: 'common practice, no source: twice the longest vehicle',
    },
  };
}

/** Straight on which the usual train stands clear before a grade begins, mm. */
export function leadFor(scale: ShapeScale): number {
  const needed = usualTrainMm(scale, usualCoaches) + verticalCurveFor(scale).mm / 2 + 40;
  return Math.ceil(needed / 50) * 50;
}

/** Straight on which an engine and so many coaches stand clear, mm: their length and a tenth. Common practice, no source. */
export const standingFor = (scale: ShapeScale, coaches: number): number =>
  Math.ceil((1.1 * usualTrainMm(scale, coaches)) / 50) * 50;

/** Distance of supports, mm: a quarter of a metre at 16.5 mm gauge, in proportion, 150 to 400. Common practice, no source. */
export const supportsFor = (scale: ShapeScale): number =>
  Math.min(400, Math.max(150, Math.round((250 * scale.gaugeMm) / 16.5 / 10) * 10));

/** Where a shape begins in the room, mm. */
export const cornerMm = 300;
