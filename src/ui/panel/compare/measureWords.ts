import { formatNumber, thinSpace } from '../../../core/units/index.ts';
import type { Measure, MeasureId, MeasureLimit, MeasureUnit } from '../../../state/study/index.ts';
import { measureById } from '../../../state/study/index.ts';
import { distanceShown, gradeShown, lengthShown, radiusShown, type Show, type Shown } from '../../show.ts';

const joined = ({ shown: [figure, unit] }: Shown): string => (unit === '' ? figure : `${figure}${thinSpace}${unit}`);

const squareFoot = 0.3048 * 0.3048;

/** An area of deck or room. */
export const areaWords = (area: number, { lengthUnit }: Show): string =>
  lengthUnit === 'mm'
    ? `${formatNumber(area, { digits: 2 })}${thinSpace}m²`
    : `${formatNumber(area / squareFoot, { digits: 1 })}${thinSpace}ft²`;

const fixed =
  (digits: number, unit: string) =>
  (value: number): string =>
    `${formatNumber(value, { digits })}${thinSpace}${unit}`;

const units: Readonly<Record<MeasureUnit, (value: number, show: Show) => string>> = {
  length: (value, show) => joined(lengthShown(value, show)),
  grade: (value, show) => joined(gradeShown(value, show)),
  force: fixed(2, 'N'),
  speed: fixed(3, 'm/s'),
  time: fixed(1, 's'),
  work: fixed(2, 'J'),
  area: areaWords,
};

/** Lengths that a builder says otherwise than in millimetres. */
const own: Readonly<Partial<Record<MeasureId, (value: number, show: Show) => string>>> = {
  length: (value, show) => joined(distanceShown(value, show)),
  tightest: (value, show) => joined(radiusShown(value, show)),
  'vertical-radius': (value, show) => joined(radiusShown(value, show)),
};

/** What a measure says where it has no bound. */
const boundless: Readonly<Partial<Record<MeasureId, string>>> = {
  tightest: 'straight',
  'vertical-radius': 'even',
  time: 'never',
};

/** A value of a measure as a person reads it, SI; null where there is nothing to say. */
export function measureWords({ id, unit }: Measure, value: number | null, show: Show): string {
  if (value === null) return '–';
  if (!Number.isFinite(value)) return boundless[id] ?? '–';
  return (own[id] ?? units[unit])(value, show);
}

/** "at most 1600 mm" */
export function limitWords({ measure, bound, amount }: MeasureLimit, show: Show): string {
  const one = measureById(measure);
  return `${bound === 'most' ? 'at most' : 'at least'} ${measureWords(one, amount, show)}`;
}
