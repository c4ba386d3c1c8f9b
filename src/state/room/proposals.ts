import { newTrackPoint, trackPoint } from '../../core/track/index.ts';
import {
  type Scene,
  type SceneBaseboard,
  type SceneCorner,
  type SceneDoor,
  type SceneObstacle,
  type SceneRoom,
  sideMm,
} from '../../scene/index.ts';
import { draftTrack } from '../routeEdits/draftTrack.ts';

/** Floor left around the railway by walls that are first proposed, and board around it, mm: an aisle, and an edge. Common practice, no source. */
const aisleMm = 900;
const edgeMm = 100;

/** Proposed places are rounded out to this, mm. */
const gridMm = 100;

/** Width of an ordinary door's leaf, side of a pillar, width of a post, and how far from a corner they are put, mm. Common practice, no source. */
const doorMm = 800;
const pillarMm = 300;
const postMm = 120;

/** How far a hand reaches in from the edge at table height, mm. Common practice, no source. */
export const usualReachMm = 700;
/** Height of a standing person's eye, mm. */
export const usualEyeMm = 1600;
/** How far a door opens, degrees. */
export const usualSwingDeg = 90;

interface Extent {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** Where the tracks of a scene lie, mm, with so much around, rounded out. */
function extentOf(scene: Scene, around: number): Extent {
  const point = newTrackPoint();
  const places = scene.tracks.flatMap(({ id }) => {
    const track = draftTrack(scene, id);
    if (track === null) return [];
    const steps = Math.max(1, Math.ceil(track.length / 0.05));
    return Array.from({ length: steps + 1 }, (_, step) => {
      const { x, y } = trackPoint(track, (track.length * step) / steps, point);
      return [x * 1000, y * 1000] as const;
    });
  });
  const [east, north] = [0, 1].map((axis) => Math.max(...places.map((place) => place[axis]), 0));
  const [west, south] = [0, 1].map((axis) => Math.min(...places.map((place) => place[axis]), east, north));
  const out = (mm: number, way: 1 | -1): number => way * Math.ceil((way * mm + around) / gridMm) * gridMm;
  return { west: out(west, -1), south: out(south, -1), east: out(east, 1), north: out(north, 1) };
}

const rectangle = ({ west, south, east, north }: Extent): SceneCorner[] => [
  { xMm: west, yMm: south },
  { xMm: east, yMm: south },
  { xMm: east, yMm: north },
  { xMm: west, yMm: north },
];

/** Four walls around the railway and its boards, with an aisle all round. */
export function proposedWalls(scene: Scene): SceneCorner[] {
  const { west, south, east, north } = extentOf(scene, edgeMm + aisleMm);
  const boards = scene.room?.baseboards ?? [];
  return rectangle({
    west: Math.min(west, ...boards.map(({ xMm }) => xMm - aisleMm)),
    south: Math.min(south, ...boards.map(({ yMm }) => yMm - aisleMm)),
    east: Math.max(east, ...boards.map(({ xMm, lengthMm }) => xMm + lengthMm + aisleMm)),
    north: Math.max(north, ...boards.map(({ yMm, widthMm }) => yMm + widthMm + aisleMm)),
  });
}

/** A board under the whole railway. */
export function proposedBoard(scene: Scene): SceneBaseboard {
  const { west, south, east, north } = extentOf(scene, edgeMm);
  return { xMm: west, yMm: south, lengthMm: east - west, widthMm: north - south };
}

/** A door at the beginning of the first wall that has none, as wide as an ordinary one or as the wall lets it be. */
export function proposedDoor({ corners = [], doors = [] }: Pick<SceneRoom, 'corners' | 'doors'>): SceneDoor {
  const walls = corners.map((_, index) => index + 1);
  const wall = walls.find((one) => !doors.some((door) => door.wall === one)) ?? 1;
  return { wall, fromMm: gridMm, widthMm: doorMm, hinge: 'near', opens: 'inwards' };
}

/** A pillar in the first corner of the room; by the zero of the plan where it has no walls. */
export function proposedPillar({ corners = [] }: Pick<SceneRoom, 'corners'>): SceneObstacle {
  const [xMm, yMm] = firstCorner(corners);
  return { name: 'Pillar', outline: rectangle({ west: xMm, south: yMm, east: xMm + pillarMm, north: yMm + pillarMm }) };
}

/** A round post in the first corner of the room; by the zero of the plan where it has no walls. */
export function proposedPost({ corners = [] }: Pick<SceneRoom, 'corners'>): SceneObstacle {
  const [xMm, yMm] = firstCorner(corners);
  return { name: 'Post', round: { xMm: xMm + pillarMm, yMm: yMm + pillarMm, diameterMm: postMm } };
}

const firstCorner = (corners: readonly SceneCorner[]): number[] =>
  [0, 1].map((axis) => {
    const along = corners.map((corner) => (axis === 0 ? corner.xMm : corner.yMm));
    return corners.length === 0 ? 0 : Math.min(...along);
  });

/** A rectangle square to the room, mm. */
export interface Rectangle {
  readonly xMm: number;
  readonly yMm: number;
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** An outline as a rectangle square to the room, or null where it is none. */
export function asRectangle(outline: readonly SceneCorner[]): Rectangle | null {
  if (outline.length !== 4) return null;
  const [xs, ys] = [outline.map(({ xMm }) => xMm), outline.map(({ yMm }) => yMm)];
  const [west, east, south, north] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const square = outline.every((corner, i) => {
    const next = outline[(i + 1) % 4];
    return (corner.xMm === next.xMm) !== (corner.yMm === next.yMm);
  });
  return square ? { xMm: west, yMm: south, lengthMm: east - west, widthMm: north - south } : null;
}

/** The corners of a rectangle, counter-clockwise from the south-west. */
export const fromRectangle = ({ xMm, yMm, lengthMm, widthMm }: Rectangle): SceneCorner[] =>
  rectangle({ west: xMm, south: yMm, east: xMm + lengthMm, north: yMm + widthMm });

/** The corners with another halfway along the side that begins at one of them; walls and doors beyond it count on by one. */
export function withCorner(
  { corners = [], doors = [] }: Pick<SceneRoom, 'corners' | 'doors'>,
  index: number,
): Pick<SceneRoom, 'corners' | 'doors'> {
  const [a, b] = [corners[index], corners[(index + 1) % corners.length]];
  const middle = { xMm: (a.xMm + b.xMm) / 2, yMm: (a.yMm + b.yMm) / 2 };
  const halfMm = sideMm(corners, index) / 2;
  return {
    corners: corners.toSpliced(index + 1, 0, middle),
    doors: doors.map((door) => {
      if (door.wall === index + 1 && door.fromMm >= halfMm) {
        return { ...door, wall: door.wall + 1, fromMm: door.fromMm - halfMm };
      }
      return door.wall > index + 1 ? { ...door, wall: door.wall + 1 } : door;
    }),
  };
}

/** The corners without one; its wall and the doors in it go, walls beyond count back by one. */
export function withoutCorner(
  { corners = [], doors = [] }: Pick<SceneRoom, 'corners' | 'doors'>,
  index: number,
): Pick<SceneRoom, 'corners' | 'doors'> {
  return {
    corners: corners.toSpliced(index, 1),
    doors: doors
      .filter(({ wall }) => wall !== index + 1)
      .map((door) => (door.wall > index + 1 ? { ...door, wall: door.wall - 1 } : door)),
  };
}
