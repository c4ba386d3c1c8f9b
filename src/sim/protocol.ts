import type { Cure } from '../core/findings/types.ts';
import type { Scene } from '../scene/index.ts';
import type { Glance, GlanceRequest } from './glance/types.ts';
import type { Probe, ProbeRequest } from './study/types.ts';
import type { TrialResult } from './types.ts';

/** What a client asks of a worker. `id` is the client's own and names the answers to come. */
export type SimRequest =
  | { readonly kind: 'run'; readonly id: number; readonly scene: Scene; readonly trialId: string }
  | {
      readonly kind: 'try-cure';
      readonly id: number;
      readonly scene: Scene;
      readonly trialId: string;
      readonly cure: Cure;
    }
  | ({ readonly kind: 'probe'; readonly id: number } & ProbeRequest)
  | ({ readonly kind: 'glance'; readonly id: number } & GlanceRequest)
  | { readonly kind: 'cancel'; readonly id: number };

/** What a worker answers: any number of `progress`, then exactly one `done`, `probed`, `glanced` or `failed`. */
export type SimReply =
  | { readonly kind: 'progress'; readonly id: number; readonly done: number }
  | { readonly kind: 'done'; readonly id: number; readonly result: TrialResult | null }
  | { readonly kind: 'probed'; readonly id: number; readonly probe: Probe }
  | { readonly kind: 'glanced'; readonly id: number; readonly glance: Glance }
  | { readonly kind: 'failed'; readonly id: number; readonly name: string; readonly message: string };

/** The end of a message channel that speaks this protocol: a Worker, a worker's own scope, or a MessagePort. */
export interface MessageEnd<Out, In> {
  postMessage(message: Out, transfer: Transferable[]): void;
  onmessage: ((event: MessageEvent<In>) => void) | null;
}

/** The buffers of a result, so that they move to the other side instead of being copied. */
export function transferables(result: TrialResult | null): ArrayBuffer[] {
  if (result === null) return [];
  const buffers = new Set<ArrayBuffer>();
  for (const holder of [result.run, ...result.risks]) {
    for (const value of Object.values(holder) as unknown[]) {
      if (ArrayBuffer.isView(value) && value.buffer instanceof ArrayBuffer) buffers.add(value.buffer);
    }
  }
  return [...buffers];
}
