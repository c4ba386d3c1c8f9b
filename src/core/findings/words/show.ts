import type { RiskUnit } from '../../risks/types.ts';
import {
  formatAngle,
  formatForce,
  formatGrade,
  formatLength,
  formatMass,
  formatNumber,
  formatSpeed,
  thinSpace,
} from '../../units/index.ts';

/** How the person wants lengths and grades shown. */
export interface Show {
  readonly lengthUnit: 'mm' | 'in';
  readonly gradeForm: 'one-in' | 'percent';
  /** The legs of the route that places are told along, each place then by its track too; absent: the trial runs on one track. */
  readonly legs?: readonly NamedLeg[];
}

/** One leg of a route by the name of its track: from one chainage of the track to another, m, and where it starts along the route. */
export interface NamedLeg {
  readonly trackName: string;
  readonly from: number;
  readonly to: number;
  readonly start: number;
}

export const plainShow: Show = { lengthUnit: 'mm', gradeForm: 'percent' };

/** Who is who in a trial, for words. Everything but the names may be left out. */
export interface Naming {
  /** As in the run: vehicle 0 leads. */
  readonly vehicleNames: readonly string[];
  /** The vehicle that the scene lists last leads: numbers, which are the scene's, then count from the other end. */
  readonly lastLeads?: boolean;
  /** Vehicle index of each locomotive, as in the run; without it they are all called the engine. */
  readonly locomotives?: ArrayLike<number>;
  /** Propelled, which decides how changing the working is put. */
  readonly propelled?: boolean;
  /** The legs of the route the trial runs over; absent: it runs on one track. */
  readonly legs?: readonly NamedLeg[];
  /** The train's path: events speak path chainage and are shown in the scene's. */
  readonly path?: { readonly length: number; readonly reversed: boolean };
}

const showChainage = (chainage: number, { lengthUnit }: Show): string =>
  lengthUnit === 'mm'
    ? formatLength(chainage, { unit: 'm', digits: 2 })
    : formatLength(chainage, { unit: 'ft', fraction: 8 });

/** Where along the track: `7.42 m`, `24′ 4 1/8″`; along a route by its track too: `7.42 m (0.31 m on Crossover)`. */
export function showPlace(chainage: number, show: Show): string {
  const along = showChainage(chainage, show);
  const leg = legAt(show.legs ?? [], chainage);
  return leg === null ? along : `${along} (${showChainage(ownChainage(leg, chainage), show)} on ${leg.trackName})`;
}

/** The leg that a chainage along the route lies on: the last that has begun, the first before all; null without legs. */
export const legAt = <L extends Pick<NamedLeg, 'start'>>(legs: readonly L[], chainage: number): L | null =>
  [...legs].reverse().find(({ start }) => start <= chainage) ?? legs[0] ?? null;

/** Chainage on a leg's own track of one along the route, m. */
export const ownChainage = ({ from, to, start }: Omit<NamedLeg, 'trackName'>, chainage: number): number =>
  from + (to > from ? chainage - start : start - chainage);

/** The person's units with the legs of a trial, so that every place told is told by its track too. */
export const showOf = (naming: Pick<Naming, 'legs'>, show: Show): Show =>
  naming.legs === undefined ? show : { ...show, legs: naming.legs };

/** ` of Crossover` where a track has to be named; empty on a track alone. */
export const ofTrack = (leg: number | undefined, { legs }: Show): string =>
  leg === undefined || legs?.[leg] === undefined ? '' : ` of ${legs[leg].trackName}`;

/** Below this a tenth of a millimetre hides which side of zero a margin is on, m. */
const fine = 0.0001;

/** A length that matters to a coupling: `1.9 mm`, `0.07 mm`, `0.075 in`. */
export function showSmall(length: number, { lengthUnit }: Show): string {
  if (lengthUnit === 'in') return formatLength(length, { unit: 'in', digits: 3 });
  return formatLength(length, { unit: 'mm', digits: Math.abs(length) < fine ? 2 : 1 });
}

/** A length a builder sets out: `400 mm`, `15 3/4″`. */
export const showLength = (length: number, { lengthUnit }: Show): string =>
  lengthUnit === 'mm' ? formatLength(length, { unit: 'mm', digits: 0 }) : formatLength(length, { unit: 'in' });

/** A radius: `438 mm`, from two metres `7.3 m`; `17 1/4″`, `24′`. */
export function showRadius(radius: number, { lengthUnit }: Show): string {
  if (lengthUnit === 'in')
    return formatLength(radius, { unit: radius < 2 ? 'in' : 'ft', fraction: radius < 2 ? 4 : 2 });
  return radius < 2 ? formatLength(radius, { unit: 'mm', digits: 0 }) : formatLength(radius, { unit: 'm', digits: 1 });
}

export const showForce = (force: number): string => formatForce(force, { digits: Math.abs(force) < 0.1 ? 3 : 2 });

export const showShare = (share: number): string => `${formatNumber(100 * share, { digits: 0 })}${thinSpace}%`;

export const showAngle = (angle: number): string => formatAngle(angle, { digits: 1 });

export const showMass = (mass: number, { lengthUnit }: Show): string =>
  formatMass(mass, lengthUnit === 'in' ? { unit: 'oz', digits: 1 } : { unit: 'g', digits: 0 });

/** Of a vehicle: `0.25 m/s`. */
export const showSpeed = (speed: number): string => formatSpeed(speed, { unit: 'm/s', digits: 2 });

/** A grade without its sign: `2.4 %`, `1 in 41.9`, `level`. */
export const showGrade = (grade: number, { gradeForm }: Show): string =>
  formatGrade(Math.abs(grade), gradeForm === 'percent' ? { form: 'percent', digits: 1 } : { form: 'one-in' });

/** A value, limit or margin of a risk. */
export function showAmount(amount: number, unit: RiskUnit, show: Show): string {
  if (unit === 'length') return showSmall(amount, show);
  if (unit === 'force') return showForce(amount);
  return unit === 'share' ? showShare(amount) : showAngle(amount);
}
