import type { Scene } from '../schema.ts';
import { elementName, elementOf, trackOf } from './parts.ts';
import { setElement } from './setElement.ts';

/** Turns a helix may have. */
const mostTurns = 60;

/**
 * The scene with one more turn of a helix, like its last: what follows moves along by a turn's length, and climbs or falls by what the turn does, so that
 * all grades stay. Throws RangeError in words.
 */
export function copyTurn(scene: Scene, trackId: string, index: number): Scene {
  const track = trackOf(scene, trackId);
  const helix = elementOf(track, index);
  if (helix.kind !== 'helix') throw new RangeError(`${elementName(track, index)} is no helix: it has no turn to copy.`);
  if (helix.turns + 1 > mostTurns) throw new RangeError(`A helix has at most ${mostTurns} turns.`);
  return setElement(scene, trackId, index, { turns: helix.turns + 1 });
}
