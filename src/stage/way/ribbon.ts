import type { Vec3 } from '../../core/math/vec3.ts';
import { line, type Strokes } from '../ink/strokes.ts';
import { polygon, type Solid } from '../solid/solid.ts';
import { unpainted } from './paintedStrip.ts';
import type { Stations } from './stations.ts';

/** A place in the cross-section: metres to the left of the centreline and above the rail top. */
export type SectionPoint = readonly [left: number, up: number];

/** The place of a section point at one station, in the room, m. */
export function sectionPlace(stations: Stations, i: number, [left, up]: SectionPoint): Vec3 {
  return [
    stations.centre[3 * i] + left * stations.left[2 * i],
    stations.centre[3 * i + 1] + left * stations.left[2 * i + 1],
    stations.centre[3 * i + 2] + up,
  ];
}

/** A cross-section drawn along the track: its outline starts on top and goes from right to left. */
export interface Section {
  readonly outline: readonly SectionPoint[];
  /** Role of the side from corner i to corner i + 1; null leaves it out. */
  readonly role: (i: number) => number | null;
}

export interface RibbonOptions {
  /** Closes the ends: only sound for an outline without inward corners. */
  readonly capped?: boolean;
  /** The side from this corner on is painted by chainage and distance left; all others are not. */
  readonly painted?: number;
}

/** Adds a cross-section along the stations. */
export function ribbon(solid: Solid, stations: Stations, section: Section, options: RibbonOptions = {}): void {
  const { outline } = section;
  for (let i = 0; i < outline.length; i++) {
    const role = section.role(i);
    if (role === null) continue;
    band(solid, stations, outline[i], outline[(i + 1) % outline.length], role);
    if (options.painted !== undefined)
      paintBand(solid, stations, outline[i], outline[(i + 1) % outline.length], i === options.painted);
  }
  if (!options.capped) return;
  const last = stations.count - 1;
  const endRole = section.role(1) ?? section.role(0) ?? 0;
  polygon(
    solid,
    outline.map((point) => sectionPlace(stations, 0, point)),
    endRole,
  );
  polygon(solid, outline.map((point) => sectionPlace(stations, last, point)).reverse(), endRole);
  if (options.painted !== undefined) for (let i = 0; i < 2 * outline.length; i++) solid.paint.push(...unpainted);
}

function paintBand(solid: Solid, stations: Stations, from: SectionPoint, to: SectionPoint, painted: boolean): void {
  for (let i = 0; i < stations.count; i++) {
    for (const point of [from, to]) solid.paint.push(...(painted ? [stations.chainage[i], point[0]] : unpainted));
  }
}

function band(solid: Solid, stations: Stations, from: SectionPoint, to: SectionPoint, role: number): void {
  const across = to[0] - from[0];
  const up = to[1] - from[1];
  const size = Math.hypot(across, up);
  const first = solid.role.length;
  for (let i = 0; i < stations.count; i++) {
    for (const point of [from, to]) solid.position.push(...sectionPlace(stations, i, point));
    const x = (-up / size) * stations.left[2 * i];
    const y = (-up / size) * stations.left[2 * i + 1];
    const z = across / size;
    solid.normal.push(x, y, z, x, y, z);
    solid.role.push(role, role);
    if (i === 0) continue;
    const a = first + 2 * (i - 1);
    solid.index.push(a, a + 2, a + 3, a, a + 3, a + 1);
  }
}

/** Inks a line that keeps its place in the cross-section. */
export function ribbonLine(
  strokes: Strokes,
  stations: Stations,
  point: SectionPoint,
  weight: number,
  role: number,
  width = 0,
): void {
  let before = sectionPlace(stations, 0, point);
  for (let i = 1; i < stations.count; i++) {
    const next = sectionPlace(stations, i, point);
    line(strokes, before, next, weight, role, width, stations.chainage[i - 1]);
    before = next;
  }
}
