import type { Scene } from '../../scene/index.ts';
import type { Glance, GlanceRequest } from '../glance/types.ts';
import type { RunHooks, SimHost, TrialResult } from '../types.ts';
import type { Probe, ProbeRequest } from './types.ts';

/** Hosts that share the work of studies: each works on one thing at a time. */
export interface ProbePool {
  /** How many probes can be under way at once: what a study's `width` should be. */
  readonly width: number;
  probe(request: ProbeRequest, hooks?: RunHooks): Promise<Probe>;
  glance(request: GlanceRequest): Promise<Glance>;
  /** One trial in full, to be looked at. */
  runTrial(scene: Scene, trialId: string, hooks?: RunHooks): Promise<TrialResult>;
  dispose(): void;
}

/** A pool of the hosts given; what is asked beyond their number waits in order. It owns the hosts. */
export function createProbePool(hosts: readonly SimHost[]): ProbePool {
  const idle = [...hosts];
  const waiting: ((host: SimHost) => void)[] = [];

  const taken = (): Promise<SimHost> => {
    const host = idle.pop();
    return host === undefined ? new Promise((resolve) => waiting.push(resolve)) : Promise.resolve(host);
  };

  function free(host: SimHost): void {
    const next = waiting.shift();
    if (next === undefined) idle.push(host);
    else next(host);
  }

  async function by<A>(ask: (host: SimHost) => Promise<A>): Promise<A> {
    const host = await taken();
    try {
      return await ask(host);
    } finally {
      free(host);
    }
  }

  return {
    width: hosts.length,
    probe: (request, hooks) => by((host) => host.probe(request, hooks)),
    glance: (request) => by((host) => host.glance(request)),
    runTrial: (scene, trialId, hooks) => by((host) => host.runTrial(scene, trialId, hooks)),
    dispose() {
      for (const host of hosts) host.dispose();
    },
  };
}
