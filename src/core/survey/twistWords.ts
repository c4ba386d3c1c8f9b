import { railCentres } from '../track/index.ts';
import { formatLength, type LengthUnit } from '../units/index.ts';
import type { CrossLevel, TwistEstimate } from './types.ts';

/** What the cross-levels say, the worst first: twists past the limit, places that lie otherwise than planned, and what to lift there. */
export function twistWords(
  { gauge, places, twists }: TwistEstimate,
  show: { readonly lengthUnit: LengthUnit },
): string[] {
  const mm = (value: number, digits = 2): string =>
    formatLength(value, show.lengthUnit === 'mm' ? { unit: 'mm', digits } : { unit: 'in', digits: digits + 1 });
  const at = ({ support, chainage }: CrossLevel): string =>
    support === null ? formatLength(chainage, { unit: 'm', digits: 2 }) : `support ${support + 1}`;
  const past = twists
    .filter(({ verdict }) => verdict !== 'within')
    .sort((a, b) => Math.abs(b.twist) / b.limit - Math.abs(a.twist) / a.limit)
    .map(({ from, to, over, twist, deviation, limit, verdict }) => {
      const doubt = verdict === 'doubtful' ? ' These readings do not prove it: read both again.' : '';
      return `Between ${at(places[from])} and ${at(places[to])} the track is twisted by ${mm(Math.abs(twist))} ± ${mm(deviation)} over ${mm(over, 0)}; limit ${mm(limit)}.${doubt}`;
    });
  const wrong = places
    .filter((place) => place.wrong)
    .map((place) => {
      const { departure, deviation } = place;
      const [low, high] = departure > 0 ? ['left', 'right'] : ['right', 'left'];
      const size = mm(Math.abs(departure));
      return `At ${at(place)} the ${high} rail stands ${size} ± ${mm(deviation)} too high against the ${low} one. Lift the ${low} side by ${mm(Math.abs(departure) / 2)} and let the ${high} side down by as much: the middle then stays at its height.`;
    });
  const wide =
    wrong.length === 0
      ? []
      : [
          `These are at the rails, ${mm(railCentres(gauge), 1)} apart. Nuts or packing that stand wider apart move more, in the same proportion.`,
        ];
  const said = [...past, ...wrong, ...wide];
  if (said.length > 0) return said;
  const count = places.length === 1 ? 'At the one place' : `At all ${places.length} places`;
  return [`${count} the deck lies across as planned, as far as these readings show.`];
}
