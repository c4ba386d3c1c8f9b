import {
  clearHeight,
  easementLength,
  easementShiftMm,
  type Scale,
  structureGaugeMm,
} from '../../core/stock/standards/index.ts';

/** A scale that shapes can be made in, with the row of the European norms that it reads. */
export interface ShapeScale {
  readonly name: string;
  readonly gaugeMm: number;
  readonly ratio: number;
  /** Row of the norms' tables: the one of its gauge. */
  readonly norm: Exclude<Scale, 'II'>;
}

/** Ratio that a norm's row is made for. Source: the scales' usual ratios, common practice. */
const normRatio: Readonly<Record<ShapeScale['norm'], number>> = {
  Z: 220,
  N: 160,
  TT: 120,
  H0: 87,
  S: 64,
  0: 45,
  I: 32,
};

/** Scales by gauge. */
export const shapeScales: readonly ShapeScale[] = [
  { name: 'Z', gaugeMm: 6.5, ratio: 220, norm: 'Z' },
  { name: 'N', gaugeMm: 9, ratio: 160, norm: 'N' },
  { name: 'TT', gaugeMm: 12, ratio: 120, norm: 'TT' },
  { name: 'HO', gaugeMm: 16.5, ratio: 87.1, norm: 'H0' },
  { name: 'OO', gaugeMm: 16.5, ratio: 76.2, norm: 'H0' },
  { name: 'S', gaugeMm: 22.5, ratio: 64, norm: 'S' },
  { name: 'O', gaugeMm: 32, ratio: 45, norm: '0' },
  { name: '1', gaugeMm: 45, ratio: 32, norm: 'I' },
];

/** The scale of a railway: by its name, else by its gauge, the nearest there is. */
export const shapeScaleOf = ({ name, gaugeMm }: { readonly name: string; readonly gaugeMm: number }): ShapeScale =>
  shapeScales.find((scale) => scale.name === name) ??
  shapeScales.toSorted((a, b) => Math.abs(a.gaugeMm - gaugeMm) - Math.abs(b.gaugeMm - gaugeMm))[0];

/** A number that a shape proposes, and where it comes from. */
export interface Because {
  readonly what: string;
  readonly source: string;
}

/** A proposed length, mm, with its reason. */
export interface Proposed {
  readonly mm: number;
  readonly because: Because;
}

/** A length rounded up to whole steps; the dust of binary fractions is not worth one. */
export const upTo = (mm: number, step: number): number => Math.ceil(mm / step - 1e-9) * step;

/** How many times as large a scale is as the one that its gauge's row is made for: 1.14 for OO, never less than 1. */
export const largerThanNorm = (scale: ShapeScale): number => Math.max(1, normRatio[scale.norm] / scale.ratio);

/** The same in words, after the number of the norm; nothing where it is the norm's own scale. */
export function timesText(scale: ShapeScale): string {
  const larger = largerThanNorm(scale);
  return larger > 1.005 ? `, times ${larger.toFixed(2)} for 1:${scale.ratio}` : '';
}

/** Easement into a curve of this radius, mm: L = √(24 f R) of NEM 113, rounded up to 10 mm. */
export function easementFor(scale: ShapeScale, radiusMm: number): Proposed {
  const mm = upTo(easementLength(scale.norm, radiusMm / 1000) * 1000, 10);
  const shift = easementShiftMm[scale.norm];
  return {
    mm,
    because: {
      what: `Easements of ${mm} mm into ${radiusMm} mm`,
      source: `NEM 113 (2016): √(24·f·R) with a shift f of ${shift} mm`,
    },
  };
}

/** Clear height over the rail without wire, mm: NEM 102, made larger where the scale is larger than its gauge's row. */
export function clearHeightFor(scale: ShapeScale): Proposed {
  const mm = Math.ceil(clearHeight(scale.norm, false) * 1000 * largerThanNorm(scale) - 0.05);
  return {
    mm,
    because: {
      what: `${mm} mm clear over the rail`,
      source: `NEM 102 (2017): ${structureGaugeMm[scale.norm].hl4} mm without wire${timesText(scale)}`,
    },
  };
}

/** Rail top of one deck to rail top of the next, mm, less the clear height: what a deck takes. */
export function deckDepthMm(scale: ShapeScale): number {
  const { thicknessMm, underlayMm, trackMm } = deckFor(scale);
  return thicknessMm + underlayMm + trackMm;
}

/** Deck, underlay and track, mm, in proportion to 9 + 3 + 5 mm at 16.5 mm gauge, the deck no thinner than 6 mm. */
export function deckFor(scale: ShapeScale): {
  readonly thicknessMm: number;
  readonly underlayMm: number;
  readonly trackMm: number;
} {
  const size = scale.gaugeMm / 16.5;
  const half = (mm: number) => Math.round(mm * size * 2) / 2;
  return { thicknessMm: Math.max(6, Math.round(9 * size)), underlayMm: half(3), trackMm: half(5) };
}
