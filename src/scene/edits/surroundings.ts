import type { SceneLineside } from '../schema/linesideSchema.ts';
import type { Scene, SceneStructure } from '../schema/schema.ts';

/** What stands beside and over the tracks of a scene. */
export interface Surroundings {
  readonly structures?: readonly SceneStructure[];
  readonly lineside?: readonly SceneLineside[];
}

/** The scene with other things beside and over its tracks; a list without anything in it goes from the file. */
export function changeSurroundings(scene: Scene, change: Surroundings): Scene {
  const { structures, lineside, ...rest } = { ...scene, ...change };
  return {
    ...rest,
    ...(structures?.length && { structures: [...structures] }),
    ...(lineside?.length && { lineside: [...lineside] }),
  };
}
