import { raisedOff } from '../../../state/route/index.ts';
import type { ProfileChange, SceneTrack } from '../../../state/routeEdits/index.ts';
import { profileHeights } from '../../../state/routeEdits/index.ts';
import type { SectionHandle } from './sectionHandles.ts';

/** How far a hand went from where it took hold: along the track and upwards, mm of the railway. */
export interface Moved {
  readonly alongMm: number;
  readonly upMm: number;
  /** Whether to go by whole steps. */
  readonly snaps: boolean;
}

/** What a drag makes of what it holds. */
export type HandEdit =
  | { readonly kind: 'profile'; readonly index: number; readonly change: ProfileChange }
  | { readonly kind: 'support'; readonly index: number; readonly offMm: number };

/** Steps that a hand goes by: places and heights by a millimetre, grades by a twentieth of a per cent. */
const wholeMm = 1;
const wholePercent = 0.05;
/** Points of the heights stay this far from each other, and vertical curves this long, mm. */
const leastMm = 10;

const toWhole = (value: number, step: number, snaps: boolean): number => {
  const fine = snaps ? Math.round(value / step) * step : value;
  // Without the dust of binary fractions.
  return Math.round(fine * 1e4) / 1e4;
};

/**
 * What becomes of a handle that is moved from where it was. A point given by its grade keeps to whole grades, one given by its height to
 * whole heights.
 */
export function handEdit(track: SceneTrack, handle: SectionHandle, { alongMm, upMm, snaps }: Moved): HandEdit {
  switch (handle.kind) {
    case 'support':
      return { kind: 'support', index: handle.index, offMm: raisedOff(handle.offMm, upMm, snaps) };
    case 'curve': {
      const half = handle.side * (handle.atMm + alongMm - handle.middleMm);
      const lengthMm = Math.max(leastMm, toWhole(2 * half, wholeMm, snaps));
      return {
        kind: 'profile',
        index: handle.index,
        change: handle.byRadius
          ? { verticalCurveRadiusMm: Math.round((lengthMm / handle.change) * 10) / 10 }
          : { verticalCurveLengthMm: lengthMm },
      };
    }
    case 'point': {
      const [low, high] = handle.betweenMm;
      const { index } = handle;
      const change: { atMm?: number; heightMm?: number; gradePercent?: number } = {};
      if (alongMm !== 0) {
        const first = index === 0 ? low : low + leastMm;
        change.atMm = Math.min(high - leastMm, Math.max(first, toWhole(handle.atMm + alongMm, wholeMm, snaps)));
      }
      if (upMm !== 0) {
        const before = profileHeights(track)[index - 1];
        if (track.profile[index].gradePercent !== undefined && before) {
          const percent =
            (100 * (handle.heightMm + upMm - before.heightMm)) / ((change.atMm ?? handle.atMm) - before.atMm);
          change.gradePercent = toWhole(percent, wholePercent, snaps);
        } else change.heightMm = toWhole(handle.heightMm + upMm, wholeMm, snaps);
      }
      return { kind: 'profile', index, change };
    }
  }
}
