import { trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import { nearestOn, type Scene } from '../../scene/index.ts';
import { ledSpacing, normSpacings } from '../routeEdits/index.ts';
import type { Place } from './handles.ts';
import type { Snapping } from './snapping.ts';

/** Tracks whose directions differ by less than this, rad, lie beside each other: a tenth of a degree, 2 mm on a metre. */
const parallelWithin = 0.1 * (Math.PI / 180);

/** The track whose start is held, and all tracks as they were when it was taken, by id. */
interface HeldStart {
  readonly scene: Scene;
  readonly trackId: string;
  readonly track: Track;
  readonly tracks: ReadonlyMap<string, Track>;
}

/**
 * Where the start of the held track comes to lie when it is led beside a track that runs the same way or against it: at the spacing of a standard from that, m, and
 * what it was led to. Null where no such track is within reach, and while nothing leads.
 */
export function startBeside(
  { scene, trackId, track, tracks }: HeldStart,
  [x, y]: Place,
  { ends }: Snapping,
): { readonly place: Place; readonly led: string } | null {
  if (ends <= 0) return null;
  const own = trackPoint(track, 0).heading;
  let best: { readonly place: Place; readonly led: string } | null = null;
  let least = ends;
  for (const other of scene.tracks) {
    const line = tracks.get(other.id);
    if (other.id === trackId || line === undefined) continue;
    const { chainage } = nearestOn(line, [x, y]);
    // Before its start and past its end there is nothing to lie beside.
    if (chainage <= 0 || chainage >= line.length) continue;
    const at = trackPoint(line, chainage);
    if (Math.abs(Math.sin(at.heading - own)) > parallelWithin) continue;
    const [nx, ny] = [-Math.sin(at.heading), Math.cos(at.heading)];
    const aside = (x - at.x) * nx + (y - at.y) * ny;
    const norm = ledSpacing(Math.abs(aside) * 1000, normSpacings(scene, other), least * 1000);
    if (norm === null) continue;
    const to = Math.sign(aside) * (norm.mm / 1000);
    least = Math.abs(to - aside);
    best = {
      place: [x + (to - aside) * nx, y + (to - aside) * ny],
      led: `${norm.mm} mm from ${other.name}: ${norm.because.source}`,
    };
  }
  return best;
}
