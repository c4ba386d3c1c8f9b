import { formatAngle, formatLength } from '../../../core/units/index.ts';
import { extentOfObstacle, type Scene, type SceneRoom, sideMm } from '../../../scene/index.ts';
import type { SessionState } from '../../types.ts';
import { asRectangle, usualSwingDeg } from '../proposals.ts';
import type { RoomHandle } from './roomHandles.ts';

/** What a handle of the room sets, in numbers, as the room now is: what it sets first. */
export function roomWords(
  { room, structures = [] }: Scene,
  { part }: RoomHandle,
  { lengthUnit }: Pick<SessionState, 'lengthUnit'>,
): readonly string[] {
  const length = (mm: number): string =>
    lengthUnit === 'mm'
      ? formatLength(mm / 1000, { digits: 0 })
      : formatLength(mm / 1000, { unit: 'in', fraction: 16 });
  const at = (xMm: number, yMm: number): string => `${length(xMm)} east, ${length(yMm)} north`;
  if (part.of === 'structure') {
    const { name, outline, bottomMm, topMm } = structures[part.index];
    const [low, high] = extentOfObstacle({ name, outline });
    const size = `${length(high.xMm - low.xMm)} by ${length(high.yMm - low.yMm)}`;
    const place = at(low.xMm, low.yMm);
    return [
      ...(part.does === 'middle' ? [place, size] : [size, place]),
      `${length(bottomMm)} to ${length(topMm)} high`,
    ];
  }
  if (room === undefined) return [];
  const { corners = [], doors = [], obstacles = [], baseboards = [] } = room;
  switch (part.of) {
    case 'corner': {
      const { xMm, yMm } = corners[part.index];
      const before = (part.index + corners.length - 1) % corners.length;
      return [at(xMm, yMm), `walls ${length(sideMm(corners, before))} and ${length(sideMm(corners, part.index))}`];
    }
    case 'wall':
    case 'split':
      return [
        `wall ${part.index + 1} is ${length(sideMm(corners, part.index))}`,
        ...acrossWords(room, part.index, length),
      ];
    case 'door': {
      const { wall, fromMm, widthMm, opens, swingDeg = usualSwingDeg } = doors[part.index];
      const place = `${length(fromMm)} from corner ${wall}`;
      const width = `${length(widthMm)} wide`;
      if (part.does === 'leaf')
        return [`opens ${formatAngle((swingDeg * Math.PI) / 180, { digits: 0 })} ${opens}`, width];
      return part.does === 'place' ? [place, width] : [width, place];
    }
    case 'board': {
      const { xMm, yMm, lengthMm, widthMm } = baseboards[part.index];
      const size = `${length(lengthMm)} by ${length(widthMm)}`;
      return part.does === 'middle' ? [at(xMm, yMm), size] : [size, at(xMm, yMm)];
    }
    case 'obstacle': {
      const obstacle = obstacles[part.index];
      const [low, high] = extentOfObstacle(obstacle);
      const { round } = obstacle;
      const size =
        round === undefined
          ? `${length(high.xMm - low.xMm)} by ${length(high.yMm - low.yMm)}`
          : `${length(round.diameterMm)} across`;
      const place = round === undefined ? at(low.xMm, low.yMm) : at(round.xMm, round.yMm);
      return part.does === 'middle' ? [place, size] : [size, place];
    }
  }
}

/** How far a wall is from the one opposite, where the room is a rectangle. */
function acrossWords({ corners = [] }: SceneRoom, wall: number, length: (mm: number) => string): string[] {
  return asRectangle(corners) !== null ? [`${length(sideMm(corners, (wall + 1) % 4))} to the one opposite`] : [];
}
