import {
  changeRoom,
  changeSurroundings,
  extentOfObstacle,
  type RoomChange,
  type Scene,
  type SceneBaseboard,
  type SceneCorner,
  type SceneObstacle,
  type SceneRoom,
  type SceneStructure,
  tidy,
} from '../../../scene/index.ts';
import type { Dragged } from '../../route/dragged.ts';
import type { Place } from '../../route/handles.ts';
import { type Snapping, toStep } from '../../route/snapping.ts';
import { asRectangle, fromRectangle, type Rectangle, withCorner } from '../proposals.ts';
import { doorMoved } from './doorMoved.ts';
import { slideSide } from './outlineSides.ts';
import type { RoomHandle } from './roomHandles.ts';
import { type RoomPart, roomSubject } from './roomParts.ts';
import { bothLed, edgesOf, type Led, leastMm, shifted, spanned, toEdge, toSquare } from './roomSnapping.ts';

/** What a part of the room becomes: the change, and what it was led to. */
type Changed = Led<RoomChange>;

/**
 * What the room becomes when a handle of it is taken to a place, m. Nothing is made yet: `make` does, and throws RangeError in words that say what cannot be. The
 * scene is that of the moment the hand took hold.
 */
export function roomDragged(scene: Scene, handle: RoomHandle, to: Place, snap: Snapping): Dragged {
  const label = handle.name.charAt(0).toLowerCase() + handle.name.slice(1);
  return {
    label,
    make() {
      const { room } = scene;
      const place = { xMm: to[0] * 1000, yMm: to[1] * 1000 };
      if (handle.part.of === 'structure') {
        const structures = scene.structures ?? [];
        const moved = structureMoved(structures[handle.part.index], handle.part, room ?? {}, handle, place, snap);
        const all = structures.with(handle.part.index, moved.to);
        return { scene: changeSurroundings(scene, { structures: all }), led: moved.led };
      }
      if (room === undefined) throw new RangeError('There is no room.');
      const change = changed(room, handle, place, snap);
      return { scene: changeRoom(scene, change.to), led: change.led };
    },
  };
}

function changed(room: SceneRoom, { part, key, anchor }: RoomHandle, to: SceneCorner, snap: Snapping): Changed {
  const { corners = [], doors = [], obstacles = [], baseboards = [] } = room;
  const { index } = part;
  const by = { xMm: to.xMm - anchor[0] * 1000, yMm: to.yMm - anchor[1] * 1000 };
  const edges = edgesOf(room, roomSubject(key));
  switch (part.of) {
    case 'corner': {
      const { to: corner, led } = toSquare(corners, index, to, snap);
      return { to: { corners: corners.with(index, corner) }, led };
    }
    case 'wall':
      return { to: { corners: slideSide(corners, index, by, snap) }, led: null };
    case 'split': {
      const split = withCorner(room, index);
      const all = split.corners ?? [];
      const { to: corner, led } = toSquare(all, index + 1, to, snap);
      return { to: { ...split, corners: all.with(index + 1, corner) }, led };
    }
    case 'door': {
      return { to: { doors: doors.with(index, doorMoved(room, doors[index], part.does, to, snap)) }, led: null };
    }
    case 'board': {
      const board = rectangleMoved(baseboards[index], part, by, edges, snap);
      const { topMm } = baseboards[index];
      const made: SceneBaseboard = topMm === undefined ? board.to : { ...board.to, topMm };
      return { to: { baseboards: baseboards.with(index, made) }, led: board.led };
    }
    case 'structure':
      throw new RangeError('A structure is not of the room.');
    case 'obstacle': {
      const obstacle = obstacleMoved(obstacles[index], part, to, by, edges, snap);
      return { to: { obstacles: obstacles.with(index, obstacle.to) }, led: obstacle.led };
    }
  }
}

