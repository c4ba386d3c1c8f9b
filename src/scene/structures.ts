import type { Problem } from './checks/problems.ts';
import { twiceArea } from './room/index.ts';
import type { SceneStructure } from './schema/schema.ts';

/** The corners of a structure counter-clockwise, whichever way round the file gives them. */
export const cornersOf = ({ outline }: SceneStructure): SceneStructure['outline'] =>
  twiceArea(outline) < 0 ? [...outline].reverse() : outline;

/** What is wrong with one structure: an outline that bends inwards or has no area, a top below its bottom. */
export function structureProblems(structure: SceneStructure, path: string): Problem[] {
  const problems: Problem[] = [];
  const corners = cornersOf(structure);
  const bent = corners.findIndex((b, i) => {
    const a = corners[(i + corners.length - 1) % corners.length];
    const c = corners[(i + 1) % corners.length];
    return (b.xMm - a.xMm) * (c.yMm - b.yMm) - (b.yMm - a.yMm) * (c.xMm - b.xMm) <= 0;
  });
  if (bent >= 0 || turnsOf(corners) > 1) {
    problems.push({
      path: `${path}.outline`,
      found:
        bent < 0
          ? 'corners that go round more than once'
          : `corners that do not turn at ${corners[bent].xMm}, ${corners[bent].yMm}`,
      allowed: 'a convex outline; make two structures of one that bends inwards',
      example: '[{"xMm":0,"yMm":0},{"xMm":60,"yMm":0},{"xMm":60,"yMm":30},{"xMm":0,"yMm":30}]',
    });
  }
  if (structure.topMm <= structure.bottomMm) {
    problems.push({
      path: `${path}.topMm`,
      found: `a top at ${structure.topMm} mm over a bottom at ${structure.bottomMm} mm`,
      allowed: 'a top above the bottom',
      example: String(structure.bottomMm + 100),
    });
  }
  return problems;
}

/** How often corners that all turn left go round: a star does so twice. */
function turnsOf(corners: SceneStructure['outline']): number {
  let falls = 0;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length];
    const c = corners[(i + 2) % corners.length];
    // Once round, a side turns from going up to going down (or level) exactly once.
    if (b.yMm - a.yMm > 0 && c.yMm - b.yMm <= 0) falls++;
  });
  return falls;
}
