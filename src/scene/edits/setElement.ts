import type { Scene } from '../schema/schema.ts';
import type { SceneBend, SceneElement, SceneTrack } from '../schema/trackSchema.ts';
import { splicedFates } from './chainageMap.ts';
import { elementName, elementOf, trackOf } from './parts.ts';
import { putAlignment } from './putTrack.ts';
import { tidy } from './tidy.ts';

/** What may be said anew of an element. What its kind does not have is refused. */
export interface ElementChange {
  readonly lengthMm?: number;
  readonly radiusMm?: number;
  readonly angleDeg?: number;
  readonly turns?: number;
  readonly turn?: 'left' | 'right';
  /** Null takes it away. */
  readonly cantMm?: number | null;
}

const allowed: Readonly<Record<SceneElement['kind'], readonly (keyof ElementChange)[]>> = {
  straight: ['lengthMm'],
  arc: ['lengthMm', 'radiusMm', 'angleDeg', 'turn', 'cantMm'],
  helix: ['radiusMm', 'turns', 'turn', 'cantMm'],
  transition: ['lengthMm'],
};

const words: Readonly<Record<keyof ElementChange, string>> = {
  lengthMm: 'length',
  radiusMm: 'radius',
  angleDeg: 'angle',
  turns: 'number of turns',
  turn: 'hand',
  cantMm: 'cant',
};

/**
 * The scene with one element (index from 0) changed. Another radius keeps the angle the curve turns through, so what follows
 * keeps its direction; a transition beside it that named the old curve names the new one. Throws RangeError in words.
 */
export function setElement(scene: Scene, trackId: string, index: number, change: ElementChange): Scene {
  const track = trackOf(scene, trackId);
  const before = elementOf(track, index);
  const after = changed(track, index, before, change);
  const alignment = track.alignment.with(index, after);
  for (const [side, neighbour] of [
    ['to', index - 1],
    ['from', index + 1],
  ] as const) {
    const beside = alignment[neighbour];
    if (beside?.kind === 'transition' && 'radiusMm' in before && 'radiusMm' in after && same(beside[side], before)) {
      alignment[neighbour] = { ...beside, [side]: { radiusMm: after.radiusMm, turn: after.turn } };
    }
  }
  return putAlignment(scene, trackId, alignment, splicedFates(alignment.length, index, 0, 0));
}

const same = (bend: SceneBend | undefined, curve: { radiusMm: number; turn: string }): boolean =>
  typeof bend === 'object' && bend.radiusMm === curve.radiusMm && bend.turn === curve.turn;

function changed(track: SceneTrack, index: number, element: SceneElement, change: ElementChange): SceneElement {
  for (const [key, value] of Object.entries(change) as [keyof ElementChange, ElementChange[keyof ElementChange]][]) {
    if (!allowed[element.kind].includes(key)) {
      throw new RangeError(`${elementName(track, index)} is a ${element.kind} and has no ${words[key]} of its own.`);
    }
    if (typeof value === 'number' && key !== 'cantMm' && !(value > 0 && Number.isFinite(value))) {
      throw new RangeError(`${elementName(track, index)} needs a ${words[key]} of more than 0, not ${value}.`);
    }
  }
  const { lengthMm, radiusMm, angleDeg, turns, turn, cantMm } = change;
  switch (element.kind) {
    case 'straight':
    case 'transition':
      return lengthMm === undefined ? element : { ...element, lengthMm };
    case 'helix':
      return canted(
        {
          ...element,
          radiusMm: radiusMm ?? element.radiusMm,
          turns: turns ?? element.turns,
          turn: turn ?? element.turn,
        },
        cantMm,
      );
    case 'arc': {
      const { lengthMm: _length, angleDeg: _angle, ...rest } = element;
      const radius = radiusMm ?? element.radiusMm;
      const size =
        angleDeg !== undefined
          ? { angleDeg }
          : lengthMm !== undefined
            ? { lengthMm }
            : element.lengthMm !== undefined
              ? { lengthMm: tidy((element.lengthMm * radius) / element.radiusMm) }
              : { angleDeg: element.angleDeg ?? 0 };
      return canted({ ...rest, ...size, radiusMm: radius, turn: turn ?? element.turn }, cantMm);
    }
  }
}

function canted<E extends Extract<SceneElement, { kind: 'arc' | 'helix' }>>(element: E, cantMm?: number | null): E {
  if (cantMm === undefined) return element;
  const { cantMm: _old, ...level } = element;
  return (cantMm === null ? level : { ...level, cantMm }) as E;
}
