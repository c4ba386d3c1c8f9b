import { formatGrade, formatLength, formatNumber } from '../units/index.ts';
import type { Limits, Mend, MendTask, ShimStep } from './types.ts';
import { type SurveyShow, supportList } from './words.ts';

/** What is to be done, in words. */
export interface MendWords {
  readonly headline: string;
  /** One line for each step of the work, in order. */
  readonly steps: readonly string[];
  /** Why in that order, how sure it is, and what remains to be done. */
  readonly notes: readonly string[];
}

export function describeMend(mend: Mend, task: MendTask, show: SurveyShow): MendWords {
  switch (mend.outcome) {
    case 'nothing-to-mend': {
      const broken = mend.checks.filter(({ holds }) => !holds);
      const chance = `The line as built keeps all limits with a probability of ${percent(mend.probability)}.`;
      if (mend.reason === 'within-limits') {
        return { headline: 'Nothing to mend: what is off keeps every limit.', steps: [], notes: [chance] };
      }
      const plan = broken.map(
        ({ limit, value, bound }) =>
          `The plan itself breaks a limit: ${limitWords[limit]} comes to ${amount(limit, value, show)}, allowed ${amount(limit, bound, show)}.`,
      );
      return { headline: 'No shim is advised: no support is shown to be off.', steps: [], notes: [...plan, chance] };
    }
    case 'mended': {
      const { steps, proof, others } = mend;
      const touched = steps.map(({ support }) => support).sort((a, b) => a - b);
      const doing = task.adjuster.kind === 'nut' ? 'Turn the nuts of' : 'Pack';
      const around = others
        ? ['The supports that are off cannot be moved enough, so others are set to suit them.']
        : [];
      return {
        headline: `${doing} ${supportList(touched)}.`,
        steps: steps.map((step) => stepWords(step, task, show)),
        notes: [
          ...around,
          ...(steps.length > 1
            ? [
                'From the lowest rail up: each is checked against those below it that are already right, and nothing done later disturbs it.',
              ]
            : []),
          proofWords(proof, mend.objective, show),
          `All limits are then kept with a probability of ${percent(mend.probabilityAfter)}, before the work ${percent(mend.probabilityBefore)}.`,
        ],
      };
    }
    case 'impossible': {
      const ways = mend.conflicts.map(
        ({ limit, needed, bound, place }) =>
          `${capital(limitWords[limit])} would have to be ${amount(limit, easedLimit(limit, needed), show)} instead of ${amount(limit, bound, show)} (at ${metres(place.chainage)}).`,
      );
      const choice = ways.length < 2 ? [] : [mend.together ? togetherWords : 'Easing any one of these is enough:'];
      const unlock =
        mend.unlock.length === 0 ? [] : [`It could be done if ${supportList(mend.unlock)} could be touched.`];
      const kinds = [...new Set(mend.irreducible.map(({ limit }) => limitWords[limit]))];
      const clash =
        kinds.length === 0
          ? []
          : [`What cannot be kept together: ${kinds.join(', ')}, at ${placesWords(mend.irreducible)}.`];
      return {
        headline: 'The limits cannot all be kept.',
        steps: [],
        notes: [...clash, ...choice, ...ways, ...unlock],
      };
    }
  }
}

const togetherWords = 'No limit alone can be eased enough. All of these together would do:';

/** Steps to which a limit that has to give way is told: 0.01 % of grade, a tenth of a metre of radius, a hundredth of a millimetre. */
const easedStep: Readonly<Record<keyof Limits, number>> = {
  greatestGrade: 1e-4,
  leastGrade: 1e-4,
  greatestKink: 1e-4,
  leastRadius: 0.1,
  headroom: 1e-5,
  largestRise: 1e-5,
  largestDrop: 1e-5,
};

/** What a limit would have to become, rounded so that it can be kept: a least value down, a greatest one up; its own unit. */
export function easedLimit(limit: keyof Limits, needed: number): number {
  const step = easedStep[limit];
  const least = limit === 'leastGrade' || limit === 'leastRadius' || limit === 'headroom';
  // What the solver leaves of a whole step is its own rounding.
  const parts = needed / step;
  const whole = least ? Math.floor(parts + easedRounding) : Math.ceil(parts - easedRounding);
  return whole * step;
}

