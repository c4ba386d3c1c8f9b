/** Where the lens lies on the stage, px. */
export interface LensCircle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Share of the stage's height and width that the lens's radius takes at most; what it leaves free around itself, px. */
const ofHeight = 0.475;
const ofWidth = 0.25;
const margin = 12;
const fromRight = 22;

/** Height that the strip of controls along the foot takes when the lens has to lie above it, px. */
const controls = 44;

/** Where the lens lies when it is fully open: at the right, as large as the stage allows. */
export function lensCircle(width: number, height: number): LensCircle {
  const radius = Math.max(60, Math.min(ofHeight * height, ofWidth * width, (height - 2 * margin) / 2));
  const x = width - radius - Math.min(fromRight, Math.max(4, (width - 2 * radius) / 2));
  const tall = height > 2 * radius + controls + 2 * margin;
  const y = tall ? Math.min(height / 2, height - controls - radius - margin) : height / 2;
  return { x, y, radius };
}

/** How far the picture behind has to move left (px) so that the joint at `ringX` lies clear of the lens. */
export function shiftForLens(ringX: number, lens: LensCircle): number {
  const free = lens.x - lens.radius;
  const wanted = Math.max(40, free * 0.62);
  return Math.max(0, ringX - wanted);
}

/** Part-way between the ring on the joint and the open lens: the lens grows along the two tangents. */
export function growing(ring: LensCircle, open: LensCircle, share: number): LensCircle {
  const mix = (a: number, b: number): number => a + (b - a) * share;
  return { x: mix(ring.x, open.x), y: mix(ring.y, open.y), radius: mix(ring.radius, open.radius) };
}

/** A straight line, px. */
export type Tangent = readonly [x1: number, y1: number, x2: number, y2: number];

/** The two outer tangents of ring and lens; none while one circle lies inside the other. */
export function tangents(a: LensCircle, b: LensCircle): readonly Tangent[] {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const away = Math.hypot(dx, dy);
  const difference = b.radius - a.radius;
  if (away <= Math.abs(difference)) return [];
  const heading = Math.atan2(dy, dx);
  const lean = Math.acos(-difference / away);
  return [1, -1].map((side): Tangent => {
    const angle = heading + side * lean;
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    return [a.x + a.radius * cos, a.y + a.radius * sin, b.x + b.radius * cos, b.y + b.radius * sin];
  });
}
