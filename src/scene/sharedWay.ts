import type { WayLeg } from './way.ts';

/** Ends of legs that are computed apart are the same place within this, mm. */
const roundingMm = 1e-2;

/** A stretch that two ways have in common: the same rails, counted along each of them. Lengths in mm. */
interface SharedStretch {
  /** Along the first way, from the lesser chainage to the greater. */
  readonly fromMm: number;
  readonly toMm: number;
  /** 1 where chainages of the second way grow along with those of the first, -1 where they run against them. */
  readonly sense: 1 | -1;
  /** A chainage of the second way is this and `sense` times that of the first. */
  readonly offsetMm: number;
}

/** The stretches that two ways have in common, in the order of the first. */
export function sharedStretches(one: readonly WayLeg[], other: readonly WayLeg[]): readonly SharedStretch[] {
  const found: SharedStretch[] = [];
  eachLeg(one, (leg, startMm, way) => {
    eachLeg(other, (against, otherStartMm, otherWay) => {
      if (leg.track.id !== against.track.id) return;
      const low = Math.max(Math.min(leg.fromMm, leg.toMm), Math.min(against.fromMm, against.toMm));
      const high = Math.min(Math.max(leg.fromMm, leg.toMm), Math.max(against.fromMm, against.toMm));
      if (high - low <= roundingMm) return;
      const sense = way === otherWay ? 1 : -1;
      const along = (ownMm: number): number => startMm + way * (ownMm - leg.fromMm);
      found.push({
        fromMm: Math.min(along(low), along(high)),
        toMm: Math.max(along(low), along(high)),
        sense,
        offsetMm: otherStartMm + otherWay * (leg.fromMm - against.fromMm) - sense * startMm,
      });
    });
  });
  found.sort((a, b) => a.fromMm - b.fromMm);
  const joined: SharedStretch[] = [];
  for (const next of found) {
    const index = joined.findIndex((before) => goesOn(before, next));
    if (index < 0) joined.push(next);
    else joined[index] = { ...joined[index], toMm: next.toMm };
  }
  return joined;
}

/** Whether both ways run from the end of one stretch straight into the other. */
const goesOn = (before: SharedStretch, next: SharedStretch): boolean =>
  before.sense === next.sense &&
  Math.abs(before.toMm - next.fromMm) <= roundingMm &&
  Math.abs(before.offsetMm - next.offsetMm) <= roundingMm;

function eachLeg(way: readonly WayLeg[], take: (leg: WayLeg, startMm: number, way: 1 | -1) => void): void {
  let startMm = 0;
  for (const leg of way) {
    take(leg, startMm, leg.toMm > leg.fromMm ? 1 : -1);
    startMm += Math.abs(leg.toMm - leg.fromMm);
  }
}

/** What stands between two chainages of the first way, on the stretch in common that holds most of it. */
interface Standing {
  readonly stretch: SharedStretch;
  /** How far it stands out at the lesser and at the greater chainage, mm; 0 where it does not. */
  readonly outBeforeMm: number;
  readonly outAfterMm: number;
}

/** Null when none of it stands on a stretch in common. */
export function standingOn(stretches: readonly SharedStretch[], fromMm: number, toMm: number): Standing | null {
  let best: Standing | null = null;
  let most = 0;
  for (const stretch of stretches) {
    const held = Math.min(toMm, stretch.toMm) - Math.max(fromMm, stretch.fromMm);
    if (held <= most) continue;
    most = held;
    best = { stretch, outBeforeMm: out(stretch.fromMm - fromMm), outAfterMm: out(toMm - stretch.toMm) };
  }
  return best;
}

const out = (mm: number): number => (mm > roundingMm ? mm : 0);

/** Chainage of the second way at one of the first, mm. */
export const acrossMm = ({ sense, offsetMm }: SharedStretch, mm: number): number => offsetMm + sense * mm;
