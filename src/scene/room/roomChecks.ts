import type { Problem } from '../checks/problems.ts';
import { outlineFault, sideMm } from './outline.ts';
import type { SceneRoom } from './roomSchema.ts';

/** Corners on a slant are not round numbers: a door may overrun its wall by this, mm. */
const wallSlackMm = 0.01;

/** What is wrong with a room whose shape is right: outlines that cross themselves, doors in walls that are not there or too short, doors that overlap. */
export function roomProblems(room: SceneRoom, path: string): Problem[] {
  const outlines = [
    ...(room.corners === undefined ? [] : [[`${path}.corners`, room.corners] as const]),
    ...(room.obstacles ?? []).flatMap(({ outline }, i) =>
      outline === undefined ? [] : [[`${path}.obstacles[${i}].outline`, outline] as const],
    ),
  ];
  return [
    ...outlines.flatMap(([at, outline]): Problem[] => {
      const fault = outlineFault(outline);
      if (fault === null) return [];
      const example = '[{"xMm":0,"yMm":0},{"xMm":4200,"yMm":0},{"xMm":4200,"yMm":3000},{"xMm":0,"yMm":3000}]';
      return [
        { path: at, found: fault, allowed: 'corners that go once round, whose sides only meet at them', example },
      ];
    }),
    ...doorProblems(room, `${path}.doors`),
  ];
}

function doorProblems({ corners, doors = [] }: SceneRoom, path: string): Problem[] {
  return doors.flatMap((door, index): Problem[] => {
    const at = `${path}[${index}]`;
    if (corners === undefined || door.wall > corners.length) {
      const allowed =
        corners === undefined
          ? 'doors together with the corners of the room'
          : `a wall from 1 to ${corners.length}, the number of corners`;
      return [{ path: `${at}.wall`, found: `wall ${door.wall}`, allowed, example: '1' }];
    }
    const wallMm = sideMm(corners, door.wall - 1);
    const endMm = door.fromMm + door.widthMm;
    if (endMm > wallMm + wallSlackMm) {
      return [
        {
          path: `${at}.fromMm`,
          found: `an opening from ${door.fromMm} to ${endMm} mm`,
          allowed: `one that ends within wall ${door.wall}, ${Math.floor(wallMm)} mm long`,
          example: String(Math.max(0, Math.floor(wallMm - door.widthMm))),
        },
      ];
    }
    const other = doors
      .slice(0, index)
      .findIndex((one) => one.wall === door.wall && one.fromMm < endMm && door.fromMm < one.fromMm + one.widthMm);
    if (other < 0) return [];
    return [
      {
        path: `${at}.fromMm`,
        found: `an opening that overlaps door ${other + 1}`,
        allowed: 'doors beside each other',
        example: '',
      },
    ];
  });
}
