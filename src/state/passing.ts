/**
 * The moment (s) at which `places` (by frame, m) passes `place`: of several, the one nearest to `near`. A place never reached
 * gives the moment that comes closest to it.
 */
export function timeAtPlace(time: Float64Array, places: Float64Array, place: number, near: number): number {
  let best = time[0] ?? 0;
  let miss = Number.POSITIVE_INFINITY;
  let away = Number.POSITIVE_INFINITY;
  for (let f = 0; f < places.length; f++) {
    const here = places[f];
    const next = f + 1 < places.length ? places[f + 1] : here;
    const passes = (here - place) * (next - place) <= 0;
    const share = next === here ? 0 : (place - here) / (next - here);
    // A frame that stands on the place counts as passing it for as long as it stands there.
    const from = passes && here !== next ? time[f] + share * (time[f + 1] - time[f]) : time[f];
    const missHere = passes ? 0 : Math.abs(here - place);
    const awayHere = Math.abs(from - near);
    if (missHere < miss || (missHere === miss && awayHere < away)) {
      best = from;
      miss = missHere;
      away = awayHere;
    }
  }
  return best;
}
