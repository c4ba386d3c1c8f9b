/** What a ring has to be cut to so that it lies as a helix without being forced sideways. */
export interface FlatRing {
  /** Radius of the flat ring's centreline, m. */
  readonly radius: number;
  /** Angle of the flat ring for one turn in plan, rad: less than a whole ring. */
  readonly anglePerTurn: number;
}

/**
 * The flat ring that lies as a helix of plan `radius`, m, at `grade` (rise over plan distance) with its surface level across.
 *
 * Such a surface is a helicoid. Its lines out from the axis are straight, so that all the helix' curvature, R/(R²+c²) with c = g·R, lies within the surface:
 * bent without being stretched sideways, the strip keeps it, and the flat ring has the radius R·(1+g²). A turn is 2πR·√(1+g²) long. (Curvature of a helix:
 * any textbook of differential geometry; edges of the strip are a little strained all the same, for a helicoid cannot be laid flat.)
 */
export function flatRing(radius: number, grade: number): FlatRing {
  const slant = 1 + grade * grade;
  return { radius: radius * slant, anglePerTurn: (2 * Math.PI) / Math.sqrt(slant) };
}