/** A structure goes as an obstacle of the same outline does; what stands in the room leads it. */
function structureMoved(
  structure: SceneStructure,
  part: Sized,
  room: Partial<SceneRoom>,
  { key, anchor }: RoomHandle,
  to: SceneCorner,
  snap: Snapping,
): Led<SceneStructure> {
  const by = { xMm: to.xMm - anchor[0] * 1000, yMm: to.yMm - anchor[1] * 1000 };
  const { name, outline } = structure;
  const moved = obstacleMoved({ name, outline }, part, to, by, edgesOf(room, roomSubject(key)), snap);
  return { to: { ...structure, outline: moved.to.outline ?? outline }, led: moved.led };
}

type Edges = ReturnType<typeof edgesOf>;
type Sized = Extract<RoomPart, { does: 'middle' | 'corner' | 'side' | 'across' }>;

/** A rectangle moved, or sized by one of its corners or sides; the other ones stay. */
function rectangleMoved(
  { xMm, yMm, lengthMm, widthMm }: Rectangle,
  { does, at }: Sized,
  by: SceneCorner,
  edges: Edges,
  snap: Snapping,
): Led<Rectangle> {
  const [east, north] = [xMm + lengthMm, yMm + widthMm];
  if (does === 'middle') {
    const x = shifted(xMm + by.xMm, east + by.xMm, edges.x, snap);
    const y = shifted(yMm + by.yMm, north + by.yMm, edges.y, snap);
    const moved = { xMm: tidy(xMm + by.xMm + x.to), yMm: tidy(yMm + by.yMm + y.to) };
    return { to: { ...moved, lengthMm, widthMm }, led: bothLed(x.led, y.led) };
  }
  // Corners go south-west, south-east, north-east, north-west; sides south, east, north, west.
  const takes = (side: number): boolean => (does === 'side' ? side === at : side === at || (side + 1) % 4 === at % 4);
  let led: string | null = null;
  const edge = (side: number, mm: number, move: number, others: Edges['x']): number => {
    if (!takes(side)) return mm;
    const to = toEdge(mm + move, others, snap);
    led = bothLed(led, to.led);
    return to.to;
  };
  const south = edge(0, yMm, by.yMm, edges.y);
  const right = edge(1, east, by.xMm, edges.x);
  const top = edge(2, north, by.yMm, edges.y);
  const west = edge(3, xMm, by.xMm, edges.x);
  return { to: spanned({ xMm: west, yMm: south }, { xMm: right, yMm: top }), led };
}

function obstacleMoved(
  obstacle: SceneObstacle,
  part: Sized,
  to: SceneCorner,
  by: SceneCorner,
  edges: Edges,
  snap: Snapping,
): Led<SceneObstacle> {
  const { outline = [], round } = obstacle;
  if (part.does === 'across' && round !== undefined) {
    const diameterMm = tidy(toStep(2 * Math.hypot(to.xMm - round.xMm, to.yMm - round.yMm), snap.lengthMm));
    if (diameterMm < leastMm) throw new RangeError(`It needs ${leastMm} mm across at least.`);
    return { to: { ...obstacle, round: { ...round, diameterMm } }, led: null };
  }
  const rectangle = asRectangle(outline);
  if (rectangle !== null) {
    const moved = rectangleMoved(rectangle, part, by, edges, snap);
    return { to: { ...obstacle, outline: fromRectangle(moved.to) }, led: moved.led };
  }
  if (part.does === 'corner') {
    const { to: corner, led } = toSquare(outline, part.at, to, snap);
    return { to: { ...obstacle, outline: outline.with(part.at, corner) }, led };
  }
  const [low, high] = extentOfObstacle(obstacle);
  const x = shifted(low.xMm + by.xMm, high.xMm + by.xMm, edges.x, snap);
  const y = shifted(low.yMm + by.yMm, high.yMm + by.yMm, edges.y, snap);
  const move = (place: SceneCorner): SceneCorner => ({
    xMm: tidy(place.xMm + by.xMm + x.to),
    yMm: tidy(place.yMm + by.yMm + y.to),
  });
  const led = bothLed(x.led, y.led);
  return round === undefined
    ? { to: { ...obstacle, outline: outline.map(move) }, led }
    : { to: { ...obstacle, round: { ...move(round), diameterMm: round.diameterMm } }, led };
}
