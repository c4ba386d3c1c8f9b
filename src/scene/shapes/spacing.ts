import {
  curvedSpacingH0Mm,
  straightSpacingH0Mm,
  straightSpacingNMm,
  structureGaugeMm,
} from '../../core/stock/standards/index.ts';
import { largerThanNorm, type Proposed, type ShapeScale, timesText, upTo } from './scales.ts';

/** Where tracks lie beside each other: out on the line, or in a station, where people reach in between. */
export type SpacingUse = 'line' | 'station';

/** Half the formation that a track lies on, in gauges. Source: NEM 122 (2007), 70 mm for H0. */
const formationHalfInGauges = 35 / 16.5;

/** What the ends and middles of the longest vehicles need to each side of a curve, full size: 36 000 mm over the radius in m. Source: the page that quotes NEM 112. */
const overhangRuleMm = 36_000;

/**
 * Spacing of straight tracks, mm: NEM 112 where its row is to hand (H0, N), made larger where the scale is larger than its gauge's row; elsewhere two
 * structure gauges of NEM 102 side by side, in stations more by as much as in H0.
 */
export function straightSpacingFor(scale: ShapeScale, use: SpacingUse): Proposed {
  const larger = largerThanNorm(scale);
  const row = scale.norm === 'H0' ? straightSpacingH0Mm : scale.norm === 'N' ? straightSpacingNMm : null;
  const where = use === 'line' ? 'on the line' : 'in stations';
  if (row !== null) {
    const mm = upTo(row[use] * larger, 1);
    return {
      mm,
      because: {
        what: `Tracks ${mm} mm apart`,
        source: `NEM 112 (secondary print): ${row[use]} mm ${where}${timesText(scale)}`,
      },
    };
  }
  const across = structureGaugeMm[scale.norm].bl1;
  const more = straightSpacingH0Mm[use] / straightSpacingH0Mm.line;
  const mm = upTo(across * larger * more, 1);
  const share = use === 'line' ? '' : ', and an eighth more in stations as NEM 112 has it in H0';
  return {
    mm,
    because: {
      what: `Tracks ${mm} mm apart`,
      source: `NEM 102 (2017): two structure gauges of ${across} mm side by side${share}`,
    },
  };
}

/**
 * Spacing of parallel tracks whose sharpest curve has this radius, mm (Infinity: straight). H0 by the rows of NEM 112; below them and in other scales
 * the straight spacing and twice the overhang of the longest vehicles.
 */
export function spacingFor(scale: ShapeScale, use: SpacingUse, radiusMm: number): Proposed {
  const straight = straightSpacingFor(scale, use);
  if (!Number.isFinite(radiusMm)) return straight;
  const row =
    scale.norm === 'H0' ? curvedSpacingH0Mm.findLast((one) => one.radiusMm <= radiusMm + roundingMm) : undefined;
  if (row !== undefined) {
    const mm = Math.max(straight.mm, upTo(row.spacingMm * largerThanNorm(scale), 1));
    if (mm === straight.mm) return straight;
    return {
      mm,
      because: {
        what: `Tracks ${mm} mm apart in curves of ${Math.round(radiusMm)} mm`,
        source: `NEM 112 (secondary print): ${row.spacingMm} mm from a radius of ${row.radiusMm} mm on${timesText(scale)}`,
      },
    };
  }
  const overhangMm = (overhangRuleMm * 1000) / (radiusMm * scale.ratio * scale.ratio);
  const mm = upTo(straight.mm + 2 * overhangMm, 1);
  if (mm === straight.mm) return straight;
  return {
    mm,
    because: {
      what: `Tracks ${mm} mm apart in curves of ${Math.round(radiusMm)} mm`,
      source: `${straight.because.source}, and twice an overhang of ${Math.round(overhangMm * 10) / 10} mm: 36 000 mm over the full-size radius in m, on the same page`,
    },
  };
}

/** Radii are compared to the micrometre. */
const roundingMm = 1e-6;

/** Spacing of a track beside one that rises past it, mm: its trains must not come under the edge of the other's deck. */
export function besideClimbFor(scale: ShapeScale): Proposed {
  const half = formationHalfInGauges * scale.gaugeMm;
  const gauge = structureGaugeMm[scale.norm].bl1 * largerThanNorm(scale);
  const { mm: station } = straightSpacingFor(scale, 'station');
  const mm = Math.max(station, upTo(half + gauge / 2, 1));
  return {
    mm,
    because: {
      what: `${mm} mm to a line that rises beside`,
      source: `NEM 122 (2007) and NEM 102 (2017): half a formation of ${Math.round(2 * half)} mm and half a structure gauge of ${Math.round(gauge)} mm`,
    },
  };
}
