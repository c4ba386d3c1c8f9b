export { extentOfObstacle, isIn } from './obstacle.ts';
export { isInside, sideMm, twiceArea } from './outline.ts';
export { roomProblems } from './roomChecks.ts';
export type {
  SceneBaseboard,
  SceneDoor,
  SceneObstacle,
  SceneRoom,
  SceneRound,
} from './roomSchema.ts';
export { covers, standingEdges } from './standing.ts';