const easedRounding = 1e-3;

export const limitWords: Readonly<Record<keyof Limits, string>> = {
  greatestGrade: 'the greatest grade',
  leastGrade: 'the least grade',
  greatestKink: 'the change of grade at a support',
  leastRadius: 'the least vertical radius',
  headroom: 'the headroom',
  largestRise: 'the most a support is raised',
  largestDrop: 'the most a support is lowered',
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A probability from draws: never told as certain. */
function percent(share: number): string {
  if (share > 0.99) return 'over 99 %';
  return share < 0.01 ? 'under 1 %' : `${formatNumber(share * 100, { digits: 0 })} %`;
}

const metres = (chainage: number): string => formatLength(chainage, { unit: 'm', digits: 2 });

/** A limit's value in its own unit. */
export function amount(limit: keyof Limits, value: number, show: SurveyShow): string {
  if (limit === 'greatestGrade' || limit === 'leastGrade' || limit === 'greatestKink') {
    return formatGrade(value, { form: show.gradeForm === 'one-in' ? 'percent' : show.gradeForm, digits: 2 });
  }
  if (limit === 'leastRadius')
    return Number.isFinite(value) ? formatLength(value, { unit: 'm', digits: 1 }) : 'no curve';
  return formatLength(value, show.lengthUnit === 'mm' ? { unit: 'mm', digits: 2 } : { unit: 'in', digits: 3 });
}

function stepWords(
  { support, change, turns, pieces, before, after }: ShimStep,
  task: MendTask,
  show: SurveyShow,
): string {
  const size = amount('headroom', Math.abs(change), show);
  const way = change > 0 ? 'up' : 'down';
  const heights = `rail top from ${amount('headroom', before, show)} to ${amount('headroom', after, show)}`;
  if (turns === null) {
    const parts = pieces.map(({ thickness, count }) => `${count} × ${amount('headroom', thickness, show)}`);
    return `Support ${support + 1}: put ${parts.join(' and ')} under (${size} ${way}); ${heights}.`;
  }
  const thread = task.adjuster.kind === 'nut' ? task.adjuster.thread : '';
  return `Support ${support + 1}: ${turnsText(Math.abs(turns))} ${way} on ${thread} (${size}); ${heights}.`;
}

/** `2 1/8 turns`; not in eighths or finer halves of them: `1.37 turns`. */
export function turnsText(turns: number): string {
  const whole = Math.floor(turns);
  for (const parts of [1, 2, 4, 8, 16, 32, 64]) {
    const top = (turns - whole) * parts;
    if (Math.abs(top - Math.round(top)) > 1e-6) continue;
    const count = Math.round(top) === parts ? whole + 1 : whole;
    const fraction = Math.round(top) % parts === 0 ? '' : `${Math.round(top)}/${parts}`;
    const text = [count > 0 || fraction === '' ? String(count) : '', fraction].filter((part) => part !== '').join(' ');
    return `${text} ${turns <= 1 + 1e-9 ? 'turn' : 'turns'}`;
  }
  return `${formatNumber(turns, { digits: 2 })} turns`;
}

function proofWords(
  proof: { optimal: boolean; value: number; bound: number },
  objective: MendTask['objective'],
  show: SurveyShow,
): string {
  const value = (one: number): string => {
    if (objective === 'fewest') return `${one} ${one === 1 ? 'support' : 'supports'}`;
    return objective === 'flattest' ? amount('greatestGrade', one, show) : amount('headroom', one, show);
  };
  const what = {
    fewest: 'No fewer supports can do it',
    flattest: `No lower greatest grade can be had than ${value(proof.value)}`,
    least: `It cannot be done with less than ${value(proof.value)} of change in all`,
  }[objective];
  if (proof.optimal) return `${what}: proven.`;
  return `The search was stopped: this takes ${value(proof.value)}; less than ${value(proof.bound)} is ruled out.`;
}

function placesWords(places: readonly { readonly chainage: number }[]): string {
  const along = places.map(({ chainage }) => chainage).sort((a, b) => a - b);
  const sorted = [...new Set(along.map(metres))];
  return sorted.length > 4
    ? `${sorted.length} places from ${sorted[0]} to ${sorted[sorted.length - 1]}`
    : sorted.join(', ');
}
