import { portalStructures, wallStructures } from '../core/risks/index.ts';
import type { Structure } from '../core/risks/types.ts';
import type { Track } from '../core/track/types.ts';
import type { SceneLineside } from '../scene/index.ts';

const mm = 1e-3;

/** Depth of a portal that does not say, and thickness of walls and lintels, mm. Only faces to the track matter. */
const usualDepthMm = 10;
const thicknessMm = 10;

/** The solid prisms of a portal over a track, or of a wall along one. */
export function compileLineside(thing: SceneLineside, track: Track): Structure[] {
  const { name } = thing;
  if (thing.kind === 'portal') {
    return portalStructures(track, {
      name,
      chainage: thing.atMm * mm,
      width: thing.widthMm * mm,
      height: thing.heightMm * mm,
      depth: (thing.depthMm ?? usualDepthMm) * mm,
      thickness: thicknessMm * mm,
      offset: (thing.offsetMm ?? 0) * mm,
    });
  }
  return wallStructures(track, {
    name,
    from: thing.fromMm * mm,
    to: Math.min(thing.toMm * mm, track.length),
    side: thing.side === 'left' ? 1 : -1,
    distance: thing.distanceMm * mm,
    height: thing.heightMm * mm,
    thickness: thicknessMm * mm,
  });
}
