import type { Path } from '../../../core/dynamics/types.ts';
import type { RiskId, RiskSeries } from '../../../core/risks/types.ts';
import { trackChainage } from '../frame/motion.ts';

const known = new WeakMap<RiskSeries, Float64Array[]>();

/** Track chainages of a series' samples, one array of frames a subject, m. Worked out once a series. */
export function seriesPlaces(series: RiskSeries, path: Path): Float64Array[] {
  const before = known.get(series);
  if (before) return before;
  const { subjects, chainages } = series;
  const frames = subjects > 0 ? chainages.length / subjects : 0;
  const places = Array.from({ length: subjects }, (_, subject) => {
    const one = new Float64Array(frames);
    for (let f = 0; f < frames; f++) one[f] = trackChainage(path, chainages[f * subjects + subject]);
    return one;
  });
  known.set(series, places);
  return places;
}

const empty = new Map<RiskId, RiskSeries>();

/** What a risk's row shows before there is a run: nothing. The same object every time. */
export function emptySeries(risk: RiskId): RiskSeries {
  const before = empty.get(risk);
  if (before) return before;
  const series: RiskSeries = {
    risk,
    subjects: 0,
    margins: new Float64Array(0),
    chainages: new Float64Array(0),
    worst: null,
  };
  empty.set(risk, series);
  return series;
}
