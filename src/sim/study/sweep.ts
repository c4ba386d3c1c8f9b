import type { Line } from '../../core/study/index.ts';
import { type Area, mapArea, type StudyHooks, sweepLine } from '../../core/study/index.ts';
import type { Address, Scene } from '../../scene/index.ts';
import { type Gauge, passesBy } from './gauges.ts';
import type { MeasureLimit } from './measure/index.ts';
import type { Exactness, Probe, ProbeRequest } from './types.ts';

/** A number of the scene swept over a range, in the unit of its field. */
export interface SweptQuantity {
  readonly at: Address;
  readonly from: number;
  readonly to: number;
  readonly points: number;
}

export interface SweepSpec {
  readonly trialIds: readonly string[];
  readonly gauge: Gauge;
  /** Limits of measures that count too. */
  readonly limits?: readonly MeasureLimit[];
  readonly exactness: Exactness;
}

/** Asks something that runs trials (this thread, a worker, several workers) for one probe. */
export type ProbeBy = (request: ProbeRequest) => Promise<Probe>;

/**
 * Sweeps one number of a scene and pins every edge between passing and failing down to `edgeWithin`, in the unit of the field. A
 * number that is whole by nature (vehicles) is only ever probed at whole values.
 */
export function sweepScene(
  scene: Scene,
  quantity: SweptQuantity & { readonly edgeWithin: number; readonly whole?: boolean },
  spec: SweepSpec,
  probe: ProbeBy,
  hooks: StudyHooks = {},
): Promise<Line<Probe>> {
  const ask = (to: number) => probe(requestOf(scene, [{ at: quantity.at, to }], spec));
  if (quantity.whole !== true) return sweepLine(quantity, ask, passesBy(spec.gauge, spec.limits), hooks);
  const points = Math.abs(quantity.to - quantity.from) + 1;
  return sweepLine({ ...quantity, points, edgeWithin: 1 }, ask, passesBy(spec.gauge, spec.limits), hooks);
}

/** Maps two numbers of a scene and outlines what passes; see `mapArea`. */
export function mapScene(
  scene: Scene,
  across: SweptQuantity,
  up: SweptQuantity,
  refine: number,
  spec: SweepSpec,
  probe: ProbeBy,
  hooks: StudyHooks = {},
): Promise<Area<Probe>> {
  return mapArea(
    { across, up, refine },
    (x, y) =>
      probe(
        requestOf(
          scene,
          [
            { at: across.at, to: x },
            { at: up.at, to: y },
          ],
          spec,
        ),
      ),
    passesBy(spec.gauge, spec.limits),
    hooks,
  );
}

const requestOf = (scene: Scene, settings: ProbeRequest['settings'], spec: SweepSpec): ProbeRequest => ({
  scene,
  settings,
  trialIds: spec.trialIds,
  exactness: spec.exactness,
});
