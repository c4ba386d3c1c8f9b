import { trackPoint } from '../../core/track/index.ts';
import { nearestOn, type Scene } from '../../scene/index.ts';
import { draftTrack } from '../routeEdits/draftTrack.ts';
import { newBend } from './dragged.ts';
import { joinedTo, type LinePlace } from './ends.ts';

/** A track further away than this from the end of another, in gauges, is not the one it is to run into. */
const farthestInGauges = 40;
/** Places on the other track are tried this far apart, over this length, m. */
const tryEvery = 0.02;
const tryOver = 4;

/**
 * The scene with a track laid on from its end into the nearest other track, tangent to it, in the way it runs by then: by the first place from which on its bends have
 * room. Throws RangeError in words when nothing is near or nothing fits.
 */
export function ranInto(scene: Scene, trackId: string): Scene {
  const file = scene.tracks.find(({ id }) => id === trackId);
  const own = draftTrack(scene, trackId);
  if (file === undefined || own === null) throw new RangeError(`There is no track "${trackId}" to lay on.`);
  const end = trackPoint(own, own.length);
  const reach = (farthestInGauges * scene.scale.gaugeMm) / 1000;
  const lines = scene.tracks.flatMap(({ id, name }) => {
    const line = id === trackId ? null : draftTrack(scene, id);
    if (line === null) return [];
    // What it branched off lies behind it; a track beside lies ahead.
    const { chainage, off } = nearestOn(line, [end.x, end.y]);
    const at = trackPoint(line, chainage);
    const aside = Math.abs((at.y - end.y) * Math.cos(end.heading) - (at.x - end.x) * Math.sin(end.heading));
    const leftBehind = 'branchOf' in file.start && file.start.branchOf === id;
    return off <= reach && !leftBehind && aside > 1e-6 ? [{ id, name, line, chainage, off }] : [];
  });
  const [near] = lines.sort((one, other) => one.off - other.off);
  if (near === undefined) {
    throw new RangeError(`No other track lies within ${Math.round(reach * 1000)} mm of the end of ${file.name}.`);
  }
  const bend = newBend(scene, file);
  const along = Math.cos(trackPoint(near.line, near.chainage).heading - end.heading) >= 0 ? 1 : -1;
  for (let on = 0; on <= tryOver; on += tryEvery) {
    const chainage = near.chainage + along * on;
    if (chainage < 0 || chainage > near.line.length) break;
    const { x, y, z, heading } = trackPoint(near.line, chainage);
    const goal: LinePlace = { trackId: near.id, x, y, z, heading: along > 0 ? heading : heading + Math.PI };
    try {
      return joinedTo(scene, trackId, goal, bend);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  throw new RangeError(
    `No bends of ${Math.round(bend.radiusMm)} mm lead from the end of ${file.name} into ${near.name}: it ends too near, or too steep to it.`,
  );
}
