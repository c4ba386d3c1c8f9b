import { mixed } from './theme.ts';

/** Colours of the drawing, as the browser writes them. Shaders take them as they are: nothing here is lit or tone-mapped. */
export const paper = {
  stage: '#FBFAF6',
  table: '#F4F1E8',
  tableSide: '#E6E0D1',
  tableEnd: '#DDD6C4',
  tableEdge: '#C9C1AC',
  grid: '#E2DBCA',
  shadow: '#5B5240',
  ink: '#18222E',
  ink2: '#46505C',
  mark: '#6A28C0',
} as const;

/** What a face of a vehicle is: the index into its palette. */
export const face = {
  top: 0,
  side: 1,
  end: 2,
  frame: 3,
  frameTop: 4,
  glass: 5,
  metal: 6,
  metalDark: 7,
  wheel: 8,
  hub: 9,
  inside: 10,
} as const;

/** What a stroke on a vehicle is: the index into its ink palette. */
export const stroke = { edge: 0, fine: 1, metal: 2 } as const;

export interface StockPalette {
  /** By `face`. */
  readonly faces: readonly string[];
  /** By `stroke`. */
  readonly strokes: readonly string[];
  /** Multiplies the weight of every stroke. */
  readonly weight: number;
}

const running = ['#AEB7C0', '#6A727C', '#ECEEF0', '#6A727C'] as const;

/** Vehicles, engines and the two vehicles of the chosen joint. */
export const stockPalettes: Readonly<Record<'vehicle' | 'engine' | 'chosen', StockPalette>> = {
  vehicle: {
    faces: ['#D8DCE0', '#AEB7C0', '#98A3AF', '#3A4653', '#55616D', '#6F7C89', ...running, '#8F99A4'],
    strokes: ['#18222E', '#7D8894', '#18222E'],
    weight: 1,
  },
  engine: {
    faces: ['#566577', '#2C3948', '#223041', '#1C2733', '#33404E', '#8D9AA8', ...running, '#1C2733'],
    strokes: ['#18222E', '#55636F', '#18222E'],
    weight: 1,
  },
  chosen: {
    faces: ['#E9E0F6', '#C9B5EC', '#B79DE4', '#2C3948', '#4B4170', '#9A7BD6', ...running, '#A88BDD'],
    strokes: ['#6A28C0', '#9C7FD2', '#18222E'],
    weight: 1.35,
  },
};

/** The same under the lens, where faces are large: paler, so that lines and letters carry the picture. */
export const lensPalettes: typeof stockPalettes = {
  vehicle: {
    ...stockPalettes.vehicle,
    faces: ['#E6E9EC', '#D3D9DF', '#C3CAD2', '#2C3948', '#46525F', '#A3AEB9', ...running, '#B4BDC6'],
  },
  engine: {
    ...stockPalettes.engine,
    faces: ['#8290A0', '#5F6F80', '#526170', '#2C3948', '#46525F', '#B7C1CB', ...running, '#46525F'],
  },
  chosen: {
    ...stockPalettes.chosen,
    faces: ['#EFE8FA', '#E2D8F4', '#D3C4EF', '#2C3948', '#46525F', '#BFA8E6', ...running, '#C9B5EC'],
    weight: 1.5,
  },
};

/** What a face of the way is. */
export const wayFace = {
  top: 0,
  side: 1,
  under: 2,
  underlay: 3,
  sleeper: 4,
  sleeperSide: 5,
  railTop: 6,
  railSide: 7,
  nut: 8,
  bearer: 9,
  bearerTop: 10,
} as const;

/** Faces of trackbed, track and supports, by `wayFace`. */
export const wayFaces: readonly string[] = [
  '#F1E8D4',
  '#BFA97F',
  '#A08C66',
  '#D3BF97',
  '#CFC4A9',
  '#B3A686',
  '#98A2AD',
  '#5B6672',
  '#46505C',
  '#CFC4AC',
  '#E3DAC6',
];

/** Faces of the way under the lens. */
export const lensWayFaces: readonly string[] = [
  '#F6EFDF',
  '#F0E7D3',
  '#D9C8A3',
  '#E6D9BC',
  '#DDD3BD',
  '#C9BFA8',
  '#DDE0E4',
  '#D0D5DB',
  '#7A8590',
  '#E3DFD3',
  '#EFEBE1',
];

/** The same where a support is named by a failing finding. */
export const markedFaces: readonly string[] = wayFaces.map((colour, role) =>
  role === wayFace.nut
    ? paper.mark
    : role === wayFace.bearer
      ? '#C9B5EC'
      : role === wayFace.bearerTop
        ? '#E9E0F6'
        : colour,
);

/** What a stroke of the way is. */
export const wayStroke = { edge: 0, rail: 1, rod: 2, fine: 3, mark: 4, table: 5 } as const;

/** Strokes of trackbed, track and supports, by `wayStroke`. */
export const wayStrokes: readonly string[] = ['#8B7A58', '#2F3946', '#6A727C', '#D2BF98', '#6A28C0', '#C9C1AC'];

/** How far the colours of a faint railway go towards the paper: its faces nearly all the way, its lines half. */
const faintFace = 0.7;
const faintStroke = 0.42;

/** The same colours for a railway that is only shown beside another. */
export const faintFaces = (colours: readonly string[]): string[] =>
  colours.map((colour) => mixed(colour, paper.stage, faintFace));
export const faintStrokes = (colours: readonly string[]): string[] =>
  colours.map((colour) => mixed(colour, paper.stage, faintStroke));

/** Faces of the room's walls and of what stands on its floor: top, sides. They stay behind the boards. */
export const roomFaces: readonly string[] = ['#F1EEE5', '#E9E5DA'];

/** Faces of walls, piers and portals beside the line: top, sides, underneath. */
export const structureFaces: readonly string[] = ['#E4E0D6', '#CDC8BC', '#B5AFA2'];
