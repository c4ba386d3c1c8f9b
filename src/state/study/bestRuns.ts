import type { BestHost } from '../../sim/study/bestHost.ts';
import type { StudyBench } from './bench.ts';
import type { ProfileAsk } from './types.ts';

/** Looks for the heights with the least ruling grade on the plan of the track on show, its ends as they are. */
export async function runBestProfile(bench: StudyBench, host: BestHost, ask: ProfileAsk): Promise<void> {
  const { study, session } = bench;
  const scene = bench.base();
  const trackId = session.session.getState().trial?.trackId;
  if (scene === null || trackId === undefined) return;
  const signal = bench.begin();
  study.setState({ best: { ask, base: study.getState().base, trackId, present: Number.NaN, found: null } });
  await bench.told(async () => {
    const { present, found } = await host.profile(
      {
        scene,
        trackId,
        verticalRadius: ask.verticalRadiusMm / 1e3,
        steepest: ask.steepestPercent / 100,
      },
      signal,
    );
    study.setState(({ best }) => ({ best: best && { ...best, present, found } }));
  });
  study.setState(({ best }) => ({ best: best?.found == null ? null : best }));
}
