import { formatGrade, formatLength, formatNumber, type GradeForm, type LengthUnit } from '../units/index.ts';
import { twistWords } from './twistWords.ts';
import type { Deficiency, Reading, ReadingAdvice, Slip, Survey, SurveyInput, WrongSupport } from './types.ts';

/** How lengths and grades are written. */
export interface SurveyShow {
  readonly lengthUnit: LengthUnit;
  readonly gradeForm: GradeForm;
}

/** A survey in words. */
export interface SurveyWords {
  /** What it comes to, in a sentence or two. */
  readonly verdict: string;
  /** A sentence for each support that is off, and each slip, with the evidence. */
  readonly supports: readonly string[];
  readonly slips: readonly string[];
  /** What the readings leave open. */
  readonly open: readonly string[];
  /** What they could have shown. */
  readonly reach: string;
  /** What to read next. */
  readonly next: string | null;
  /** How the deck lies across; nothing without cross-levels. */
  readonly twist: readonly string[];
}

export function describeSurvey(survey: Survey, show: SurveyShow): SurveyWords {
  const { explanation, estimate, input, next } = survey;
  return {
    verdict: verdict(survey),
    supports: explanation.supports.map((wrong) => wrongWords(wrong, input, show)),
    slips: explanation.slips.map((slip) => slipWords(slip, input, show)),
    open: estimate.deficiencies.map(openWords),
    reach: reachWords(survey, show),
    next: next === null ? null : nextWords(next, show),
    twist: survey.twist === null ? [] : twistWords(survey.twist, show),
  };
}

const mm = (value: number, show: SurveyShow, digits = 1): string =>
  formatLength(value, show.lengthUnit === 'mm' ? { unit: 'mm', digits } : { unit: 'in', digits: digits + 2 });

const share = (value: number, show: SurveyShow): string =>
  formatGrade(value, { form: show.gradeForm === 'one-in' ? 'percent' : show.gradeForm, digits: 2 });

const plain = (value: number): string => formatNumber(value, { digits: 1 });

/** `support 6`, `supports 6 and 17`, `supports 3, 4 and 9`. */
export function supportList(supports: readonly number[]): string {
  const numbers = supports.map((support) => String(support + 1));
  if (numbers.length === 1) return `support ${numbers[0]}`;
  return `supports ${numbers.slice(0, -1).join(', ')} and ${numbers[numbers.length - 1]}`;
}

