import { showAmount } from '../../core/findings/index.ts';
import { formatGrade, formatLength, formatNumber } from '../../core/units/index.ts';
import type { Scene } from '../../scene/index.ts';
import type { Advice, AdviceEdit, TooLong } from '../../sim/advice/index.ts';
import type { SessionState } from '../types.ts';
import { placeWords, radiusText } from '../words.ts';

type Show = Pick<SessionState, 'lengthUnit' | 'gradeForm'>;

/** An advice as it is told: what there is, in numbers, and why it matters. */
export interface AdviceWords {
  readonly what: string;
  readonly where: string;
  readonly why: string;
  /** What its edit does, in words for a button; null when there is none. */
  readonly answer: string | null;
}

/** An advice in words. */
export function adviceWords(advice: Advice, scene: Scene, show: Show): AdviceWords {
  const name = (trackId: string): string => scene.tracks.find(({ id }) => id === trackId)?.name ?? trackId;
  const several = scene.tracks.length > 1;
  const at = placeWords(advice.chainage, show);
  const { what, why } = told(advice, name, show);
  return {
    what: what.charAt(0).toUpperCase() + what.slice(1),
    why,
    where: several ? `${name(advice.trackId)}, ${at}` : at,
    answer: advice.edit === null ? null : editWords(advice.edit, show),
  };
}

const small = (metres: number, show: Show): string => showAmount(metres, 'length', show);
const angle = (rad: number): string => showAmount(rad, 'angle', { lengthUnit: 'mm', gradeForm: 'percent' });
const grade = (ratio: number, { gradeForm }: Show): string => formatGrade(Math.abs(ratio), { form: gradeForm });
const length = (metres: number, { lengthUnit }: Show): string =>
  lengthUnit === 'mm' ? formatLength(metres, { digits: 0 }) : formatLength(metres, { unit: 'in', fraction: 8 });

function told(advice: Advice, name: (trackId: string) => string, show: Show): Pick<AdviceWords, 'what' | 'why'> {
  switch (advice.kind) {
    case 'helix-grades': {
      const gentlest = advice.tracks.reduce((least, one) => (one.grade < least.grade ? one : least));
      return {
        what: `${grade(advice.value, show)} here, ${grade(advice.limit, show)} on ${name(gentlest.trackId)} round the same helix`,
        why: `For the same rise the way round ${radiusText(least(advice.tracks), show)} is shorter: run the heavy trains up the outer track.`,
      };
    }
    case 'headroom':
      return {
        what: `${small(advice.value, show)} to the deck of ${advice.over === advice.trackId ? 'the next turn' : name(advice.over)}; ${advice.vehicle} is ${small(advice.limit, show)} tall`,
        why:
          advice.value < advice.limit
            ? 'The tallest vehicle strikes the deck.'
            : advice.value < advice.norm
              ? `It passes, but under the norm’s ${small(advice.norm, show)} a hand or a taller vehicle may not.`
              : 'The tightest place of all turns.',
      };
    case 'longest-vehicle':
      return longestWords(advice, show);
    case 'reverse-curve': {
      const { buffers, swing } = advice;
      const pair = advice.pair[0] === advice.pair[1] ? `two of ${advice.pair[0]}` : advice.pair.join(' and ');
      const between =
        advice.value > 0
          ? `${length(advice.value, show)} between a curve and its reverse`
          : 'a curve turns into its reverse';
      const lost = buffers !== null && buffers.aside > buffers.overlap;
      return {
        what: lost
          ? `${between}: buffers of ${pair} stand ${small(buffers.aside, show)} aside, ${small(buffers.overlap, show)} wide`
          : swing.value > swing.limit
            ? `${between}: couplings of ${pair} swing ${angle(swing.value)} of ${angle(swing.limit)}`
            : `${between}; the longest vehicle is ${length(advice.limit, show)}`,
        why:
          advice.weight === 'wrong'
            ? lost
              ? 'Pushed, the heads slip behind each other and lock.'
              : 'The couplings come to their stops and press the ends off the rails.'
            : 'Nothing locks yet; the norm wants easements or a straight as long as the longest vehicle.',
      };
    }
    case 'bent-turnout':
      return {
        what: `the turnout to ${name(advice.branch)} lies on a vertical curve, ${small(advice.value, show)} off flat`,
        why: 'A turnout is made flat: bent, its blades gape and its crossing lifts wheels.',
      };
    case 'grade-break':
      return {
        what: `${grade(advice.before, show)} to ${grade(advice.after, show)} at once; heads of ${advice.vehicle} part by ${small(advice.value, show)}`,
        why: `Half of what holds them is ${small(advice.limit, show)}; a vertical curve spreads the step over several vehicles.`,
      };
    case 'fouling-point':
      return foulingWords(advice, name, show);
    case 'missing-easement':
      return {
        what: `no easement into ${radiusText(advice.radius, show)}; the norm gives ${length(advice.limit, show)}`,
        why: `The ends of the longest vehicle are thrown ${small(advice.aside, show)} aside at once.`,
      };
  }
}

