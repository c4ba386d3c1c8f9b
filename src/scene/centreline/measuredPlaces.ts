import { atan, atan2, cos, hypot, sin } from '../../core/math/index.ts';
import type { MeasuredPlace } from '../../core/track/index.ts';
import { chordErrorMm } from './limits.ts';
import type { DrawnLine } from './types.ts';

/** Straights between arcs are as much part of a drawing as they are: a place each so often, mm. Points without arcs are measured ones, and chords between them say nothing. */
const straightEveryMm = 25;

/** A line as places to be fitted, m: arcs in chords, and no more than `most`, evenly left out. */
export function measuredPlaces(line: DrawnLine, most: number): MeasuredPlace[] {
  const places: MeasuredPlace[] = [];
  const drawn = line.some(({ bulge }) => bulge !== undefined && bulge !== 0);
  line.forEach((from, i) => {
    places.push(placeOf(from.xMm, from.yMm, from.zMm));
    const to = line[i + 1];
    const turn = 4 * atan(from.bulge ?? 0);
    const chord = to === undefined ? 0 : hypot(to.xMm - from.xMm, to.yMm - from.yMm);
    if (to === undefined || chord === 0 || !drawn) return;
    const radius = turn === 0 ? 0 : Math.abs(chord / (2 * sin(turn / 2)));
    // The arc stands above a chord of angle a by R·a²/8.
    const fine = turn === 0 ? chord / straightEveryMm : Math.abs(turn) / Math.sqrt((8 * chordErrorMm) / radius);
    const parts = Math.min(most, Math.ceil(fine));
    const along = atan2(to.yMm - from.yMm, to.xMm - from.xMm);
    for (let k = 1; k < parts; k++) {
      const part = (turn * k) / parts;
      const reach = turn === 0 ? (chord * k) / parts : 2 * radius * Math.abs(sin(part / 2));
      const angle = along - turn / 2 + part / 2;
      const height =
        from.zMm === undefined || to.zMm === undefined ? undefined : from.zMm + ((to.zMm - from.zMm) * k) / parts;
      places.push(placeOf(from.xMm + reach * cos(angle), from.yMm + reach * sin(angle), height));
    }
  });
  if (places.length <= most) return places;
  const step = (places.length - 1) / (most - 1);
  return Array.from({ length: most }, (_, i) => places[Math.round(i * step)]);
}

const placeOf = (xMm: number, yMm: number, zMm: number | undefined): MeasuredPlace => ({
  x: xMm / 1000,
  y: yMm / 1000,
  ...(zMm !== undefined && { z: zMm / 1000 }),
});
