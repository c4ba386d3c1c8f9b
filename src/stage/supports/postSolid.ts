import type { Vec3 } from '../../core/math/vec3.ts';
import { line } from '../ink/strokes.ts';
import { wayFace, wayStroke } from '../palette.ts';
import { outline, type Pen, polygon, type Solid } from '../solid/solid.ts';
import { stripUnderside, type WayMeasures } from '../way/measures.ts';
import type { Post, Rod } from './posts.ts';

/** Sizes in gauges: bearer along and down; rod and nut across. */
const bearerLength = 0.9;
const bearerDepth = 0.42;
const bearerBeyond = 0.75;
const rodWidth = 0.2;
const nutWidth = 0.62;
const nutDepth = 0.22;

/** Weights, screen pixels. */
const rodWeight = 0.95;
const edgeWeight = 0.9;

/** Weight of rods that stand only for looks. */
const assumedWeight = 0.9;

/** Weights of a support that a failing finding names. */
const markedRodWeight = 2;
const markedEdgeWeight = 1.2;

/** Draws one support: its bearer into one solid, rods and nuts into another, which the lens leaves out. */
export function drawPost(bearer: Solid, hangers: Solid, post: Post, m: WayMeasures, marked = false): void {
  const top = post.centre[2] - stripUnderside(m);
  if (post.index === null) {
    for (const { x, y, foot } of post.rods) {
      line(hangers.strokes, [x, y, foot], [x, y, top], assumedWeight, wayStroke.table, rodWidth * m.gauge);
    }
    return;
  }
  const half = m.stripWidth / 2 + bearerBeyond * m.gauge;
  const bottom = top - bearerDepth * m.gauge;
  const pen: Pen = marked
    ? { weight: markedEdgeWeight, role: wayStroke.mark }
    : { weight: edgeWeight, role: wayStroke.edge };
  const roles = [wayFace.bearerTop, wayFace.bearer] as const;
  slab(bearer, post, [-half, half], (bearerLength * m.gauge) / 2, [bottom, top], roles, pen);
  const weight = marked ? markedRodWeight : rodWeight;
  const ink = marked ? wayStroke.mark : wayStroke.rod;
  for (const rod of post.rods) {
    line(hangers.strokes, [rod.x, rod.y, rod.foot], [rod.x, rod.y, rod.head], weight, ink, rodWidth * m.gauge);
    for (const place of [bottom - nutDepth * m.gauge, top]) nut(hangers, post, rod, place, m);
  }
}

function nut(solid: Solid, post: Post, rod: Rod, bottom: number, m: WayMeasures): void {
  const across = rod.side * Math.hypot(rod.x - post.centre[0], rod.y - post.centre[1]);
  const half = (nutWidth * m.gauge) / 2;
  const roles = [wayFace.nut, wayFace.nut] as const;
  slab(solid, post, [across - half, across + half], half, [bottom, bottom + nutDepth * m.gauge], roles, null);
}

/** A box square to the track at a support: `across` to the left, `half` ahead and back, m. */
function slab(
  solid: Solid,
  post: Post,
  across: readonly [number, number],
  half: number,
  z: readonly [number, number],
  roles: readonly [top: number, side: number],
  pen: Pen | null,
): void {
  const [lx, ly] = post.left;
  const at = (ahead: number, left: number, height: number): Vec3 => [
    post.centre[0] + left * lx + ahead * ly,
    post.centre[1] + left * ly - ahead * lx,
    height,
  ];
  const ring = (height: number): Vec3[] => [
    at(-half, across[0], height),
    at(half, across[0], height),
    at(half, across[1], height),
    at(-half, across[1], height),
  ];
  const low = ring(z[0]);
  const high = ring(z[1]);
  polygon(solid, high, roles[0]);
  polygon(solid, [...low].reverse(), roles[1]);
  for (let i = 0; i < 4; i++) {
    const j = (i + 1) % 4;
    polygon(solid, [low[i], low[j], high[j], high[i]], roles[1]);
  }
  if (pen === null) return;
  outline(solid, high, pen);
  outline(solid, low, pen);
}
