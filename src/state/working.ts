import { plannedHeight } from '../core/track/index.ts';
import type { Scene } from '../scene/index.ts';
import { compileScene, compileTrial, isPropelled } from '../sim/index.ts';
import type { CompiledScene, CompiledTrial } from '../sim/types.ts';
import { findTrial, givenWorking, type Working } from './trialEdits.ts';
import type { SessionState } from './types.ts';

/** Tracks whose ends differ by less than this are level: their ways are out and back, not up and down, m. */
const levelWithin = 0.005;

/** How a trial is worked, in the words of its two switches. */
export interface WorkingWords extends Working {
  /** The locomotive is behind what it moves. */
  readonly propelled: boolean;
  /** Letting the other end lead makes a pulled train a propelled one and the other way round. */
  readonly turns: boolean;
  /** The way this trial goes, and the other. */
  readonly way: string;
  readonly otherWay: string;
}

const opposite: Readonly<Record<string, string>> = { up: 'down', down: 'up', out: 'back', back: 'out' };

/** Reads how a trial is worked from its compiled form. */
export function workingOf({ leading, towards }: Working, { path, propelled, train }: CompiledTrial): WorkingWords {
  const rise = plannedHeight(path.track, path.track.length) - plannedHeight(path.track, 0);
  const level = Math.abs(rise) < levelWithin;
  const way = level ? (towards === 'end' ? 'out' : 'back') : rise > 0 ? 'up' : 'down';
  const turns = isPropelled([...train.vehicles].reverse()) !== propelled;
  return { leading, towards, propelled, turns, way, otherWay: opposite[way] };
}

/** How a trial of a scene is worked, or null when there is no such trial. */
export function readWorking(scene: Scene, trialId: string, known: CompiledScene | null = null): WorkingWords | null {
  const entry = findTrial(scene, trialId);
  if (!entry) return null;
  const compiled = known?.scene === scene ? known : compileScene(scene);
  return workingOf(givenWorking(scene, entry), compileTrial(compiled, trialId));
}

/** How the trial the person means is worked, or null while there is none. */
export function presentWorking({
  scene,
  trialId,
  compiled,
}: Pick<SessionState, 'scene' | 'trialId' | 'compiled'>): WorkingWords | null {
  return scene && trialId ? readWorking(scene, trialId, compiled) : null;
}
