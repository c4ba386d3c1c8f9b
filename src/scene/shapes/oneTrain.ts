import type { SceneTrack } from '../schema/trackSchema.ts';
import type { SceneLeg, SceneTrial } from '../schema/trialSchema.ts';
import { wayLengthMm, wayOf } from '../way.ts';
import type { ShapeScale } from './scales.ts';
import { drivenFor } from './shape.ts';

/** Share of its setting at which a train comes to where it is to stop, and from how far off, mm at 16.5 mm gauge. Common practice, no source. */
const creepShare = 0.4;
const creepFromMm = { up: 900, down: 1700 };

/** How long the knob is turned to come down to that, and to stop, s. Common practice, no source. */
const creepRampS = 1.5;
const stopRampS = 0.3;

/** A movement of a train that sets back between two: over these tracks, to stop when its leading end is here along them, mm; left out: it runs to the end. */
export interface Movement {
  readonly name: string;
  readonly route: readonly SceneLeg[];
  readonly stopMm?: number;
}

/** Trials that go on from each other, one for each movement: the train sets back in between, so that its ends lead by turns. The engine leads first. */
export function oneTrain(
  scale: ShapeScale,
  tracks: readonly SceneTrack[],
  { id, way, movements }: { readonly id: string; readonly way: 'up' | 'down'; readonly movements: readonly Movement[] },
): SceneTrial[] {
  const perGauge = scale.gaugeMm / 16.5;
  return movements.map(({ name, route, stopMm }, index): SceneTrial => {
    const { timeLimitS, orders } = drivenFor(scale, wayLengthMm(wayOf({ tracks }, { route: [...route] }) ?? []));
    return {
      id: `${id}-${index + 1}`,
      name,
      route: [...route],
      train: 'train',
      leading: index % 2 === 0 ? 'first' : 'last',
      ...(index > 0 && { follows: `${id}-${index}` }),
      ...(stopMm === undefined ? {} : { finishMm: Math.round(stopMm), stopS: stopRampS }),
      timeLimitS,
      orders:
        stopMm === undefined
          ? orders
          : [
              ...orders,
              {
                atMm: Math.round(stopMm - creepFromMm[way] * perGauge),
                setting: Math.round(100 * creepShare * orders[0].setting) / 100,
                rampS: creepRampS,
              },
            ],
    };
  });
}
