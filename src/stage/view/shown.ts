import type { Vec3 } from '../../core/math/vec3.ts';
import type { SessionState } from '../../state/types.ts';
import type { Look } from '../camera/look.ts';
import type { LensFrame, LensSubject } from '../lens/lensFrame.ts';
import type { LensCircle } from '../lens/lensPlace.ts';

/** A place on the stage, px from its upper left corner. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** Ring on the chosen joint, px. */
export const ringRadius = 10;

/** What one frame showed: all that the lettering over it needs. */
export interface Shown {
  readonly width: number;
  readonly height: number;
  readonly look: Look;
  /** s */
  readonly time: number;
  readonly state: SessionState;
  /** Where a place in the room is on the stage; null behind the eye or far outside. */
  readonly toPixel: (place: Vec3) => Pixel | null;
  readonly ring: Pixel | null;
  readonly lens: ShownLens | null;
  /** Whether a place of the stage shows this railway and not another. */
  readonly owns: (pixel: Pixel) => boolean;
}

export interface ShownLens {
  readonly joint: number;
  readonly frame: LensFrame;
  /** As it lies when open, and as it lies now. */
  readonly open: LensCircle;
  readonly now: LensCircle;
  /** How far it is open. */
  readonly share: number;
  readonly subject: LensSubject;
  /** N, draft positive; null before a run. */
  readonly force: number | null;
  readonly ghostHeads: { readonly leading: Vec3; readonly trailing: Vec3 } | null;
}
