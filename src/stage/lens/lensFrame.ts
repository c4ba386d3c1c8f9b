import { along, cross, type Vec3 } from '../../core/math/vec3.ts';
import { rearReach } from '../../core/stock/index.ts';
import type { Placement, Vehicle } from '../../core/stock/types.ts';
import type { LensView } from '../../state/types.ts';
import { couplingPlace, pivotPlace } from '../stock/couplingPlace.ts';

/** What the lens looks at: a square of the room around a joint, from one side, m. */
export interface LensFrame {
  readonly view: LensView;
  readonly centre: Vec3;
  /** Half the width of the square. */
  readonly radius: number;
  /** Axes of the picture, and from the joint towards the eye. */
  readonly right: Vec3;
  readonly up: Vec3;
  readonly towards: Vec3;
  /** How far in front of the centre the cut lies, and how far behind it the picture ends. */
  readonly before: number;
  readonly behind: number;
  /** Middles of both heads' contact faces. */
  readonly heads: { readonly leading: Vec3; readonly trailing: Vec3 };
  /** Ahead along the bisector of the two bodies, level. */
  readonly ahead: Vec3;
}

/** Half the lens's width in gauges: both ends, their nearest wheels and the strip below come into it. */
const radiusInGauges = 1.95;

/** How far the lens's middle lies below the heads in the views that show the strip, as a share of its radius. */
const middleBelowHeads = 0.13;

/** The cut from above lies this far above the heads and buffers, m. */
const aboveHeads = 0.0012;

/** The cut of the view along the train lies this far behind the trailing pivot, m. */
const behindPivot = 0.002;

const vertical: Vec3 = [0, 0, 1];

export interface LensSubject {
  readonly leading: Vehicle;
  readonly trailing: Vehicle;
  readonly placedLeading: Placement;
  readonly placedTrailing: Placement;
}

/** Middles of the contact faces of a joint's two heads in the room, m. */
export function headPlaces(subject: LensSubject): { leading: Vec3; trailing: Vec3 } {
  const { leading, trailing, placedLeading, placedTrailing } = subject;
  const mateOfLeading = pivotPlace(trailing, placedTrailing, 'front');
  const mateOfTrailing = pivotPlace(leading, placedLeading, 'rear');
  const a = couplingPlace(leading, placedLeading, 'rear', mateOfLeading);
  const b = couplingPlace(trailing, placedTrailing, 'front', mateOfTrailing);
  return {
    leading: along(a.pivot, a.out, leading.rear.coupling.reach),
    trailing: along(b.pivot, b.out, trailing.front.coupling.reach),
  };
}

/**
 * The lens's square for a joint. `side` 1 looks from the left of the train, -1 from its right. `depth` is half the strip's
 * width with what stands on it, m: what lies further off is not drawn.
 */
export function lensFrame(subject: LensSubject, view: LensView, side: 1 | -1, gauge: number, depth: number): LensFrame {
  const { leading, trailing, placedLeading, placedTrailing } = subject;
  const heads = headPlaces(subject);
  const centre: Vec3 = [
    (heads.leading[0] + heads.trailing[0]) / 2,
    (heads.leading[1] + heads.trailing[1]) / 2,
    (heads.leading[2] + heads.trailing[2]) / 2,
  ];
  const x = placedLeading.ahead[0] + placedTrailing.ahead[0];
  const y = placedLeading.ahead[1] + placedTrailing.ahead[1];
  const size = Math.hypot(x, y);
  const ahead: Vec3 = [x / size, y / size, 0];
  const left = cross(vertical, ahead);
  const rightward: Vec3 = [-side * ahead[0], -side * ahead[1], 0];
  const radius = radiusInGauges * gauge;
  const lower: Vec3 = [centre[0], centre[1], centre[2] - middleBelowHeads * radius];
  const base = { view, centre: view === 'above' ? centre : lower, radius, heads, ahead };
  switch (view) {
    case 'side':
      return {
        ...base,
        right: rightward,
        up: vertical,
        towards: [side * left[0], side * left[1], 0],
        before: depth,
        behind: depth,
      };
    case 'above': {
      const buffers = [leading.rear.buffers, trailing.front.buffers];
      const tops = buffers.map((one) => (one === null ? 0 : one.height + one.headHeight / 2));
      const headTop = Math.max(
        leading.rear.coupling.headHeight + leading.rear.coupling.facingHeight / 2,
        trailing.front.coupling.headHeight + trailing.front.coupling.facingHeight / 2,
      );
      const middle = (leading.rear.coupling.headHeight + trailing.front.coupling.headHeight) / 2;
      const cut = Math.max(headTop, ...tops) - middle + aboveHeads;
      return {
        ...base,
        right: rightward,
        up: [-side * left[0], -side * left[1], 0],
        towards: vertical,
        before: cut,
        behind: depth,
      };
    }
    case 'along': {
      // The cut lies behind the trailing half of the coupling, whose vehicle is left out; ahead is the leading one's end.
      const pivot = pivotPlace(trailing, placedTrailing, 'front');
      const toPivot = (centre[0] - pivot[0]) * ahead[0] + (centre[1] - pivot[1]) * ahead[1];
      return {
        ...base,
        right: [-left[0], -left[1], 0],
        up: vertical,
        towards: [-ahead[0], -ahead[1], 0],
        before: toPivot + behindPivot,
        behind: rearReach(leading),
      };
    }
  }
}
