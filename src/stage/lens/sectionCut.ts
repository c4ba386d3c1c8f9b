import type { Vec3 } from '../../core/math/vec3.ts';
import type { Track } from '../../core/track/types.ts';
import { line } from '../ink/strokes.ts';
import { wayFace, wayStroke } from '../palette.ts';
import { emptySolid, outline, polygon, type Solid } from '../solid/solid.ts';
import { stripTop, stripUnderside, type WayMeasures } from '../way/measures.ts';
import { railOutline } from '../way/railSection.ts';
import { type SectionPoint, sectionPlace } from '../way/ribbon.ts';
import { layStations } from '../way/stations.ts';

const pen = { weight: 1, role: wayStroke.rail };
const layerPen = { weight: 1, role: wayStroke.edge };

/** The way cut across at a path chainage (m), looking ahead: deck, underlay, sleeper, rails as filled outlines. */
export function sectionCut(track: Track, chainage: number, m: WayMeasures): Solid {
  const solid = emptySolid();
  const at = layStations(track, [chainage]);
  const put = (points: readonly SectionPoint[]): Vec3[] => points.map((point) => sectionPlace(at, 0, point));
  const slab = (half: number, top: number, bottom: number, role: number): void => {
    const corners = put([
      [-half, top],
      [half, top],
      [half, bottom],
      [-half, bottom],
    ]);
    polygon(solid, corners, role);
    outline(solid, corners, layerPen);
  };
  const half = m.stripWidth / 2;
  const top = -stripTop(m);
  const deckTop = top - m.underlay;
  const bottom = -stripUnderside(m);
  slab(half, deckTop, bottom, wayFace.side);
  if (m.underlay > 0) slab(half, top, deckTop, wayFace.underlay);
  for (const ply of [1, 2]) {
    const up = deckTop - (ply * m.deck) / 3;
    const [a, b] = put([
      [-half, up],
      [half, up],
    ]);
    line(solid.strokes, a, b, 0.7, wayStroke.fine);
  }
  if (m.sleeperHeight > 0) slab(m.sleeperLength / 2, -m.railHeight, top, wayFace.sleeper);
  for (const side of [-1, 1]) {
    const section = railOutline(m, side * (m.gauge / 2 + m.railHead / 2)).outline;
    railPieces(section).forEach((piece) => {
      polygon(solid, put(piece), wayFace.railTop);
    });
    outline(solid, put(section), pen);
  }
  return solid;
}

/** Head, web and foot of a rail's outline, each without inward corners. */
function railPieces(section: readonly SectionPoint[]): SectionPoint[][] {
  const pick = (...corners: number[]): SectionPoint[] => corners.map((i) => section[i]);
  return [pick(0, 1, 2, 11), pick(10, 3, 4, 9), pick(8, 5, 6, 7)];
}
