export {
  changeRoom,
  type RoomChange,
  type SceneBaseboard,
  type SceneCorner,
  type SceneDoor,
  type SceneObstacle,
  type SceneRoom,
  type SceneRound,
  sideMm,
} from '../../scene/index.ts';
export { structuresOf } from '../../sim/index.ts';
export { drawingHeight, type RoomTool, roomHandles, roomRemarks, usualPart } from './hand/index.ts';
export {
  asRectangle,
  fromRectangle,
  proposedBoard,
  proposedDoor,
  proposedPillar,
  proposedWalls,
  type Rectangle,
  usualEyeMm,
  usualReachMm,
  usualSwingDeg,
  withCorner,
  withoutCorner,
} from './proposals.ts';
export { type OutOfReach, outOfReach } from './reach.ts';
