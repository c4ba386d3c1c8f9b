import { MessageChannel } from 'node:worker_threads';
import { describe, expect, it, vi } from 'vitest';
import { run } from '../../src/core/dynamics/index.ts';
import {
  compileScene,
  compileTrial,
  createInProcessHost,
  createWorkerHost,
  type SimHost,
  type SimWorker,
  serveRequests,
  transferables,
} from '../../src/sim/index.ts';
import { sampleScene } from '../scene/sample.ts';

/** A worker host whose worker is this same thread, behind a real message channel that clones and transfers. */
function hostBehindChannel(): SimHost {
  const { port1, port2 } = new MessageChannel();
  serveRequests(port2 as unknown as Parameters<typeof serveRequests>[0]);
  return createWorkerHost(port1 as unknown as SimWorker);
}

const hosts: readonly (readonly [string, () => SimHost])[] = [
  ['in this thread', createInProcessHost],
  ['behind a worker', hostBehindChannel],
];

describe.each(hosts)('a host %s', (_where, create) => {
  it('solves a trial bit for bit as the solver does, judged, with progress that grows to 1', async () => {
    const host = create();
    const seen: number[] = [];
    const result = await host.runTrial(sampleScene(), 'up', { onProgress: (done) => seen.push(done) });
    const trial = compileTrial(compileScene(sampleScene()), 'up');
    const { path, train, script, options } = trial;
    expect(result.trialId).toBe('up');
    expect(result.run).toEqual(run({ path, train, script, options }));
    expect(result.run.outcome).toBe('arrived');
    expect(result.risks.length).toBeGreaterThan(3);
    expect(result.findings.length).toBeGreaterThan(3);
    expect(seen[seen.length - 1]).toBe(1);
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
    host.dispose();
  });

  it('tries a cure, and says null where it does not apply', async () => {
    const host = create();
    const pushed = await host.tryCure(sampleScene(), 'up', { kind: 'change-working' });
    expect(pushed?.run.locomotives).toEqual(Int32Array.of(2));
    expect(await host.tryCure(sampleScene(), 'up', { kind: 'match-heads', joint: 0 })).toBeNull();
    host.dispose();
  });

  it('can be cancelled before and while it runs', async () => {
    const host = create();
    await expect(host.runTrial(sampleScene(), 'up', { signal: AbortSignal.abort() })).rejects.toMatchObject({
      name: 'AbortError',
    });
    const controller = new AbortController();
    const running = host.runTrial(sampleScene(), 'up', {
      signal: controller.signal,
      onProgress: () => controller.abort(),
    });
    await expect(running).rejects.toMatchObject({ name: 'AbortError' });
    host.dispose();
  });

  it('goes on working after a cancel', async () => {
    const host = create();
    const controller = new AbortController();
    const first = host.runTrial(sampleScene(), 'up', { signal: controller.signal });
    const second = host.runTrial(sampleScene(), 'up');
    controller.abort();
    await expect(first).rejects.toMatchObject({ name: 'AbortError' });
    expect((await second).run.outcome).toBe('arrived');
    host.dispose();
  });

  it('says in words why a trial cannot run', async () => {
    const host = create();
    await expect(host.runTrial(sampleScene(), 'down')).rejects.toThrow(
      new RangeError('The scene has no trial "down"; it has "up".'),
    );
    host.dispose();
  });

  it('calls off what is under way when it is disposed of, and takes nothing more', async () => {
    const host = create();
    const running = host.runTrial(sampleScene(), 'up');
    host.dispose();
    await expect(running).rejects.toMatchObject({ name: 'AbortError' });
    await expect(host.runTrial(sampleScene(), 'up')).rejects.toMatchObject({ name: 'AbortError' });
  });
});

describe('a worker host', () => {
  it('moves the buffers of a result and copies none', async () => {
    const host = createInProcessHost();
    const result = await host.runTrial(sampleScene(), 'up');
    const buffers = transferables(result);
    expect(buffers).toContain(result.run.chainage.buffer);
    expect(buffers).toContain(result.risks[0].margins.buffer);
    expect(new Set(buffers).size).toBe(buffers.length);
    structuredClone(result, { transfer: buffers });
    expect(result.run.chainage).toHaveLength(0);
    expect(transferables(null)).toEqual([]);
  });

  it('fails everything it waits for when the worker breaks down', async () => {
    const worker: SimWorker = { postMessage: vi.fn(), onmessage: null, onerror: null };
    const host = createWorkerHost(worker);
    const running = host.runTrial(sampleScene(), 'up');
    worker.onerror?.({ message: 'no memory' } as ErrorEvent);
    await expect(running).rejects.toThrow('no memory');
    await expect(host.runTrial(sampleScene(), 'up')).rejects.toThrow('no memory');
  });

  it('passes over an answer that nobody waits for', async () => {
    const worker: SimWorker = { postMessage: vi.fn(), onmessage: null };
    createWorkerHost(worker);
    worker.onmessage?.({ data: { kind: 'done', id: 99, result: null } } as MessageEvent);
    worker.onmessage?.({ data: { kind: 'progress', id: 99, done: 1 } } as MessageEvent);
    expect(worker.postMessage).not.toHaveBeenCalled();
  });
});
