import { rampOf } from './oklab.ts';

/**
 * Small forces are most of what a train lives with, so the scale is bent: colour goes with (|F| / greatest)^0.55, which
 * gives the lowest tenth of the range more than a quarter of the colours.
 */
export const FORCE_BEND = 0.55;

/** Colours a side of the force scale and of the margin scale: steps too small to see at the ends of the range. */
const SHADES = 128;

export interface Inks {
  readonly buff: readonly string[];
  readonly draft: readonly string[];
  readonly slack: string;
  /** The light thread that tells slack from pale teal for protan eyes. */
  readonly thread: string;
  /** From plenty to little. */
  readonly margin: readonly string[];
}

export const plainInks: Inks = {
  buff: ['#F4F2EB', '#C3DBDA', '#7FB3B8', '#38848F', '#0B4F5E'],
  draft: ['#F4F2EB', '#F0DDAE', '#DDAF55', '#B47B1C', '#744600'],
  slack: '#BBBDBF',
  thread: '#DCDCDA',
  margin: ['#F1EEE6', '#D6D2C7', '#ABA698', '#767063', '#423C32'],
};

/** Same scales with darker ends; the thread is white so that it stands out as much as the theme asks. */
export const contrastInks: Inks = {
  ...plainInks,
  buff: [...plainInks.buff.slice(0, 4), '#00303B'],
  draft: [...plainInks.draft.slice(0, 4), '#6B3F00'],
  thread: '#FFFFFF',
  // On white the palest pencil would be no mark at all.
  margin: ['#DEDACF', ...plainInks.margin.slice(1, 4), '#20262D'],
};

/** How far along its side of the scale a force lies, 0..1. */
export function forceShade(force: number, greatest: number): number {
  return greatest > 0 ? Math.min(1, Math.abs(force) / greatest) ** FORCE_BEND : 0;
}

/** How far along the margin scale a margin lies: 0 plenty, 1 nothing left. */
export function marginShade(margin: number, plenty: number): number {
  return Math.min(1, Math.max(0, 1 - margin / plenty));
}

export interface ForceColours {
  readonly greatest: number;
  /** Colour of a force that is not zero. */
  colour(force: number): string;
  /** Colour at a place along one side of the scale, 0..1. */
  shade(side: 'buff' | 'draft', at: number): string;
}

export function forceColours(greatest: number, inks: Inks): ForceColours {
  const ramps = { buff: rampOf(inks.buff, SHADES), draft: rampOf(inks.draft, SHADES) };
  const shade = (side: 'buff' | 'draft', at: number) => ramps[side][Math.round(at * (SHADES - 1))];
  return {
    greatest,
    shade,
    colour: (force) => shade(force < 0 ? 'buff' : 'draft', forceShade(force, greatest)),
  };
}

/** Colour of a margin of zero or more, by how much is plenty. */
export function marginColours(plenty: number, inks: Inks): (margin: number) => string {
  const ramp = rampOf(inks.margin, SHADES);
  return (margin) => ramp[Math.round(marginShade(margin, plenty) * (SHADES - 1))];
}

/** First figures that a scale may end with: close enough together that at most a fifth of the colours is wasted. */
const ROUND_ENDS = [1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

/** The least round number that is not below `value`. */
export function roundEnd(value: number): number {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  const figure = value / power;
  // A value that is a round number already may land a rounding error above it.
  const end = ROUND_ENDS.find((candidate) => candidate >= figure * (1 - 1e-12)) ?? 10;
  return Number((end * power).toPrecision(3));
}

export interface BentTick {
  /** N, positive. */
  readonly force: number;
  /** Place along its side of the legend, 0 at slack and 1 at the end. */
  readonly at: number;
}

/**
 * Ticks of the bent scale at 1, 2 and 5 times powers of ten, at least `apart` (share of a side) from each other, from
 * the end inwards; the end itself always comes first.
 */
export function bentTicks(greatest: number, apart: number): BentTick[] {
  const ticks: BentTick[] = [{ force: greatest, at: 1 }];
  let power = 10 ** Math.floor(Math.log10(greatest));
  for (let decade = 0; decade < 3; decade++, power /= 10) {
    for (const figure of [5, 2, 1]) {
      const force = Number((figure * power).toPrecision(3));
      const at = forceShade(force, greatest);
      if (force < greatest && ticks[ticks.length - 1].at - at >= apart && at >= apart / 2) ticks.push({ force, at });
    }
  }
  return ticks;
}
