/** Measures of the band in CSS pixels: on a desk, and on a tablet or under a finger. */
export interface Layout {
  readonly gutter: number;
  /** Width of the shared axis. */
  readonly body: number;
  readonly right: number;
  readonly transport: number;
  readonly marginRow: number;
  readonly narrow: boolean;
  /** The hand is a finger: what is pressed is at least `FINGER` each way. */
  readonly coarse: boolean;
  /** Device pixels a CSS pixel. */
  readonly density: number;
}

/** Least height and width of what a finger presses, CSS pixels. Source: WCAG 2.2, success criterion 2.5.8. */
export const FINGER = 24;

export function layoutOf(width: number, narrow: boolean, density: number, coarse = false): Layout {
  const gutter = narrow ? 196 : 248;
  const right = narrow ? 132 : 168;
  return {
    gutter,
    right,
    body: Math.max(1, width - gutter - right),
    transport: narrow ? 49 : 39,
    marginRow: coarse ? FINGER : narrow ? 18 : 16,
    narrow,
    coarse,
    density,
  };
}

/** Heights of the rows that do not depend on the trial, CSS pixels. */
export const ROW_HEIGHT = { section: 90, curvature: 25, speed: 22, axis: 18 } as const;

/** Height of the speed row: the playhead is moved in it. */
export const speedHeight = ({ coarse }: Layout): number => (coarse ? FINGER : ROW_HEIGHT.speed);

export interface CarpetLayout {
  /** From joint to joint downward. */
  readonly pitch: number;
  /** What can be seen at once. */
  readonly height: number;
  /** All joints; more than `height` when the carpet scrolls. */
  readonly full: number;
}

const CARPET_PITCH = 11;
const LEAST_PITCH = 5;
/** Above and below the joints. */
export const CARPET_MARGIN = 3;
/** Eight joints at the full pitch: what the band has room for. */
const CARPET_ROOM = 8 * CARPET_PITCH;

/** Joints keep their pitch up to eight, then draw closer down to 5 px, then scroll. */
export function carpetLayout(joints: number): CarpetLayout {
  const pitch = Math.max(LEAST_PITCH, Math.min(CARPET_PITCH, Math.floor(CARPET_ROOM / Math.max(1, joints))));
  const full = joints * pitch + 2 * CARPET_MARGIN;
  return { pitch, full, height: Math.min(full, CARPET_ROOM + 2 * CARPET_MARGIN) };
}

/** How far a carpet must be scrolled for a joint to be in sight with one neighbour, starting from where it is. */
export function scrollFor(joint: number, carpet: CarpetLayout, now: number): number {
  const top = CARPET_MARGIN + (joint - 1) * carpet.pitch;
  const bottom = CARPET_MARGIN + (joint + 2) * carpet.pitch;
  const most = carpet.full - carpet.height;
  const wanted = top < now ? top : bottom > now + carpet.height ? bottom - carpet.height : now;
  return Math.max(0, Math.min(most, wanted));
}