function verdict({ explanation, input }: Survey): string {
  const { supports, slips, after, before } = explanation;
  const count = input.readings.length;
  const fit = `χ² ${plain(after.chiSquare)} for ${after.degreesOfFreedom} degrees of freedom`;
  const parts: string[] = [];
  if (explanation.noiseExplains) {
    parts.push(
      slips.length === 0
        ? `Noise explains all ${count} readings (${fit}): no support is shown to be off.`
        : `Once the slips below are put right, noise explains all ${count} readings (${fit}): no support is shown to be off.`,
    );
  } else {
    const raised = slips.some(({ at }) => at === 'line');
    const named = supports.map(({ support }) => support);
    const off = named.length === 0 ? '' : `${capital(supportList(named))} ${named.length === 1 ? 'is' : 'are'} off`;
    const what = [
      off,
      raised ? (off === '' ? 'The line is built off as a whole' : 'the line is built off as said below') : '',
    ]
      .filter((text) => text !== '')
      .join(', and ');
    parts.push(
      `${what}; nothing else is shown. χ² falls from ${plain(before.chiSquare)} to ${plain(after.chiSquare)} (${after.degreesOfFreedom} degrees of freedom).`,
    );
  }
  if (explanation.disagree) {
    parts.push(
      'Even so the readings disagree more than their stated errors allow: the errors are larger than given, or the line bends otherwise than a strip on its supports.',
    );
  }
  return parts.join(' ');
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function wrongWords(
  { support, departure, deviation, statistic, rival }: WrongSupport,
  { readings }: SurveyInput,
  show: SurveyShow,
): string {
  const side = departure > 0 ? 'high' : 'low';
  const size = `${mm(Math.abs(departure), show, 2)} ± ${mm(deviation, show, 2)}`;
  const told = `Support ${support + 1} stands ${size} ${side}, ${plain(Math.abs(statistic))} times what readings and setting scatter by together.`;
  if (rival === null) return told;
  return `${told} ${capital(nameOf(readings[rival]))} alone being wrong would explain it as well: read it again before turning the nut.`;
}

/** `the grade on line 7`: what a person calls one reading. */
function nameOf(reading: Reading): string {
  const what = { grade: 'the grade', height: 'the height', rise: 'the spacer', gap: 'the gap' }[reading.kind];
  return `${what} of ${reading.name}`;
}

function slipWords(slip: Slip, { readings, board }: SurveyInput, show: SurveyShow): string {
  const all = slip.readings.length > 1;
  const first = readings[slip.readings[0]];
  const whose =
    slip.readings.length === 0
      ? ''
      : all
        ? `${slip.readings.length} readings (${names(slip.readings, readings)})`
        : nameOf(first);
  const falls = `χ² falls by ${plain(slip.statistic)}, where ${plain(slip.critical)} would do`;
  const amount = `${mm(Math.abs(slip.amount), show, 2)}${slip.deviation > 0 ? ` ± ${mm(slip.deviation, show, 2)}` : ''}`;
  switch (slip.kind) {
    case 'degrees-for-percent': {
      if (all) return `${capital(whose)} fit when their numbers are degrees, not per cent: ${falls}.`;
      const written = first.kind === 'grade' ? formatNumber(first.grade * 100, { digits: 2, trim: true }) : '';
      const taken = first.kind === 'grade' ? share(first.grade - slip.amount, show) : '';
      return `${capital(whose)} fits when its ${written} is degrees, not per cent: ${written}° is ${taken}; ${falls}.`;
    }
    case 'percent-for-degrees': {
      if (all) return `${capital(whose)} fit when their numbers are per cent, not degrees: ${falls}.`;
      const taken = first.kind === 'grade' ? share(first.grade - slip.amount, show) : '';
      return `${capital(whose)} fits when its number is per cent, not degrees: ${taken}; ${falls}.`;
    }
    case 'shifted': {
      const where = slip.amount > 0 ? 'further on' : 'back';
      return all
        ? `${capital(whose)} fit when all were taken one support ${where}, as if counted from another first: ${falls}.`
        : `${capital(whose)} fits when it was taken one support ${where} from where it is written: ${falls}.`;
    }
    case 'spacers':
      if (slip.at === 'line') {
        return `Every turn stands ${amount} ${slip.amount > 0 ? 'higher' : 'lower'} above the one below than planned: each spacer is off by the same; ${falls}.`;
      }
      return `Every spacer reads ${amount} ${slip.amount > 0 ? 'more' : 'less'} than the heights allow: one fault in all, as of a gauge not at zero; ${falls}.`;
    case 'raised-from':
      return `From support ${slip.support + 1} on everything stands ${amount} ${slip.amount > 0 ? 'high' : 'low'}: one spacer below it too ${slip.amount > 0 ? 'thick' : 'thin'}; ${falls}.`;
    case 'edge-radius': {
      const side = slip.amount > 0 ? 'outside' : 'inside';
      return slip.at === 'plan'
        ? `Grades on curves fit when the plan's radius was measured ${amount} ${side} the centreline, as at the edge of the board: ${falls}.`
        : `Chainages fit when they were measured ${amount} ${side} the centreline, as at the edge of the board: ${falls}.`;
    }
    case 'board':
      return `${capital(whose)} are ${amount} too ${slip.amount > 0 ? 'high' : 'low'}, the thickness of the deck (${mm(board, show)}): it was ${slip.amount > 0 ? 'counted twice' : 'forgotten'} there; ${falls}.`;
    case 'outlier': {
      const off = first.kind === 'grade' ? share(Math.abs(slip.amount), show) : amount;
      return `${capital(whose)} fits nothing: it is ${off} ${slip.amount > 0 ? 'above' : 'below'} what all the others call for, and was left out; ${falls}. Read it again.`;
    }
  }
}

/** Most readings that are named one by one. */
const mostNamed = 4;

function names(indices: readonly number[], readings: readonly Reading[]): string {
  const first = indices.slice(0, mostNamed).map((index) => readings[index].name);
  return indices.length > mostNamed ? `${first.join(', ')}, …` : first.join(', ');
}

function openWords(open: Deficiency): string {
  switch (open.kind) {
    case 'height':
      return `Heights are known only relative to support ${open.held + 1}: nothing ties the line to the datum of the plan.`;
    case 'tilt':
      return `Heights are known only relative to the line through ${supportList(open.held)}: the readings tell neither height nor overall grade.`;
    case 'unseen':
      return `No reading says anything of ${supportList(open.supports)}.`;
    case 'apart':
      return `The readings fall into parts that are not tied together; ${supportList(open.supports)} ${open.supports.length === 1 ? 'was' : 'were'} taken as planned.`;
  }
}

function reachWords({ estimate, input }: Survey, show: SurveyShow): string {
  const seen = estimate.supports.filter(({ detectable }) => Number.isFinite(detectable) && detectable > 0);
  if (seen.length === 0) return 'These readings could not show any support to be off.';
  const sizes = seen.map(({ detectable }) => detectable).sort((a, b) => a - b);
  const middle = sizes[sizes.length >> 1];
  const worst = sizes[sizes.length - 1];
  const blind = input.supports.length - input.fixed.length - seen.length;
  const none = blind > 0 ? ` Of ${blind} ${blind === 1 ? 'support' : 'supports'} they show nothing.` : '';
  return `Where supports are set to ${mm(input.setting, show, 2)}, these readings show one that is ${mm(middle, show)} off four times in five (${mm(sizes[0], show)} at best, ${mm(worst, show)} at worst); less than that may be there unseen.${none}`;
}

function nextWords(advice: ReadingAdvice, show: SurveyShow): string {
  const what =
    advice.kind === 'height'
      ? `the height of support ${advice.support + 1}`
      : `the grade over ${mm(advice.base, show, 0)} about support ${advice.support + 1}`;
  const decides = advice.decides === 'departure' ? 'the departure of' : 'the change of grade at';
  const size = (value: number): string => (advice.decides === 'departure' ? mm(value, show, 2) : share(value, show));
  return `To learn most from one more reading, take ${what}: ${decides} support ${advice.about + 1} is then known to ${size(advice.after)} instead of ${size(advice.before)}.`;
}
