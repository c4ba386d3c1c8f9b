/** An angle brought to (-π, π], rad. */
export function wrappedAngle(angle: number): number {
  const turns = Math.round(angle / (2 * Math.PI));
  const wrapped = angle - turns * 2 * Math.PI;
  return wrapped <= -Math.PI ? wrapped + 2 * Math.PI : wrapped;
}
