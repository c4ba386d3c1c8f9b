import {
  changeSurroundings,
  type SceneLineside,
  type SceneStructure,
  type Surroundings,
} from '../../../state/lineside/index.ts';
import { useDesk, useSession } from '../../context.tsx';

/** What stands beside and over the tracks, and how it is changed: one step of the history, or why not. */
export function useSurroundings(): {
  readonly structures: readonly SceneStructure[];
  readonly lineside: readonly SceneLineside[];
  readonly put: (label: string, change: Surroundings) => string | null;
} {
  const { actions } = useDesk();
  const structures = useSession((state) => state.scene?.structures) ?? [];
  const lineside = useSession((state) => state.scene?.lineside) ?? [];
  return {
    structures,
    lineside,
    put: (label, change) => actions.attempt(label, (scene) => changeSurroundings(scene, change)),
  };
}
