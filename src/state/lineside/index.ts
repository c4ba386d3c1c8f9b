export {
  changeSurroundings,
  type SceneLineside,
  type SceneStructure,
  type Surroundings,
} from '../../scene/index.ts';
export { proposedDeck, proposedMouth, proposedPier, proposedPlatform, proposedWall } from './proposals.ts';
