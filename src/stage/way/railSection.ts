import { wayFace } from '../palette.ts';
import type { WayMeasures } from './measures.ts';
import type { Section, SectionPoint } from './ribbon.ts';

/** Share of the rail's height that head and foot take, and of the head's width that the web takes. */
const headDepth = 0.3;
const footDepth = 0.14;
const webWidth = 0.4;

/**
 * The section of one rail: head, web and foot, its middle `middle` (m) to the left of the centreline, top at the rail top.
 * The underside of the foot is left out: it lies on the sleepers.
 */
export function railOutline(m: WayMeasures, middle: number): Section {
  const head = m.railHead / 2;
  const web = head * webWidth;
  const foot = m.railFoot / 2;
  const neck = -m.railHeight * headDepth;
  const toe = -m.railHeight * (1 - footDepth);
  const bottom = -m.railHeight;
  const corners: SectionPoint[] = [
    [-head, 0],
    [head, 0],
    [head, neck],
    [web, neck],
    [web, toe],
    [foot, toe],
    [foot, bottom],
    [-foot, bottom],
    [-foot, toe],
    [-web, toe],
    [-web, neck],
    [-head, neck],
  ];
  const hidden = new Set([2, 6, 10]);
  const roles = (i: number): number | null => {
    if (hidden.has(i)) return null;
    return i === 0 || i === 4 || i === 8 ? wayFace.railTop : wayFace.railSide;
  };
  return { outline: corners.map(([left, up]) => [left + middle, up]), role: roles };
}
