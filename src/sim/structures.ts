import type { Structure } from '../core/risks/types.ts';
import { cornersOf } from '../scene/index.ts';
import { compileLineside } from './compileLineside.ts';
import type { CompiledScene } from './types.ts';

const mm = 1e-3;

/** What stands in the room by corners and heights, and what stands along a track, as solid prisms. */
export function structuresOf({ scene, tracks }: CompiledScene): Structure[] {
  const placed = (scene.structures ?? []).map((one) => ({
    name: one.name,
    outline: cornersOf(one).map(({ xMm, yMm }) => [xMm * mm, yMm * mm] as const),
    bottom: one.bottomMm * mm,
    top: one.topMm * mm,
  }));
  const along = (scene.lineside ?? []).flatMap((one) => {
    const track = tracks.get(one.track);
    return track === undefined ? [] : compileLineside(one, track);
  });
  return [...placed, ...along];
}