const least = (tracks: readonly { readonly radius: number }[]): number =>
  Math.min(...tracks.map(({ radius }) => radius));

function longestWords(
  { radius, vehicle, value, tooLong, radiusForAll, throws }: Extract<Advice, { kind: 'longest-vehicle' }>,
  show: Show,
): Pick<AdviceWords, 'what' | 'why'> {
  const round = radiusText(radius, show);
  const [worst] = tooLong;
  if (worst === undefined) {
    return {
      what: `all of the collection goes round ${round}; the longest is ${vehicle ?? ''}, ${length(value, show)}`,
      why:
        throws === null
          ? 'The tightest curve of this track.'
          : `Its ends swing ${small(throws[0], show)} out and its middle ${small(throws[1], show)} in: keep that clear beside the track.`,
    };
  }
  const others = tooLong.length - 1;
  const more = others === 0 ? '' : others === 1 ? ' and one more' : ` and ${formatNumber(others, { digits: 0 })} more`;
  const goes = vehicle === null ? 'none goes' : `the longest that goes is ${vehicle}, ${length(value, show)}`;
  const all = Number.isFinite(radiusForAll) ? ` All go round ${radiusText(radiusForAll, show)}.` : '';
  return { what: `${worst.vehicle}${more} too long for ${round}; ${goes}`, why: `${tooLongWords(worst)}${all}` };
}

function foulingWords(
  { stands, limit }: Extract<Advice, { kind: 'fouling-point' }>,
  name: (trackId: string) => string,
  show: Show,
): Pick<AdviceWords, 'what' | 'why'> {
  const places = (key: 'clear' | 'hit'): string[] =>
    stands.flatMap((one) => {
      const at = one[key];
      return at === null ? [] : [`${placeWords(at, show)} of ${name(one.trackId)}`];
    });
  const [clear, touching] = [places('clear'), places('hit')];
  const norm = `By the norm, ${small(limit, show)} between parallel tracks, with the throw of your vehicles`;
  return {
    what:
      clear.length === 0
        ? 'nothing stands clear of this turnout by the norm'
        : `stands clear from ${clear.join(' and from ')}`,
    why:
      touching.length === 0
        ? `${norm}. Bodies touch wherever something stands.`
        : `${norm}; bodies just miss from ${touching.join(' and from ')}, always away from the turnout.`,
  };
}

function tooLongWords({ vehicle, why, value, limit }: TooLong): string {
  switch (why) {
    case 'swing':
      return `Coupled, the shanks of ${vehicle} swing ${angle(value)} of ${angle(limit)}.`;
    case 'wheelbase':
      return `The rigid wheelbase of ${vehicle} meets the rail at ${angle(value)}; the norm lets it ${angle(limit)}.`;
    case 'width':
      return `${vehicle} is longer between its bogies than the curve is wide.`;
  }
}

function editWords(edit: AdviceEdit, show: Show): string {
  switch (edit.kind) {
    case 'ease':
      return edit.joins.length === 1
        ? `Ease over ${length(edit.joins[0].lengthMm / 1000, show)}`
        : `Ease both curves over ${length(edit.joins[0].lengthMm / 1000, show)}`;
    case 'straight-between':
      return `Put ${length(edit.lengthMm / 1000, show)} of straight between`;
    case 'radius':
      return `Widen to ${radiusText(edit.radiusMm / 1000, show)}`;
    case 'vertical-curve':
      return `Vertical curve of ${length(edit.lengthMm / 1000, show)}`;
    case 'grade-point':
      return `Move the grade point to ${placeWords(edit.atMm / 1000, show)}`;
  }
}
