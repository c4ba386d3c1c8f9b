import { trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import { formatLength } from '../../core/units/index.ts';
import { moveSupports, placedSupports, type Scene, type SceneTrack, type SupportSpan } from '../../scene/index.ts';
import type { SessionState } from '../types.ts';
import { spanWords } from './chosenSupports.ts';
import type { Handle } from './handles.ts';

/** Step that a hand raises supports by, and one press of an arrow key, mm. */
export const supportStepMm = 0.1;

/** Where a hand takes a support that stood this far off its plan, mm: to whole steps unless it asks to be free. */
export function raisedOff(offMm: number, byMm: number, snaps: boolean): number {
  const off = offMm + byMm;
  const whole = snaps ? Math.round(off / supportStepMm) * supportStepMm : off;
  // Without the dust of binary fractions.
  return Math.round(whole * 1e4) / 1e4;
}

/** A support to its new height, and with it the chosen ones that it is one of, each by as much. Throws RangeError in words. */
export function moveWith(scene: Scene, trackId: string, index: number, offMm: number, span: SupportSpan | null): Scene {
  const track = scene.tracks.find(({ id }) => id === trackId);
  const now = (track && placedSupports(track)[index]?.offMm) ?? 0;
  return moveSupports(scene, trackId, span ?? { from: index, to: index }, offMm - now);
}

/** What a support's handle is called. */
export const supportName = (index: number): string => `Support ${index + 1} off its plan`;

/** What a change of its height, or of the chosen ones with it, is called after "Undo". */
export const supportLabel = (index: number, span: SupportSpan | null): string =>
  span === null || span.from === span.to ? `support ${index + 1} off its plan` : `heights of ${spanWords(span)}`;

/** How far a support stands off its plan, in words. */
export function supportOffWords(offMm: number, { lengthUnit }: Pick<SessionState, 'lengthUnit'>): string {
  if (offMm === 0) return 'as planned';
  return lengthUnit === 'mm'
    ? formatLength(offMm / 1000, { unit: 'mm', digits: 1, signed: true })
    : formatLength(offMm / 1000, { unit: 'in', digits: 3, signed: true });
}

/** The key of a support's handle on the stage, and the number that a key names, from 0; null for another handle's. */
export const supportKey = (index: number): string => `support:${index}`;
export function supportOfKey(key: string | null): number | null {
  const [kind, index] = (key ?? '').split(':');
  return kind === 'support' ? Number(index) : null;
}

/** Handles at the heads of some supports of a track, m; `track` is the same compiled. */
export function supportHandles(file: SceneTrack, track: Track, indices: Iterable<number>): Handle[] {
  const placed = placedSupports(file);
  return [...new Set(indices)].flatMap((index): Handle[] => {
    const support = placed[index];
    if (support === undefined) return [];
    const { x, y, z } = trackPoint(track, Math.min(support.atMm / 1000, track.length));
    return [
      {
        key: supportKey(index),
        kind: 'support',
        element: index,
        place: [x, y, z],
        anchor: [x, y],
        grows: null,
        name: supportName(index),
        keys: 'Up and Down raise and lower, Left and Right go on to the next; with Shift they take it in',
      },
    ];
  });
}
