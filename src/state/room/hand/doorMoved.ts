import { type SceneCorner, type SceneDoor, type SceneRoom, sideMm, tidy } from '../../../scene/index.ts';
import { type Snapping, toStep } from '../../route/snapping.ts';
import { doorLeaf } from './doorLeaf.ts';
import { alongSide, nearestSide, offSide } from './outlineSides.ts';

/** The format's bounds of a door, mm and degrees. */
export const [narrowestMm, widestMm] = [100, 5000];
const [leastSwingDeg, mostSwingDeg] = [5, 180];

/** Off its wall a hand takes a door to another one that is nearer by this much, mm: at a corner it does not flutter. */
const stickMm = 60;

/** A door of a room as a hand at one of its handles wants it. Throws RangeError in words. */
export function doorMoved(
  room: SceneRoom,
  door: SceneDoor,
  does: 'place' | 'near' | 'far' | 'leaf',
  to: SceneCorner,
  snap: Snapping,
): SceneDoor {
  const leaf = doorLeaf(room, door);
  if (leaf === null) throw new RangeError('The door has no wall.');
  const { from, along, wallMm } = leaf;
  const mm = (value: number): number => tidy(toStep(value, snap.lengthMm));
  const onWall = (to.xMm - from.xMm) * along[0] + (to.yMm - from.yMm) * along[1];
  switch (does) {
    case 'place': {
      const { corners = [] } = room;
      const here = offSide(corners, door.wall - 1, to);
      const nearest = nearestSide(corners, to);
      const wall = offSide(corners, nearest, to) + stickMm < here ? nearest + 1 : door.wall;
      return doorIn(corners, door, wall, alongSide(corners, wall - 1, to) - door.widthMm / 2, snap);
    }
    case 'near':
    case 'far': {
      const end = door.fromMm + door.widthMm;
      const at = mm(Math.min(Math.max(0, onWall), Math.floor(wallMm)));
      const [fromMm, toMm] = does === 'near' ? [at, end] : [door.fromMm, at];
      const widthMm = tidy(toMm - fromMm);
      if (widthMm < narrowestMm) throw new RangeError(`A door is ${narrowestMm} mm wide at least.`);
      if (widthMm > widestMm) throw new RangeError(`A door is ${widestMm} mm wide at most.`);
      return { ...door, fromMm, widthMm };
    }
    case 'leaf': {
      const turned = Math.atan2(to.yMm - leaf.hinge.yMm, to.xMm - leaf.hinge.xMm) - leaf.closed;
      const angle = leaf.inwards * (turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI)));
      const degrees = tidy(toStep((Math.abs(angle) * 180) / Math.PI, snap.angleDeg));
      const swingDeg = Math.min(mostSwingDeg, Math.max(leastSwingDeg, degrees));
      return { ...door, opens: angle >= 0 ? 'inwards' : 'outwards', swingDeg };
    }
  }
}

/** A door in a wall, its opening beginning as near to a place along it as the wall lets it, mm. */
function doorIn(
  corners: readonly SceneCorner[],
  door: SceneDoor,
  wall: number,
  atMm: number,
  snap: Snapping,
): SceneDoor {
  const wallMm = sideMm(corners, wall - 1);
  const most = wallMm - door.widthMm;
  if (most < -1e-6) {
    throw new RangeError(
      `Wall ${wall} is ${Math.round(wallMm)} mm long, the door ${Math.round(door.widthMm)} mm wide.`,
    );
  }
  const fromMm = Math.max(0, Math.min(tidy(toStep(atMm, snap.lengthMm)), tidy(Math.floor(most * 1000) / 1000)));
  return { ...door, wall, fromMm };
}
