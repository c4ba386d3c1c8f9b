/** What a file of centrelines may hold at most, so that a hostile or broken one costs little. */
export const drawingLimits = {
  /** Characters of text. */
  text: 8_000_000,
  /** Points of all lines together. */
  points: 200_000,
  /** Groups within groups. */
  depth: 64,
  /** Problems that are told; more say no more. */
  problems: 20,
} as const;

/** Curves that are no arcs are drawn by chords this near, mm. */
export const chordErrorMm = 0.01;
