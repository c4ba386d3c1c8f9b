/** What a scene file may hold at most, so that a hostile or broken file costs little. Generous for a club layout. */
export const bounds = {
  /** Characters of text. */
  text: 2_000_000,
  /** Values in the whole file, and how deep they nest. */
  values: 200_000,
  depth: 24,
  name: 120,
  sentence: 400,
  id: 60,
  tracks: 40,
  elements: 400,
  profilePoints: 400,
  supports: 2_000,
  stripJoints: 400,
  baseboards: 60,
  structures: 200,
  /** Corners of one outline. */
  corners: 24,
  doors: 12,
  obstacles: 40,
  stock: 200,
  couplings: 100,
  /** Axles of one rigid frame. */
  axles: 12,
  trains: 100,
  trainEntries: 120,
  /** Vehicles of one train once counts are written out. */
  vehicles: 120,
  trials: 200,
  /** Tracks that one route runs over, each as often as it does. */
  routeLegs: 60,
  orders: 200,
  /** Variants of a railway, and differences of each. */
  variants: 60,
  changes: 200,
  /** Kinds of vehicle that may stand on the tracks beside. */
  passers: 40,
  /** mm: 200 m of line, at gauges up to 130 mm. */
  lengthMm: 200_000,
  timeLimitS: 3_600,
} as const;
