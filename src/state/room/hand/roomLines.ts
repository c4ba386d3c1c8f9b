import type { Vec3 } from '../../../core/math/vec3.ts';
import type { Scene, SceneCorner } from '../../../scene/index.ts';
import { fromRectangle } from '../proposals.ts';
import { doorLeaf, onLeaf } from './doorLeaf.ts';
import { boardTop, floorOf, obstacleGrip, type RoomSubject } from './roomParts.ts';

/** Sides that a circle, and parts that a door's arc, is drawn with. */
const roundParts = 48;
const arcParts = 12;

/** The lines of one thing of the room as it now is, m: what a hand works at stands out by them. */
export function roomLines(scene: Scene, subject: RoomSubject | null): readonly (readonly Vec3[])[] {
  const { room } = scene;
  if (subject === null) return [];
  const floor = room === undefined ? 0 : floorOf(room);
  const place = ({ xMm, yMm }: SceneCorner, z = floor): Vec3 => [xMm / 1000, yMm / 1000, z];
  const round = (outline: readonly SceneCorner[], z = floor): Vec3[][] =>
    outline.length === 0 ? [] : [[...outline, outline[0]].map((corner) => place(corner, z))];
  const [of, number] = subject.split(':');
  const index = Number(number);
  if (of === 'structure') {
    const { outline = [], topMm = 0 } = scene.structures?.[index] ?? {};
    return round(outline, topMm / 1000);
  }
  if (room === undefined) return [];
  if (subject === 'walls') return round(room.corners ?? []);
  if (of === 'door') {
    const door = room.doors?.[index];
    const leaf = door && doorLeaf(room, door);
    if (!door || !leaf) return [];
    const arc = Array.from({ length: arcParts + 1 }, (_, k) => onLeaf(leaf, door.widthMm, 1, k / arcParts));
    return [[leaf.hinge, ...arc, leaf.hinge].map((corner) => place(corner))];
  }
  if (of === 'board') {
    const board = room.baseboards?.[index];
    return board === undefined ? [] : round(fromRectangle(board), boardTop(scene, board.topMm));
  }
  const obstacle = room.obstacles?.[index];
  const grip = obstacleGrip(room, obstacle?.heightMm);
  if (obstacle?.round === undefined) return round(obstacle?.outline ?? [], grip);
  const { xMm, yMm, diameterMm } = obstacle.round;
  return round(
    Array.from({ length: roundParts }, (_, k): SceneCorner => {
      const angle = (2 * Math.PI * k) / roundParts;
      return { xMm: xMm + (diameterMm / 2) * Math.cos(angle), yMm: yMm + (diameterMm / 2) * Math.sin(angle) };
    }),
    grip,
  );
}
