import type { Show } from '../../core/findings/index.ts';
import type { Scene } from '../../scene/index.ts';
import { compileScene } from '../compileScene.ts';
import type { SimHost } from '../types.ts';
import { assumptions } from './assumptions.ts';
import { helixCards, pageTracks } from './pageTracks.ts';
import { type PageHooks, pageTrials } from './pageTrials.ts';
import { tonnage } from './tonnage.ts';
import type { ClubPage } from './types.ts';

export interface PageWish {
  readonly show: Show;
  /** Whether the greatest loads are worked out too: the longest part of it. */
  readonly loads: boolean;
}

/** Share of the work that is the trials, where loads follow. */
const trialsShare = 0.3;

/**
 * Works out all that the page to pass on says of a railway: every train both ways, pulled and propelled, the bad places, cards and ratings. The scene's variants and
 * surveys are left alone. Rejects with an AbortError when called off during the trials; during the loads, those that are done stay.
 */
export async function gatherPage(
  scene: Scene,
  { show, loads }: PageWish,
  host: SimHost,
  hooks: PageHooks = {},
): Promise<ClubPage> {
  const part = (from: number, to: number): PageHooks => ({
    ...hooks,
    onProgress: (done) => hooks.onProgress?.(from + (to - from) * done),
  });
  const compiled = compileScene(scene);
  const { scene: all, ...told } = await pageTrials(scene, show, host, part(0, loads ? trialsShare : 1));
  const rating = loads ? await tonnage(all, host, part(trialsShare, 1)) : null;
  return {
    scene,
    show,
    ...told,
    tracks: pageTracks(compiled),
    helices: helixCards(compiled),
    tonnage: rating,
    assumptions: assumptions(scene),
    whole: hooks.signal?.aborted !== true,
  };
}
