import type { Track } from '../../../core/track/types.ts';
import { formatLength } from '../../../core/units/index.ts';
import { covers, isIn, isInside, type Scene, type SceneCorner, type SceneRoom } from '../../../scene/index.ts';
import { deckOf, roomConflicts, roomOf } from '../../../sim/study/route/index.ts';
import { draftTrack } from '../../routeEdits/draftTrack.ts';
import type { SessionState } from '../../types.ts';
import { placeWords } from '../../words.ts';
import { doorLeaf, onLeaf } from './doorLeaf.ts';
import type { RoomSubject } from './roomParts.ts';

/** Something that will not go well in a room, in words, and what of it is concerned. A fact of the drawing, not a finding. */
export interface RoomRemark {
  readonly subject: RoomSubject;
  readonly words: string;
}

type Show = Pick<SessionState, 'lengthUnit' | 'gradeForm'>;

/** Steps that a door is looked at in as it opens, and places along its leaf. */
const [openSteps, leafSteps] = [18, 8];

/** The tracks of a railway as drawn, for as long as their part of the scene is the same. */
const drawnTracks = new WeakMap<object, ReadonlyMap<string, Track>>();

function tracksOf(scene: Scene): ReadonlyMap<string, Track> {
  const known = drawnTracks.get(scene.tracks);
  if (known !== undefined) return known;
  const tracks = new Map(
    scene.tracks.flatMap(({ id }) => {
      const track = draftTrack(scene, id);
      return track === null ? [] : [[id, track] as const];
    }),
  );
  drawnTracks.set(scene.tracks, tracks);
  return tracks;
}

/** What of the room is in the way of the tracks or of itself; of one thing, or of all. */
export function roomRemarks(scene: Scene, show: Show, only: RoomSubject | null = null): readonly RoomRemark[] {
  const { room } = scene;
  if (room === undefined) return [];
  return [...deckRemarks(scene, show), ...standingRemarks(room), ...doorRemarks(room)].filter(
    ({ subject }) => only === null || subject === only,
  );
}

function deckRemarks(scene: Scene, show: Show): RoomRemark[] {
  const limits = roomOf(scene, ['room', 'obstacle']);
  if (limits === null) return [];
  const length = (metres: number): string =>
    show.lengthUnit === 'mm' ? formatLength(metres, { digits: 0 }) : formatLength(metres, { unit: 'in', fraction: 8 });
  return roomConflicts(tracksOf(scene), deckOf(scene), limits).map(({ kind, name, index, trackId, chainage, by }) => {
    const track = scene.tracks.find(({ id }) => id === trackId)?.name ?? trackId;
    const at = `${length(by)} at ${placeWords(chainage, show)}`;
    if (kind === 'room' || index === null)
      return { subject: 'walls', words: `The deck of ${track} reaches out of the room by ${at}` };
    return { subject: `obstacle:${index}`, words: `The deck of ${track} runs into ${name} by ${at}` };
  });
}

/** Boards and obstacles that stand outside the walls. */
function standingRemarks({ corners, obstacles = [], baseboards = [] }: SceneRoom): RoomRemark[] {
  if (corners === undefined) return [];
  const middle = corners.reduce((sum, { xMm, yMm }) => ({ xMm: sum.xMm + xMm, yMm: sum.yMm + yMm }), {
    xMm: 0,
    yMm: 0,
  });
  // Looked at a millimetre towards the middle of the room: what stands against a wall stands inside it.
  const nudged = ({ xMm, yMm }: SceneCorner): SceneCorner => {
    const [dx, dy] = [middle.xMm / corners.length - xMm, middle.yMm / corners.length - yMm];
    const far = Math.max(1, Math.hypot(dx, dy));
    return { xMm: xMm + (2 * dx) / far, yMm: yMm + (2 * dy) / far };
  };
  const outside = (places: readonly SceneCorner[]): boolean =>
    places.some((place) => !isInside(nudged(place), corners));
  return [
    ...baseboards.flatMap(({ xMm, yMm, lengthMm, widthMm }, index): RoomRemark[] => {
      const board = [0, 1, 2, 3].map((k) => ({
        xMm: xMm + (k % 2) * lengthMm,
        yMm: yMm + (k > 1 ? widthMm : 0),
      }));
      const words = `Board ${index + 1} reaches out of the room`;
      return outside(board) ? [{ subject: `board:${index}`, words }] : [];
    }),
    ...obstacles.flatMap(({ name, outline = [], round }, index): RoomRemark[] => {
      const places = round === undefined ? outline : [round];
      return outside(places) ? [{ subject: `obstacle:${index}`, words: `${name} stands outside the walls` }] : [];
    }),
  ];
}

/** Doors whose leaf meets a board or an obstacle before it is open. */
function doorRemarks(room: SceneRoom): RoomRemark[] {
  const { doors = [], obstacles = [], baseboards = [] } = room;
  return doors.flatMap((door, index): RoomRemark[] => {
    const leaf = doorLeaf(room, door);
    if (leaf === null) return [];
    for (let step = 1; step <= openSteps; step++) {
      for (let out = 1; out <= leafSteps; out++) {
        const place = onLeaf(leaf, door.widthMm, out / leafSteps, step / openSteps);
        const board = baseboards.findIndex((one) => covers(one, place));
        const obstacle = obstacles.find((one) => isIn(place, one));
        const met = board >= 0 ? `board ${board + 1}` : obstacle?.name;
        if (met === undefined) continue;
        const degrees = Math.round(((leaf.swing * step) / openSteps) * (180 / Math.PI));
        return [{ subject: `door:${index}`, words: `Door ${index + 1} strikes ${met} when ${degrees}° open` }];
      }
    }
    return [];
  });
}
