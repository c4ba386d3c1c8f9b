export { isInside, sideMm, twiceArea } from './outline.ts';
export { roomProblems } from './roomChecks.ts';
export {
  roomSchema,
  type SceneBaseboard,
  type SceneDoor,
  type SceneObstacle,
  type SceneRoom,
} from './roomSchema.ts';
export { covers, standingEdges } from './standing.ts';
