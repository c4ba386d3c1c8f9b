import { createInProcessHost } from './inProcessHost.ts';
import { type MessageEnd, type SimReply, type SimRequest, transferables } from './protocol.ts';

/** Answers the requests that come in at one end of a channel, several at a time, until the thread ends. */
export function serveRequests(end: MessageEnd<SimReply, SimRequest>): void {
  const host = createInProcessHost();
  const underWay = new Map<number, AbortController>();

  async function answer(request: Exclude<SimRequest, { kind: 'cancel' }>): Promise<void> {
    const { id } = request;
    const controller = new AbortController();
    underWay.set(id, controller);
    const hooks = {
      signal: controller.signal,
      onProgress: (done: number) => end.postMessage({ kind: 'progress', id, done }, []),
    };
    try {
      if (request.kind === 'probe') {
        end.postMessage({ kind: 'probed', id, probe: await host.probe(request, hooks) }, []);
        return;
      }
      if (request.kind === 'glance') {
        end.postMessage({ kind: 'glanced', id, glance: await host.glance(request) }, []);
        return;
      }
      const { scene, trialId } = request;
      const result =
        request.kind === 'run'
          ? await host.runTrial(scene, trialId, hooks)
          : await host.tryCure(scene, trialId, request.cure, hooks);
      end.postMessage({ kind: 'done', id, result }, transferables(result));
    } catch (error) {
      const { name, message } = error instanceof Error ? error : new Error(String(error));
      end.postMessage({ kind: 'failed', id, name, message }, []);
    } finally {
      underWay.delete(id);
    }
  }

  end.onmessage = ({ data }) => {
    if (data.kind === 'cancel') underWay.get(data.id)?.abort();
    else void answer(data);
  };
}
