import { clearancesOf, judgeProfile, type ProfileTask } from '../../core/study/profile/index.ts';
import { asPlanned, trackPoint } from '../../core/track/index.ts';
import type { GradePoint } from '../../core/track/types.ts';
import { parseScene, type Scene } from '../../scene/index.ts';
import type { CompiledScene } from '../types.ts';

/** What is asked of a track's profile; SI. */
export interface ProfileWish
  extends Pick<ProfileTask, 'verticalRadius' | 'steepest' | 'towards' | 'curveLength' | 'window' | 'every'> {
  /** Chainages, m, whose heights stay as they are; the ends always do, with their grades. */
  readonly held: readonly number[];
  /** Rail top to rail top where tracks pass over each other, m; null: not looked at. */
  readonly headroom: number | null;
  readonly deckHalfWidth: number;
}

/** The task that improves one track of a scene, its plan and its ends as they are. Throws RangeError for a track that is not there or is a branch. */
export function profileTaskOf({ scene, tracks }: CompiledScene, trackId: string, wish: ProfileWish): ProfileTask {
  const { held, headroom, deckHalfWidth, ...limits } = wish;
  const track = tracks.get(trackId);
  const file = scene.tracks.find(({ id }) => id === trackId);
  if (track === undefined || file === undefined) throw new RangeError(`The scene has no track "${trackId}".`);
  if ('branchOf' in file.start)
    throw new RangeError(`"${trackId}" begins on another track; its first heights are that one's.`);
  const planned = asPlanned(track);
  const { length } = planned;
  const others = [...tracks].flatMap(([id, one]) => (id === trackId ? [] : [one]));
  const at = (chainage: number) => ({ chainage, height: trackPoint(planned, chainage).z });
  return {
    ...limits,
    track: planned,
    heights: [at(0), at(length), ...held.map(at)],
    grades: [0, length].map((chainage) => ({ chainage, grade: trackPoint(planned, chainage).grade })),
    clearances: headroom === null ? [] : clearancesOf(planned, { least: headroom, within: 2 * deckHalfWidth, others }),
  };
}

/** Ruling grade of the profile as it is planned now. */
export const presentRuling = (task: ProfileTask): number => judgeProfile(task, task.track.spec.profile.points).ruling;

/** A file writes lengths to a tenth of a micrometre, the middle of a curve between two such to half of that. */
const written = 1e4;
const tidy = (mm: number): number => Math.round(mm * written) / written;

/**
 * Points of heights as a scene writes them, mm. Of curves the ends are rounded, not the middle and the length, so that curves that touch do so still and
 * none reaches beyond the track.
 */
export const scenePoints = (points: readonly GradePoint[]) => {
  const end = Math.floor(points[points.length - 1].chainage * 1e3 * written) / written;
  return points.map(({ chainage, height, curve }) => {
    const heightMm = tidy(height * 1e3);
    if (curve === undefined || !('length' in curve)) return { atMm: tidy(chainage * 1e3), heightMm };
    const from = tidy((chainage - curve.length / 2) * 1e3);
    const to = Math.min(tidy((chainage + curve.length / 2) * 1e3), end);
    const middle = Math.round((from + to) * written) / (2 * written);
    return { atMm: middle, heightMm, verticalCurveLengthMm: tidy(to - from) };
  });
};

/** The scene with a profile on one of its tracks, checked as a file is. Throws RangeError when it would be refused. */
export function withProfile(scene: Scene, trackId: string, points: readonly GradePoint[]): Scene {
  const tracks = scene.tracks.map((one) => (one.id === trackId ? { ...one, profile: scenePoints(points) } : one));
  const parsed = parseScene({ ...scene, tracks });
  if (parsed.ok) return parsed.scene;
  const [{ path, found, allowed }] = parsed.problems;
  throw new RangeError(`${path}: ${found}; allowed: ${allowed}`);
}
