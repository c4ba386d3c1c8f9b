import { vi } from 'vitest';
import text from '../../scenes/01-wren-gill.json?raw';
import type { Cure, Finding } from '../../src/core/findings/types.ts';
import { parseScene, type Scene } from '../../src/scene/index.ts';
import type { RunHooks, SimHost, TrialResult } from '../../src/sim/types.ts';

/** A real scene of the project, so that compiling it is the real thing; only the solving is made up here. */
export function sceneForTests(): Scene {
  const parsed = parseScene(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.scene;
}

export function finding(over: Partial<Finding> = {}): Finding {
  return {
    risk: 'override',
    verdict: 'fails',
    time: 4,
    frame: 4,
    chainage: 2,
    subject: 1,
    value: 0.0019,
    limit: 0.0015,
    margin: -0.0004,
    range: null,
    parts: [],
    causes: [],
    cures: [],
    ...over,
  };
}

/** A result of ten seconds in eleven frames with nothing in it but what the store looks at. */
export function resultOf(
  trialId: string,
  findings: readonly Finding[] = [],
  margins: Record<string, number> = {},
): TrialResult {
  const frames = 11;
  const vehicles = 3;
  const each = (width: number) => new Float64Array(frames * width);
  const chainage = each(vehicles).map((_, index) => Math.floor(index / vehicles) * 0.5 - (index % vehicles) * 0.1);
  return {
    trialId,
    findings,
    risks: Object.entries(margins).map(([risk, margin]) => ({
      risk: risk as Finding['risk'],
      subjects: 2,
      margins: each(2),
      chainages: each(2),
      worst: {
        frame: 0,
        subject: 0,
        chainage: 0,
        value: 0,
        limit: 0,
        margin,
        range: null,
        parts: [],
        governing: null,
      },
    })),
    run: {
      frames,
      vehicles,
      interval: 1,
      time: Float64Array.from({ length: frames }, (_, frame) => frame),
      chainage,
      speed: each(vehicles),
      force: each(2),
      draftPeak: each(2),
      buffPeak: each(2),
      extension: each(2),
      locomotives: Int32Array.of(2),
      setting: each(1),
      rimSpeed: each(1),
      railForce: each(1),
      gripUse: each(1),
      motorLimit: each(1),
      gripLimit: each(1),
      demand: each(1),
      events: [
        { kind: 'run-in', time: 2, chainage: 1, subject: 0, value: -0.3 },
        { kind: 'arrived', time: 10, chainage: 5, subject: 0, value: 0 },
      ],
      outcome: 'arrived',
      energy: {
        motor: 0,
        kinetic: 0,
        potential: 0,
        stored: 0,
        rolling: 0,
        curve: 0,
        flange: 0,
        coupler: 0,
        slip: 0,
        holding: 0,
        residual: 0,
      },
      steps: 0,
    },
  };
}

/** A question put to the host and how to answer it. */
export interface Asked {
  readonly scene: Scene;
  readonly trialId: string;
  readonly cure: Cure | null;
  readonly hooks: RunHooks;
  answer(result: TrialResult | null): Promise<void>;
  fail(error: Error): Promise<void>;
}

/** Lets what waits on a promise go on. */
export const settle = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

/** A host that answers when the test says so, and as a real one rejects with an AbortError when called off. */
export function heldHost() {
  const asked: Asked[] = [];
  const ask = (scene: Scene, trialId: string, cure: Cure | null, hooks: RunHooks = {}) =>
    new Promise<TrialResult | null>((resolve, reject) => {
      hooks.signal?.addEventListener('abort', () => reject(new DOMException('Called off', 'AbortError')));
      asked.push({
        scene,
        trialId,
        cure,
        hooks,
        answer: (result) => {
          resolve(result);
          return settle();
        },
        fail: (error) => {
          reject(error);
          return settle();
        },
      });
    });
  const host: SimHost = {
    runTrial: (scene, trialId, hooks) => ask(scene, trialId, null, hooks) as Promise<TrialResult>,
    tryCure: (scene, trialId, cure, hooks) => ask(scene, trialId, cure, hooks),
    probe: () => Promise.reject(new Error('This host answers no probes.')),
    glance: () => Promise.reject(new Error('This host does not glance.')),
    dispose: vi.fn(),
  };
  return { host, asked };
}
