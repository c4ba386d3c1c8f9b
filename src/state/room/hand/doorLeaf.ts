import { type SceneCorner, type SceneDoor, type SceneRoom, sideMm, twiceArea } from '../../../scene/index.ts';
import { usualSwingDeg } from '../proposals.ts';

/** A door as it stands in its wall; lengths mm, angles rad. */
export interface DoorLeaf {
  /** Where its wall begins, the way along it, and how long it is. */
  readonly from: SceneCorner;
  readonly along: readonly [number, number];
  readonly wallMm: number;
  readonly hinge: SceneCorner;
  /** Direction of the closed leaf from the hinge, how far it swings, and the sense of that: left 1. */
  readonly closed: number;
  readonly swing: number;
  /** Sense in which it opens into the room. */
  readonly inwards: 1 | -1;
  readonly sense: 1 | -1;
}

/** Where a door of a room hangs and how it swings; null where its wall is not there. */
export function doorLeaf({ corners = [] }: Partial<SceneRoom>, door: SceneDoor): DoorLeaf | null {
  const from = corners[door.wall - 1];
  const to = corners[door.wall % Math.max(1, corners.length)];
  if (from === undefined || to === undefined) return null;
  const wallMm = sideMm(corners, door.wall - 1);
  const along = [(to.xMm - from.xMm) / wallMm, (to.yMm - from.yMm) / wallMm] as const;
  const near = door.hinge === 'near';
  const at = door.fromMm + (near ? 0 : door.widthMm);
  const toNext = Math.atan2(along[1], along[0]);
  // The room is to the left of a wall whose corners run counter-clockwise.
  const inwards = twiceArea(corners) >= 0 === near ? 1 : -1;
  return {
    from,
    along,
    wallMm,
    hinge: { xMm: from.xMm + at * along[0], yMm: from.yMm + at * along[1] },
    closed: near ? toNext : toNext + Math.PI,
    swing: ((door.swingDeg ?? usualSwingDeg) * Math.PI) / 180,
    inwards,
    sense: door.opens === 'inwards' ? inwards : inwards === 1 ? -1 : 1,
  };
}

/** A place on the leaf, as a share of its width from the hinge, when it is open by a share of its swing. */
export function onLeaf(
  { hinge, closed, swing, sense }: DoorLeaf,
  widthMm: number,
  out: number,
  open: number,
): SceneCorner {
  const angle = closed + sense * swing * open;
  return { xMm: hinge.xMm + out * widthMm * Math.cos(angle), yMm: hinge.yMm + out * widthMm * Math.sin(angle) };
}
