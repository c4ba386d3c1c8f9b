import { cos, sin } from '../../math/index.ts';
import { type Track, trackPoint } from '../../track/index.ts';
import type { Structure } from '../types.ts';

/** A portal over a track, lengths m: clear width, clear height over the rail, how far it reaches along the track, thickness of its walls. */
export interface Portal {
  readonly name: string;
  readonly chainage: number;
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly thickness: number;
  /** Its middle to the left of the track, m. */
  readonly offset: number;
}

/** The prisms of a portal over a track: a wall to either side and a lintel. The track's own chainages; square to it in the portal's middle. */
export function portalStructures(track: Track, portal: Portal): Structure[] {
  const { name, chainage, width, height, depth, thickness, offset } = portal;
  const here = trackPoint(track, chainage);
  const cosine = cos(here.heading);
  const sine = sin(here.heading);
  const block = (right: number, left: number, bottom: number, top: number): Structure => ({
    name,
    outline: [
      [-depth / 2, right],
      [depth / 2, right],
      [depth / 2, left],
      [-depth / 2, left],
    ].map(([along, across]) => [
      here.x + along * cosine - (across + offset) * sine,
      here.y + along * sine + (across + offset) * cosine,
    ]),
    bottom: here.z + bottom,
    top: here.z + top,
  });
  return [
    block(-width / 2 - thickness, -width / 2, -thickness, height + thickness),
    block(width / 2, width / 2 + thickness, -thickness, height + thickness),
    block(-width / 2, width / 2, height, height + thickness),
  ];
}

/** A wall along a track, lengths m: chainages it runs between, side (1: left), from the track's middle to its near face, its top over the rail and its thickness. */
export interface WallBeside {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly side: 1 | -1;
  readonly distance: number;
  readonly height: number;
  readonly thickness: number;
}

/** Longest piece of a wall along a curve, m: its face is 0.03 mm nearer or further than a round one on 400 mm. */
const wallPiece = 0.01;

/** The prisms of a wall that follows a track, level in steps of 10 mm; foot a thickness below the rail. */
export function wallStructures(track: Track, wall: WallBeside): Structure[] {
  const { name, from, to, side, distance, height, thickness } = wall;
  const pieces = Math.max(1, Math.ceil((to - from) / wallPiece));
  const corner = (piece: number, away: number): readonly [number, number, number] => {
    const here = trackPoint(track, from + ((to - from) * piece) / pieces);
    const across = side * away;
    return [here.x - across * sin(here.heading), here.y + across * cos(here.heading), here.z];
  };
  return Array.from({ length: pieces }, (_, piece) => {
    const near = [corner(piece, distance), corner(piece + 1, distance)];
    const far = [corner(piece + 1, distance + thickness), corner(piece, distance + thickness)];
    const round = [...near, ...far].map(([x, y]) => [x, y] as const);
    const low = Math.min(near[0][2], near[1][2]);
    const high = Math.max(near[0][2], near[1][2]);
    return { name, outline: side > 0 ? round : round.reverse(), bottom: low - thickness, top: high + height };
  });
}
