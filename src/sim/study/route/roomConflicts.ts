import { cos, hypot, sin } from '../../../core/math/index.ts';
import { trackPoint } from '../../../core/track/index.ts';
import type { Track, TrackPoint } from '../../../core/track/types.ts';
import { isInside, type Scene } from '../../../scene/index.ts';
import type { RoomConflict, RoomCorner, RoomKind, RouteRoom, RouteShape } from './types.ts';

/** Way between the places looked at, m: the bow of an arc of 100 mm between two stands out by 0.1 mm. */
export const lookedEvery = 0.01;

/** Less than this is no conflict, m: rounding of the sums. */
const tolerance = 1e-6;

const mm = 1e-3;

/** Of a conflict with no obstacle. */
const nobody = { name: null, index: null } as const;

/** What of a scene's room limits a route; only these kinds, all when left out. Null where the scene says nothing of any of them. */
export function roomOf({ room }: Scene, kinds: readonly RoomKind[] = ['room', 'obstacle', 'boards']): RouteRoom | null {
  if (room === undefined) return null;
  const has = (kind: RoomKind): boolean => kinds.includes(kind);
  const found: RouteRoom = {
    corners: has('room') ? (room.corners ?? null) : null,
    obstacles: (has('obstacle') ? (room.obstacles ?? []) : []).map(({ name, outline = [], round, heightMm }) => ({
      name,
      ...(round === undefined ? { outline } : { round }),
      top: heightMm === undefined ? null : (heightMm - room.datumAboveFloorMm) * mm,
    })),
    boards: has('boards') ? (room.baseboards ?? []) : [],
  };
  return found.corners === null && found.obstacles.length + found.boards.length === 0 ? null : found;
}

/** A deck on its way through the room, m: half its width, and from the rail to its underside. */
export interface Deck {
  readonly half: number;
  readonly depth: number;
}

/** Width of a deck in gauges where the scene gives none. Source: NEM 122 (2007), formation of H0 70 mm wide. */
const deckInGauges = 70 / 16.5;

/** The deck of a scene. */
export function deckOf({ deck, scale }: Scene): Deck {
  const { thicknessMm, underlayMm, trackMm, widthMm = deckInGauges * scale.gaugeMm } = deck;
  return { half: (widthMm / 2) * mm, depth: (thicknessMm + underlayMm + trackMm) * mm };
}

/**
 * Where decks reach out of a room, into an obstacle or beyond the boards, each place that is in the way with the spot where most of a deck is. Looked at every centimetre: a disc
 * as wide as the deck against walls and obstacles, either edge of the deck against the boards. An obstacle is passed over where its top is below the deck.
 */
export function roomConflicts(
  tracks: ReadonlyMap<string, Track>,
  { half, depth }: Deck,
  { corners, obstacles, boards }: RouteRoom,
): RoomConflict[] {
  const worst = new Map<string, RoomConflict>();
  const note = (conflict: RoomConflict): void => {
    if (!(conflict.by > tolerance)) return;
    const key = `${conflict.kind} ${conflict.index ?? ''}`;
    const before = worst.get(key);
    if (before === undefined || conflict.by > before.by) worst.set(key, conflict);
  };
  let point: TrackPoint | undefined;
  for (const [trackId, track] of tracks) {
    const steps = Math.max(1, Math.ceil(track.length / lookedEvery));
    for (let k = 0; k <= steps; k++) {
      const chainage = (k / steps) * track.length;
      point = trackPoint(track, chainage, point);
      const { x, y, z, heading } = point;
      const place = { trackId, chainage };
      if (corners !== null) note({ kind: 'room', ...nobody, ...place, by: half - insideBy(x, y, corners) });
      for (const [index, obstacle] of obstacles.entries()) {
        const { name, top } = obstacle;
        if (top !== null && z - depth >= top) continue;
        note({ kind: 'obstacle', name, index, ...place, by: half + into(x, y, obstacle) });
      }
      if (boards.length > 0) {
        const beyond = [half, -half].map((aside) =>
          beyondBoards(x - aside * sin(heading), y + aside * cos(heading), boards),
        );
        note({ kind: 'boards', ...nobody, ...place, by: Math.max(...beyond) });
      }
    }
  }
  return [...worst.values()];
}

/** How far inside an obstacle a place lies, m: to the nearest place of its edge; negative outside. */
const into = (x: number, y: number, shape: RouteShape): number =>
  'round' in shape
    ? (shape.round.diameterMm / 2) * mm - hypot(x - shape.round.xMm * mm, y - shape.round.yMm * mm)
    : insideBy(x, y, shape.outline);

/** How far inside an outline a place lies, m: to its nearest side; negative outside. */
function insideBy(x: number, y: number, corners: readonly RoomCorner[]): number {
  let nearest = Number.POSITIVE_INFINITY;
  corners.forEach((a, k) => {
    const b = corners[(k + 1) % corners.length];
    const [ax, ay] = [a.xMm * mm, a.yMm * mm];
    const [dx, dy] = [b.xMm * mm - ax, b.yMm * mm - ay];
    const along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy);
    const share = Math.min(Math.max(along, 0), 1);
    nearest = Math.min(nearest, hypot(x - ax - share * dx, y - ay - share * dy));
  });
  return isInside({ xMm: x / mm, yMm: y / mm }, corners) ? nearest : -nearest;
}

/** How far a place lies from the nearest board, m; 0 over one. */
const beyondBoards = (x: number, y: number, boards: RouteRoom['boards']): number =>
  boards.reduce((least, { xMm, yMm, lengthMm, widthMm }) => {
    const aside = Math.max(xMm * mm - x, x - (xMm + lengthMm) * mm, 0);
    const ahead = Math.max(yMm * mm - y, y - (yMm + widthMm) * mm, 0);
    return Math.min(least, hypot(aside, ahead));
  }, Number.POSITIVE_INFINITY);
