import { referenceSpacing } from '../../../core/stock/index.ts';
import type { Vehicle } from '../../../core/stock/types.ts';

/** One vehicle of the strip: from and to across, how tall, px. */
export interface StripBox {
  readonly from: number;
  readonly to: number;
  readonly tall: number;
}

/** Least that a vehicle is drawn wide, px: a long train would vanish otherwise. */
const leastWide = 1.5;

/** Lays a train out along a strip of `width` px, lengths to one scale and heights to another; mirrored puts vehicle 0 at the right. */
export function layOutStrip(
  vehicles: readonly Vehicle[],
  { width, tallest, mirrored }: { readonly width: number; readonly tallest: number; readonly mirrored: boolean },
): StripBox[] {
  // Distances behind the leading vehicle's origin, m.
  const ends: { front: number; rear: number }[] = [];
  let origin = 0;
  vehicles.forEach((vehicle, index) => {
    if (index > 0) origin += referenceSpacing(vehicles[index - 1], vehicle);
    const front = origin - vehicle.pivotSpacing / 2 - vehicle.frontOverhang;
    ends.push({ front, rear: front + vehicle.bodyLength });
  });
  const start = ends[0]?.front ?? 0;
  const length = (ends.at(-1)?.rear ?? 1) - start;
  const top = Math.max(...vehicles.map((vehicle) => vehicle.bodyHeight));
  return ends.map(({ front, rear }, index) => {
    const from = ((front - start) / length) * width;
    const to = Math.max(from + leastWide, ((rear - start) / length) * width);
    const tall = (vehicles[index].bodyHeight / top) * tallest;
    return mirrored ? { from: width - to, to: width - from, tall } : { from, to, tall };
  });
}
