import { placeMm, type Scene, type SceneTrack } from '../../scene/index.ts';
import { withTrack } from './parts.ts';

/** How far from the joint a finding may be and still mean it, mm. */
const reachMm = 20;

/** Puts a splice plate on the strip joint at a track chainage (m), so that it bends as one piece there; null without one. */
export function spliceJoint(scene: Scene, track: SceneTrack, chainage: number): Scene | null {
  const joints = track.stripJoints;
  if (joints === undefined) return null;
  let nearest = -1;
  let least = reachMm;
  joints.forEach((joint, index) => {
    const away = Math.abs(placeMm(track, joint) - chainage * 1000);
    if (away <= least) {
      least = away;
      nearest = index;
    }
  });
  if (nearest < 0) return null;
  return withTrack(scene, { ...track, stripJoints: joints.filter((_, index) => index !== nearest) });
}
