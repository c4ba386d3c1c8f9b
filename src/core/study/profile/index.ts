export { clearancesOf, type Decks } from './clearances.ts';
export { gradePointsOf, roundedPoints, type Setting } from './gradePoints.ts';
export { judgeProfile } from './judge.ts';
export { type Nodes, nodesOf } from './nodes.ts';
export { firstStands, type ProfileProblem, plainestProblem, profileProblem, type Stand } from './problem.ts';
export { steeperStands } from './steeperStands.ts';
export type { Clearance, FoundProfile, ProfileTask } from './types.ts';
