import { describe, expect, it } from 'vitest';
import { probeScene } from '../../../../src/sim/study/index.ts';
import { closersOf } from '../../../../src/sim/study/route/index.ts';
import {
  createInProcessRouteHost,
  createRouteWorkerHost,
  type RouteHost,
  type RouteSaid,
  type RouteTold,
  type RouteWorker,
  serveRoute,
} from '../../../../src/sim/study/route/routeHost.ts';
import { loopQuestion, loopScene, way } from './loop.ts';

/** A worker host whose worker is this same thread, behind a real message channel that clones. */
function behindChannel(): RouteHost & { dispose(): void } {
  return createRouteWorkerHost(() => {
    const { port1, port2 } = new MessageChannel();
    const tell = serveRoute((said: RouteSaid) => port2.postMessage(said));
    port2.onmessage = ({ data }: MessageEvent<RouteTold>) => tell(data);
    const worker: RouteWorker = {
      postMessage: (told) => port1.postMessage(told),
      onmessage: null,
      onerror: null,
      terminate() {
        port1.close();
        port2.close();
      },
    };
    port1.onmessage = (event: MessageEvent<RouteSaid>) => worker.onmessage?.(event);
    return worker;
  });
}

const limits = { ...loopQuestion().limits, verticalRadius: 8, steepest: 0.06 };
const question = loopQuestion({
  numbers: [{ at: `${way}/first/radiusMm`, from: 350, to: 450, step: 25 }],
  aim: 'front',
  trialIds: ['up'],
  heights: { held: [] },
  limits,
});

describe('a search behind a worker', { timeout: 120_000 }, () => {
  it('gives what the same search gives in this thread, its trials run on this side, with progress that grows to 1', async () => {
    const host = behindChannel();
    const shares: number[] = [];
    let found = 0;
    let probed = 0;
    const answer = await host.route(
      question,
      (request) => {
        probed++;
        return probeScene(request);
      },
      { width: 2, onProgress: (done, known) => shares.push(done / known), onFound: () => found++ },
    );
    expect(answer).toEqual(await createInProcessRouteHost().route(question, probeScene));
    expect(answer.routes.length).toBeGreaterThan(0);
    expect(probed).toBeGreaterThan(answer.routes.length);
    expect(found).toBeGreaterThan(0);
    expect(shares.at(-1)).toBe(1);
  });

  it('keeps what is done when it is stopped, and a route kept from it is then rounded as a builder sets it', async () => {
    const host = behindChannel();
    const stop = new AbortController();
    const answer = await host.route(question, probeScene, {
      signal: stop.signal,
      onProgress: (done) => {
        if (done === 2) stop.abort();
      },
    });
    expect(answer.whole).toBe(false);
    expect(answer.certainty).toBe('best-found');
    expect(answer.routes.length).toBeGreaterThan(0);
    expect(answer.probes).toBeLessThan(5);
    const [route] = answer.routes;
    expect(route.rounded).toBe(false);
    expect(route.margin).toBeNull();
    const laid = await host.lay(question, route.values);
    expect(laid.rounded).toBe(true);
    expect(laid.misses).toEqual([]);
    // Curves begin and end at whole millimetres.
    for (const { chainage, curve } of laid.points ?? []) {
      if (curve === undefined || !('length' in curve)) continue;
      expect(
        Math.abs((chainage - curve.length / 2) * 1e3 - Math.round((chainage - curve.length / 2) * 1e3)),
      ).toBeLessThan(1e-6);
    }
  });

  it('tells in words what is wrong with a question, or with its trials', async () => {
    const host = behindChannel();
    await expect(host.route({ ...question, probes: 0 }, probeScene)).rejects.toThrow(RangeError);
    await expect(host.route(question, () => Promise.reject(new Error('no more memory')))).rejects.toThrow(
      'no more memory',
    );
    await expect(host.lay(question, [5000])).rejects.toThrow(RangeError);
  });

  it('ends when it is disposed of', async () => {
    const host = behindChannel();
    const running = host.route(question, probeScene);
    host.dispose();
    await expect(running).rejects.toMatchObject({ name: 'AbortError' });
  });
});

describe('numbers that keep the end', () => {
  it('are the two straights that lie most across each other, and an angle where one is chosen', () => {
    const straights = [`${way}/in/lengthMm`, `${way}/up/lengthMm`];
    expect(closersOf(loopScene(), 'line', [`${way}/first/radiusMm`])).toEqual(straights);
    // What is chosen is not worked out.
    expect(closersOf(loopScene(), 'line', straights.slice(0, 1))).toEqual([
      `${way}/up/lengthMm`,
      `${way}/out/lengthMm`,
    ]);
    expect(closersOf(loopScene(), 'line', [`${way}/first/angleDeg`])).toEqual([...straights, `${way}/second/angleDeg`]);
    expect(() => closersOf(loopScene(), 'line', [`${way}/up/lengthMm`])).toThrow(/two straights that lie across/);
  });
});
