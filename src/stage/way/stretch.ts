import type { Track } from '../../core/track/types.ts';
import { line } from '../ink/strokes.ts';
import { wayFace, wayStroke } from '../palette.ts';
import { emptySolid, outline, polygon, type Solid } from '../solid/solid.ts';
import { stripTop, stripUnderside, type WayMeasures } from './measures.ts';
import { railOutline } from './railSection.ts';
import { ribbon, ribbonLine, type SectionPoint, sectionPlace } from './ribbon.ts';
import { layStations, type Stations, stationChainages } from './stations.ts';

/** A length of one track that is drawn and left out as one piece. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** About how long a stretch is, m: few enough pieces for the card, short enough to show detail only where it is near. */
const stretchLength = 0.8;

/** How far chords may lie off the track, m: a third of a pixel from afar; a third of a pixel under the lens. */
const farTolerance = 2e-4;
const nearTolerance = 2e-5;

export function cutStretches(length: number): Stretch[] {
  const count = Math.max(1, Math.round(length / stretchLength));
  return Array.from({ length: count }, (_, i) => ({ from: (length * i) / count, to: (length * (i + 1)) / count }));
}

/** Strokes' weights, screen pixels. */
const edgeWeight = 1;
const railWeight = 0.95;
const fineWeight = 0.7;

/** A stretch from afar: the strip, its edges, and the rails as lines of their head's width. */
export function farStretch(track: Track, stretch: Stretch, m: WayMeasures, breaks: readonly number[]): Solid {
  const solid = emptySolid();
  const stations = layStations(track, stationChainages(track, stretch.from, stretch.to, farTolerance, breaks));
  strip(solid, stations, m, { layers: false, capped: endsHere(track, stretch) });
  for (const side of [-1, 1]) {
    ribbonLine(
      solid.strokes,
      stations,
      [side * (m.gauge / 2 + m.railHead / 2), 0],
      railWeight,
      wayStroke.rail,
      m.railHead,
    );
  }
  buttLines(solid, track, stretch, m);
  return solid;
}

/** A stretch from nearby: strip in its layers, sleepers, rails in their section. */
export function nearStretch(track: Track, stretch: Stretch, m: WayMeasures, breaks: readonly number[]): Solid {
  const solid = emptySolid();
  const stations = layStations(track, stationChainages(track, stretch.from, stretch.to, nearTolerance, breaks));
  strip(solid, stations, m, { layers: true, capped: endsHere(track, stretch) });
  for (const side of [-1, 1] as const) {
    const middle = side * (m.gauge / 2 + m.railHead / 2);
    ribbon(solid, stations, railOutline(m, middle));
    for (const across of [-1, 1]) {
      ribbonLine(solid.strokes, stations, [middle + (across * m.railHead) / 2, 0], fineWeight, wayStroke.rail);
    }
    ribbonLine(solid.strokes, stations, [middle + (side * m.railFoot) / 2, -m.railHeight], fineWeight, wayStroke.rail);
  }
  sleepers(solid, track, stretch, m);
  buttLines(solid, track, stretch, m);
  return solid;
}

const endsHere = (track: Track, stretch: Stretch): boolean => stretch.from <= 0 || stretch.to >= track.length;

interface StripLook {
  readonly layers: boolean;
  readonly capped: boolean;
}

function strip(solid: Solid, stations: Stations, m: WayMeasures, { layers, capped }: StripLook): void {
  const half = m.stripWidth / 2;
  const top = -stripTop(m);
  const bottom = -stripUnderside(m);
  const deckTop = top - m.underlay;
  const corners: SectionPoint[] = layers
    ? [
        [-half, top],
        [half, top],
        [half, deckTop],
        [half, bottom],
        [-half, bottom],
        [-half, deckTop],
      ]
    : [
        [-half, top],
        [half, top],
        [half, bottom],
        [-half, bottom],
      ];
  const roles = layers
    ? [wayFace.top, wayFace.underlay, wayFace.side, wayFace.under, wayFace.side, wayFace.underlay]
    : [wayFace.top, wayFace.side, wayFace.under, wayFace.side];
  ribbon(solid, stations, { outline: corners, role: (i) => roles[i] }, { capped, ...(layers ? {} : { painted: 0 }) });
  if (capped) for (const i of [0, stations.count - 1]) capOutline(solid, stations, i, corners);
  for (const side of [-half, half]) {
    ribbonLine(solid.strokes, stations, [side, top], edgeWeight, wayStroke.edge);
    ribbonLine(solid.strokes, stations, [side, bottom], edgeWeight, wayStroke.edge);
    if (!layers) continue;
    ribbonLine(solid.strokes, stations, [side, deckTop], fineWeight, wayStroke.edge);
    for (const ply of [1, 2]) {
      ribbonLine(solid.strokes, stations, [side, deckTop - (ply * m.deck) / 3], fineWeight, wayStroke.fine);
    }
  }
}

function capOutline(solid: Solid, stations: Stations, i: number, corners: readonly SectionPoint[]): void {
  outline(
    solid,
    corners.map((corner) => sectionPlace(stations, i, corner)),
    { weight: edgeWeight, role: wayStroke.edge },
  );
}

function sleepers(solid: Solid, track: Track, stretch: Stretch, m: WayMeasures): void {
  if (m.sleeperHeight <= 0) return;
  const first = Math.ceil(stretch.from / m.sleeperPitch - 0.5);
  const list: number[] = [];
  for (let n = first; (n + 0.5) * m.sleeperPitch < stretch.to; n++) list.push((n + 0.5) * m.sleeperPitch);
  const halfLength = m.sleeperLength / 2;
  const halfWidth = m.sleeperWidth / 2;
  for (const middle of list) {
    const ends = layStations(track, [middle - halfWidth, middle + halfWidth]);
    const corner = (i: number, left: number, up: number) => sectionPlace(ends, i, [left, up]);
    const top = -m.railHeight;
    const bottom = -stripTop(m);
    const high = [
      corner(0, -halfLength, top),
      corner(1, -halfLength, top),
      corner(1, halfLength, top),
      corner(0, halfLength, top),
    ];
    const low = [
      corner(0, -halfLength, bottom),
      corner(1, -halfLength, bottom),
      corner(1, halfLength, bottom),
      corner(0, halfLength, bottom),
    ];
    polygon(solid, high, wayFace.sleeper);
    for (let i = 0; i < 4; i++) {
      const j = (i + 1) % 4;
      polygon(solid, [low[i], low[j], high[j], high[i]], wayFace.sleeperSide);
    }
  }
}

/** A butt joint without a splice shows as a line across the strip. */
function buttLines(solid: Solid, track: Track, stretch: Stretch, m: WayMeasures): void {
  const half = m.stripWidth / 2;
  const top = -stripTop(m);
  const bottom = -stripUnderside(m);
  for (const place of track.spec.profile.strip?.hinges ?? []) {
    if (place < stretch.from || place >= stretch.to) continue;
    const at = layStations(track, [place]);
    const ring: SectionPoint[] = [
      [-half, bottom],
      [-half, top],
      [half, top],
      [half, bottom],
    ];
    for (let i = 1; i < ring.length; i++) {
      line(solid.strokes, sectionPlace(at, 0, ring[i - 1]), sectionPlace(at, 0, ring[i]), edgeWeight, wayStroke.rail);
    }
  }
}
