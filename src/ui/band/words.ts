import type { RiskUnit } from '../../core/risks/types.ts';
import { formatGrade, formatLength, formatNumber, thinSpace } from '../../core/units/index.ts';
import { radiusText } from '../../state/index.ts';

/** How numbers are wanted, as the header's switches say. */
export interface Show {
  readonly lengthUnit: 'mm' | 'in';
  readonly gradeForm: 'one-in' | 'percent';
}

const METRES_PER_INCH = 0.0254;

/** Unit of small lengths, as written. */
export const lengthUnit = (show: Show): string => show.lengthUnit;
/** Unit of chainages, as written. */
export const chainageUnit = (show: Show): string => (show.lengthUnit === 'in' ? 'ft' : 'm');

/** A small length without its unit: 240.4, or inches to two or (below an inch) three decimals. */
export function lengthFigure(metres: number, show: Show, signed = false): string {
  if (show.lengthUnit === 'mm') return formatNumber(metres * 1000, { digits: 1, signed });
  const inches = metres / METRES_PER_INCH;
  return formatNumber(inches, { digits: Math.abs(inches) < 1 ? 3 : 2, signed });
}

/** 7.42, or 24′ 4″: a chainage where the unit is plain from what stands around it. */
export function chainageFigure(metres: number, show: Show): string {
  if (show.lengthUnit === 'mm' || !Number.isFinite(metres)) return formatNumber(metres, { digits: 2 });
  return feetAndInches(Math.round(metres / METRES_PER_INCH));
}

/** A whole number of inches as feet and inches: 24′ 4″, 24′, 4″. */
function feetAndInches(inches: number): string {
  const sign = inches < 0 ? '−' : '';
  const feet = Math.floor(Math.abs(inches) / 12);
  const rest = Math.abs(inches) - 12 * feet;
  if (feet === 0) return `${sign}${rest}″`;
  return rest === 0 ? `${sign}${feet}′` : `${sign}${feet}′ ${rest}″`;
}

/** 7.42 m, or 24′ 4″. */
export function chainageWords(metres: number, show: Show): string {
  return show.lengthUnit === 'in' ? chainageFigure(metres, show) : withUnit(chainageFigure(metres, show), 'm');
}

export function withUnit(figure: string, unit: string): string {
  return unit === '' ? figure : unit === '°' ? `${figure}°` : `${figure}${thinSpace}${unit}`;
}

export function marginUnit(unit: RiskUnit, show: Show): string {
  return { length: lengthUnit(show), force: 'N', share: '%', angle: '°' }[unit];
}

/** Ten times what is needed is beyond all doubt: two figures say it. */
const shareShown = (share: number): number => (Math.abs(share) < 10 ? share : Number(share.toPrecision(2)));

/** A margin without its unit; shares carry a plus, since they stand beside what is needed. */
export function marginFigure(margin: number, unit: RiskUnit, show: Show): string {
  switch (unit) {
    case 'length':
      return lengthFigure(margin, show);
    case 'force':
      return formatNumber(margin, { digits: 2 });
    case 'share':
      return formatNumber(shareShown(margin) * 100, { digits: 0, signed: true });
    case 'angle':
      return formatNumber((margin * 180) / Math.PI, { digits: 1 });
  }
}

/** How much another margin or height is more than this one, with its sign: +1.2; nothing to choose: =. */
export function differenceFigure(difference: number, unit: RiskUnit, show: Show): string {
  if (Number.isNaN(difference)) return '–';
  const figure = marginFigure(difference, unit, show);
  if (!/[1-9]/.test(figure)) return '=';
  return difference > 0 && !figure.startsWith('+') ? `+${figure}` : figure;
}

/** Scales that end below this are read to the thousandth, N. */
const FINE_FORCES = 0.5;

/** A coupler force in N with its sign, to the decimals that suit a scale ending at `greatest`; "slack" at zero. */
export function forceFigure(newtons: number, greatest: number): string {
  return newtons === 0 ? 'slack' : formatNumber(newtons, { digits: greatest < FINE_FORCES ? 3 : 2, signed: true });
}

/** "1 in 41.9 · 2.39 %", the chosen form first, without a direction. */
export function gradeBothForms(grade: number, show: Show): string {
  const steepness = Math.abs(grade);
  const oneIn = formatGrade(steepness, { form: 'one-in', digits: 1 });
  if (oneIn === 'level') return oneIn;
  const percent = formatGrade(steepness, { form: 'percent' });
  return show.gradeForm === 'one-in' ? `${oneIn} · ${percent}` : `${percent} · ${oneIn}`;
}

export function gradeOneForm(grade: number, show: Show): string {
  const steepness = Math.abs(grade);
  const oneIn = formatGrade(steepness, { form: 'one-in', digits: 1 });
  return oneIn === 'level' ? oneIn : show.gradeForm === 'one-in' ? oneIn : formatGrade(steepness, { form: 'percent' });
}

/** Radii beyond this are written as straight: a curve nobody could lay. m */
const STRAIGHT_RADIUS = 50;

/** "R 600 mm right", "straight". */
export function radiusWords(curvature: number, show: Show): string {
  if (Math.abs(curvature) < 1 / STRAIGHT_RADIUS) return 'straight';
  return `${radiusText(1 / Math.abs(curvature), show)} ${curvature > 0 ? 'left' : 'right'}`;
}

const QUARTERS = ['', '¼', '½', '¾'];

/** "3½ turns"; nothing below three quarters of one. */
export function turnsWords(turns: number): string {
  const quarters = Math.round(turns * 4);
  if (quarters < 3) return '';
  const whole = Math.floor(quarters / 4);
  const figure = `${whole > 0 ? whole : ''}${QUARTERS[quarters % 4]}`;
  return `${figure} ${quarters <= 4 ? 'turn' : 'turns'}`;
}

/** A length that is set out rather than checked: 700 mm, 27 1/2″. */
export function roundLengthWords(metres: number, show: Show): string {
  return show.lengthUnit === 'mm'
    ? formatLength(metres, { unit: 'mm', digits: 0 })
    : formatLength(metres, { unit: 'in', fraction: 4 });
}
