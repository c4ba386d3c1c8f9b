import {
  changeRoom,
  type RoomChange,
  type Scene,
  type SceneCorner,
  type SceneRoom,
  sideMm,
  tidy,
} from '../../../scene/index.ts';
import type { Dragged } from '../../route/dragged.ts';
import type { Place } from '../../route/handles.ts';
import { type Snapping, toStep } from '../../route/snapping.ts';
import {
  fromRectangle,
  proposedBoard,
  proposedDoor,
  proposedPillar,
  proposedPost,
  proposedWalls,
} from '../proposals.ts';
import { narrowestMm, widestMm } from './doorMoved.ts';
import { alongSide, nearestSide } from './outlineSides.ts';
import type { RoomTool } from './roomParts.ts';
import { bothLed, edgesOf, type Led, leastMm, spanned, toEdge } from './roomSnapping.ts';

/** What something drawn new is called in the history. */
export const newLabel = (tool: RoomTool): string => (tool === 'walls' ? 'walls of the room' : `new ${tool}`);

/** One of what a tool draws, where it is usual: for the keyboard, which then moves it. Throws RangeError in words. */
export function usualPart(scene: Scene, tool: RoomTool): RoomChange {
  const room: Partial<SceneRoom> = scene.room ?? {};
  const { corners, doors = [], obstacles = [], baseboards = [] } = room;
  switch (tool) {
    case 'walls':
      return { corners: proposedWalls(scene) };
    case 'door':
      if (corners === undefined) throw new RangeError('A door needs walls.');
      return { doors: [...doors, proposedDoor(room)] };
    case 'board':
      return { baseboards: [...baseboards, proposedBoard(scene)] };
    case 'pillar':
      return { obstacles: [...obstacles, { ...proposedPillar(room), name: freeName('Pillar', obstacles) }] };
    case 'post':
      return { obstacles: [...obstacles, { ...proposedPost(room), name: freeName('Post', obstacles) }] };
  }
}

/** What is drawn new by pulling it open from one place to another, m; labels and refusals as those of a drag. */
export function roomDrawn(scene: Scene, tool: RoomTool, start: Place, to: Place, snap: Snapping): Dragged {
  return {
    label: newLabel(tool),
    make() {
      const places = [start, to].map(([x, y]): SceneCorner => ({ xMm: x * 1000, yMm: y * 1000 }));
      const change = drawn(scene.room ?? {}, tool, places[0], places[1], snap);
      return { scene: changeRoom(scene, change.to), led: change.led };
    },
  };
}

function drawn(
  room: Partial<SceneRoom>,
  tool: RoomTool,
  start: SceneCorner,
  to: SceneCorner,
  snap: Snapping,
): Led<RoomChange> {
  const { corners = [], doors = [], obstacles = [], baseboards = [] } = room;
  if (tool === 'door') {
    if (corners.length === 0) throw new RangeError('A door needs walls.');
    const side = nearestSide(corners, start);
    const wallMm = sideMm(corners, side);
    const at = (place: SceneCorner): number =>
      tidy(Math.min(Math.floor(wallMm), Math.max(0, toStep(alongSide(corners, side, place), snap.lengthMm))));
    const [a, b] = [at(start), at(to)];
    const widthMm = tidy(Math.abs(b - a));
    if (widthMm < narrowestMm) throw new RangeError(`A door is ${narrowestMm} mm wide at least.`);
    if (widthMm > widestMm) throw new RangeError(`A door is ${widestMm} mm wide at most.`);
    const door = {
      wall: side + 1,
      fromMm: Math.min(a, b),
      widthMm,
      hinge: b > a ? 'near' : 'far',
      opens: 'inwards',
    } as const;
    return { to: { doors: [...doors, door] }, led: `in wall ${side + 1}` };
  }
  if (tool === 'post') {
    const grid = (mm: number): number => tidy(toStep(mm, snap.lengthMm));
    const diameterMm = grid(2 * Math.hypot(to.xMm - start.xMm, to.yMm - start.yMm));
    if (diameterMm < leastMm) throw new RangeError(`It needs ${leastMm} mm across at least.`);
    const round = { xMm: grid(start.xMm), yMm: grid(start.yMm), diameterMm };
    return { to: { obstacles: [...obstacles, { name: freeName('Post', obstacles), round }] }, led: null };
  }
  const edges = edgesOf(room, null);
  const [x1, x2] = [toEdge(start.xMm, edges.x, snap), toEdge(to.xMm, edges.x, snap)];
  const [y1, y2] = [toEdge(start.yMm, edges.y, snap), toEdge(to.yMm, edges.y, snap)];
  const rectangle = spanned(
    { xMm: Math.min(x1.to, x2.to), yMm: Math.min(y1.to, y2.to) },
    { xMm: Math.max(x1.to, x2.to), yMm: Math.max(y1.to, y2.to) },
  );
  const led = bothLed(x1.led, y1.led, x2.led, y2.led);
  if (tool === 'board') return { to: { baseboards: [...baseboards, rectangle] }, led };
  const outline = fromRectangle(rectangle);
  if (tool === 'walls') return { to: { corners: outline }, led };
  return { to: { obstacles: [...obstacles, { name: freeName('Pillar', obstacles), outline }] }, led };
}

/** A name that nothing in the way has yet. */
function freeName(wanted: string, obstacles: readonly { readonly name: string }[]): string {
  const taken = new Set(obstacles.map(({ name }) => name));
  for (let k = 2; ; k++) {
    const name = k === 2 ? wanted : `${wanted} ${k - 1}`;
    if (!taken.has(name)) return name;
  }
}
