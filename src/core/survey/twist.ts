import { atan, tan } from '../math/index.ts';
import { plannedCant, railCentres } from '../track/index.ts';
import { acrossBelief, type LeanReading } from './acrossBelief.ts';
import { normalQuantile } from './distributions.ts';
import { chainageOf } from './rows.ts';
import type { CrossLevel, SurveyInput, Twist, TwistEstimate } from './types.ts';

/**
 * Longest frame without bogies, in gauges: 100 mm on 16.5 mm gauge. Assumption; a shorter one stands more of a twist.
 */
const frameInGauges = 6;

/** Play that such a frame takes up across the rails, in gauges: 0.5 mm on 16.5 mm gauge, as where trains are run. */
const playInGauges = 0.5 / 16.5;

/** Cross-level is the angle of the deck, so the twist that a frame stands is a slope per length: 1 in 198 over any distance. */
export const twistLimit = playInGauges / frameInGauges;

/** Chance that one place or one twist of all is called wrong when none is. */
const falseAlarm = 0.01;

/** Two readings nearer than this are of one place, m: the width of a hand. */
const samePlace = 0.02;

/**
 * How the deck lies across, place by place, against the plan's cant, and how it twists from one place to the next. Heights are of
 * the right rail over the left one, at the middles of the rail heads, m. Null where no cross-level was read. Throws RangeError, naming the reading,
 * for one without a place on the line or without an instrument.
 */
export function twistEstimate({ cross, supports, track, instruments, setting }: SurveyInput): TwistEstimate | null {
  if (cross === undefined || cross.readings.length === 0) return null;
  const apart = railCentres(cross.gauge);
  const read = cross.readings.map(({ name, at, instrument: id, slope }) => {
    const chainage = chainageOf(at, supports);
    const instrument = instruments.find((one) => one.id === id);
    if (chainage === undefined || !Number.isFinite(chainage)) {
      throw new RangeError(`${name}: its place is not on this track, which has ${supports.length} supports`);
    }
    if (instrument === undefined) throw new RangeError(`${name}: there is no instrument “${id}”`);
    const variance = instrument.deviation * instrument.deviation + (instrument.step * instrument.step) / 12;
    if (!(variance > 0 && Number.isFinite(slope))) throw new RangeError(`${name}: it needs a number and an error`);
    const support = 'support' in at ? at.support : null;
    return { chainage, support, slope, variance, instrument };
  });
  read.sort((a, b) => a.chainage - b.chainage);
  const quantile = normalQuantile(falseAlarm / 2 / read.length);
  // Both sides of a deck are set apart from each other, each as closely as any support.
  const set = 2 * setting * setting;
  const places: (CrossLevel & { readonly variance: number })[] = [];
  const leans: LeanReading[][] = [];
  const zeros = [...new Set(read.map(({ instrument }) => instrument))].filter(({ zero }) => zero > 0);
  for (let first = 0; first < read.length; ) {
    const here = read.slice(first).filter(({ chainage }) => chainage - read[first].chainage < samePlace);
    first += here.length;
    const weight = here.reduce((sum, { variance }) => sum + 1 / variance, 0);
    const slope = here.reduce((sum, one) => sum + one.slope / one.variance, 0) / weight;
    const {
      chainage,
      instrument: { zero },
    } = here[0];
    const support = here.find((one) => one.support !== null)?.support ?? null;
    const cant = plannedCant(track, chainage);
    const planned = tan(cant);
    const leaning = (read: number): number => tan(atan(read) - cant);
    leans.push(
      here.map(({ slope: one, variance, instrument }) => ({
        lean: leaning(one),
        variance,
        zero: zeros.indexOf(instrument),
      })),
    );
    const departure = leaning(slope) * apart;
    const deviation = Math.sqrt(1 / weight + zero * zero) * apart;
    const wrong = Math.abs(departure) > quantile * Math.sqrt(deviation * deviation + set);
    places.push({
      chainage,
      support,
      level: slope * apart,
      planned: planned * apart,
      departure,
      deviation,
      wrong,
      variance: (apart * apart) / weight,
    });
  }
  const twists = places.slice(1).map((to, i): Twist => {
    const from = places[i];
    const over = to.chainage - from.chainage;
    const twist = to.level - from.level;
    // The instrument's zero is in both.
    const deviation = Math.sqrt(from.variance + to.variance);
    const limit = twistLimit * over;
    const past = Math.abs(twist) - limit;
    const verdict =
      past <= 0 ? 'within' : past > normalQuantile(falseAlarm / read.length) * deviation ? 'past' : 'doubtful';
    return { from: i, to: i + 1, over, twist, deviation, limit, verdict };
  });
  const belief = acrossBelief(
    leans,
    places.map(({ wrong }) => (wrong ? Number.POSITIVE_INFINITY : set / (apart * apart))),
    zeros.map(({ zero }) => zero * zero),
  );
  return { gauge: cross.gauge, belief, places: places.map(({ variance: _variance, ...place }) => place), twists };
}
