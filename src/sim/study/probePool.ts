import type { RunHooks, SimHost } from '../types.ts';
import type { Probe, ProbeRequest } from './types.ts';

/** Hosts that share the probes of a study: each works on one at a time. */
export interface ProbePool {
  /** How many probes can be under way at once: what a study's `width` should be. */
  readonly width: number;
  probe(request: ProbeRequest, hooks?: RunHooks): Promise<Probe>;
  dispose(): void;
}

/** A pool of the hosts given; probes beyond their number wait in order. It owns the hosts. */
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

  return {
    width: hosts.length,
    async probe(request, hooks) {
      const host = await taken();
      try {
        return await host.probe(request, hooks);
      } finally {
        free(host);
      }
    },
    dispose() {
      for (const host of hosts) host.dispose();
    },
  };
}
