import { trackLengthMm } from '../places.ts';
import type { SceneLineside } from '../schema/linesideSchema.ts';
import type { Scene } from '../schema/schema.ts';
import type { Problem } from './problems.ts';
import { unknownId } from './references.ts';

/** How far a place may miss the end of a track, mm: lengths of arcs are not round numbers. */
const endSlackMm = 0.01;

/** What is wrong with one thing beside the line: a track that is not there, a place beyond its end, a wall that ends before it begins. */
export function linesideProblems(scene: Scene, thing: SceneLineside, path: string): Problem[] {
  const track = scene.tracks.find(({ id }) => id === thing.track);
  if (track === undefined) {
    return [
      unknownId(
        `${path}.track`,
        thing.track,
        scene.tracks.map(({ id }) => id),
      ),
    ];
  }
  const length = trackLengthMm(track);
  const [field, furthest] = thing.kind === 'portal' ? ['atMm', thing.atMm] : ['toMm', thing.toMm];
  const problems: Problem[] = [];
  if (furthest > length + endSlackMm) {
    problems.push({
      path: `${path}.${field}`,
      found: `${furthest} mm`,
      allowed: `at most ${Math.floor(length)} mm, the length of "${track.id}"`,
      example: String(Math.floor(length / 2)),
    });
  }
  if (thing.kind === 'wall' && !(thing.toMm > thing.fromMm)) {
    problems.push({
      path: `${path}.toMm`,
      found: `${thing.toMm} mm, where it begins at ${thing.fromMm} mm`,
      allowed: 'more than fromMm',
      example: String(thing.fromMm + 300),
    });
  }
  return problems;
}
