import { type AxisScale, valueAt, xOf } from '../frame/axis.ts';
import { frameAt, type Motion, valueBetween } from '../frame/motion.ts';

/** What lies under each pixel of the axis: chainages (m) at every whole pixel from 0 to the width. */
export interface Ground {
  readonly axis: AxisScale;
  readonly places: Float64Array;
  /** Pixels at which a chainage lies; in time mode where the train's reference passes it, which may be never or often. */
  xsOf(chainage: number): number[];
}

/**
 * The ground under a chainage axis is the axis itself; under a time axis it is where the reference (`places` by frame) is
 * at each time. Null when a time axis has no run to go by.
 */
export function groundOf(axis: AxisScale, motion: Motion | null, reference: Float64Array | null): Ground | null {
  const count = Math.max(1, Math.floor(axis.width)) + 1;
  if (axis.kind === 'chainage') {
    const places = Float64Array.from({ length: count }, (_, x) => valueAt(axis, x));
    return {
      axis,
      places,
      xsOf: (chainage) => {
        const x = xOf(axis, chainage);
        return x >= -0.5 && x <= axis.width + 0.5 ? [x] : [];
      },
    };
  }
  if (!motion || !reference) return null;
  const places = Float64Array.from({ length: count }, (_, x) =>
    valueBetween(reference, frameAt(motion.time, valueAt(axis, x))),
  );
  return { axis, places, xsOf: (chainage) => crossings(places, chainage) };
}

/** Pixels at which a value is passed, on straight lines from pixel to pixel; a stretch standing on it counts once. */
export function crossings(places: Float64Array, value: number): number[] {
  const found: number[] = [];
  let standing = false;
  for (let x = 0; x < places.length; x++) {
    const here = places[x];
    if (here === value) {
      if (!standing) found.push(x);
      standing = true;
      continue;
    }
    standing = false;
    const next = places[x + 1];
    if (next !== undefined && next !== value && (here - value) * (next - value) < 0) {
      found.push(x + (value - here) / (next - here));
    }
  }
  return found;
}
