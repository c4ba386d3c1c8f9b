/** A place on the floor, m. */
export type FloorPlace = readonly [x: number, y: number];

/** The room as it is drawn, in metres. Corners run counter-clockwise. */
export interface DrawnRoom {
  readonly corners: readonly FloorPlace[];
  readonly doors: readonly DrawnDoor[];
  readonly obstacles: readonly DrawnObstacle[];
}

export interface DrawnDoor {
  /** Side of the room from corner `wall` to the next, and the opening along it from that corner, m. */
  readonly wall: number;
  readonly from: number;
  readonly to: number;
  /** Foot of the hinge; direction of the closed leaf from there, rad, and how far it swings, left positive. */
  readonly hinge: FloorPlace;
  readonly closed: number;
  readonly swing: number;
}

export interface DrawnObstacle {
  readonly outline: readonly FloorPlace[];
  /** Whether its outline stands for a circle: its flanks then meet without a line. */
  readonly round: boolean;
  /** Above the floor, m; null: up to the ceiling. */
  readonly height: number | null;
}

interface Corner {
  readonly xMm: number;
  readonly yMm: number;
}

/** The part of a room in a scene file that is drawn. */
export interface RoomOfFile {
  readonly corners?: readonly Corner[] | undefined;
  readonly doors?:
    | readonly {
        readonly wall: number;
        readonly fromMm: number;
        readonly widthMm: number;
        readonly hinge: 'near' | 'far';
        readonly opens: 'inwards' | 'outwards';
        readonly swingDeg?: number | undefined;
      }[]
    | undefined;
  readonly obstacles?:
    | readonly {
        readonly outline?: readonly Corner[] | undefined;
        readonly round?: (Corner & { readonly diameterMm: number }) | undefined;
        readonly heightMm?: number | undefined;
      }[]
    | undefined;
}

const metres = ({ xMm, yMm }: Corner): FloorPlace => [xMm / 1000, yMm / 1000];

const runsClockwise = (outline: readonly FloorPlace[]): boolean =>
  outline.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = outline[(i + 1) % outline.length];
    return sum + x * nextY - nextX * y;
  }, 0) < 0;

/** Sides that a circle is drawn with: at 300 mm across they stand off it by 0.3 mm. */
const roundSides = 48;

const roundPlaces = ({ xMm, yMm, diameterMm }: Corner & { readonly diameterMm: number }): FloorPlace[] =>
  Array.from({ length: roundSides }, (_, k): FloorPlace => {
    const angle = (2 * Math.PI * k) / roundSides;
    return [(xMm + (diameterMm / 2) * Math.cos(angle)) / 1000, (yMm + (diameterMm / 2) * Math.sin(angle)) / 1000];
  });

/** How far a door opens where the file does not say, degrees. */
const usualSwingDeg = 90;

/** What of a room is drawn, whichever way round the file gives its corners. */
export function drawnRoom({ corners: file = [], doors = [], obstacles = [] }: RoomOfFile): DrawnRoom {
  const given = file.map(metres);
  const turned = runsClockwise(given);
  const count = given.length;
  return {
    corners: turned ? given.toReversed() : given,
    doors: doors.map((door): DrawnDoor => {
      const first = given[door.wall - 1];
      const next = given[door.wall % count];
      const along = Math.atan2(next[1] - first[1], next[0] - first[0]);
      const length = Math.hypot(next[0] - first[0], next[1] - first[1]);
      const [near, far] = [door.fromMm / 1000, (door.fromMm + door.widthMm) / 1000];
      const jamb = door.hinge === 'near' ? near : far;
      // The room is to the left of a wall whose corners run counter-clockwise.
      const inside = (turned ? -1 : 1) * (door.hinge === 'near' ? 1 : -1);
      const swing = ((door.swingDeg ?? usualSwingDeg) * Math.PI) / 180;
      return {
        wall: turned ? (2 * count - 1 - door.wall) % count : door.wall - 1,
        from: turned ? length - far : near,
        to: turned ? length - near : far,
        hinge: [first[0] + jamb * Math.cos(along), first[1] + jamb * Math.sin(along)],
        closed: door.hinge === 'near' ? along : along + Math.PI,
        swing: swing * inside * (door.opens === 'inwards' ? 1 : -1),
      };
    }),
    obstacles: obstacles.map(({ outline = [], round, heightMm }): DrawnObstacle => {
      const places = round === undefined ? outline.map(metres) : roundPlaces(round);
      return {
        outline: runsClockwise(places) ? places.toReversed() : places,
        round: round !== undefined,
        height: heightMm === undefined ? null : heightMm / 1000,
      };
    }),
  };
}
