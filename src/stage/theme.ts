import { Color } from 'three';

/** What a colour of the drawing is for: ground and faces, ink, or the grid on a table, which stays behind all ink. */
export type ColourUse = 'face' | 'ink' | 'grid';

/** Says which colour of the palette becomes which on the screen; `#RRGGBB` both. */
export type Theme = (hex: string, use: ColourUse) => string;

/** The drawing as its palette has it. */
export const plainTheme: Theme = (hex) => hex;

type Channels = readonly [red: number, green: number, blue: number];

const channels = (hex: string): Channels => {
  const value = Number.parseInt(hex.slice(1), 16);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
};

const hexOf = (parts: Channels): string =>
  `#${parts.map((part) => Math.round(part).toString(16).padStart(2, '0')).join('')}`;

/** A colour a share of the way to another. */
export const mixed = (hex: string, towards: string, share: number): string => {
  const [a, b] = [channels(hex), channels(towards)];
  return hexOf([0, 1, 2].map((i) => a[i] + (b[i] - a[i]) * share) as unknown as Channels);
};

/** Violets are the marking colour's: blue well above green, and red between them. */
function isMark(hex: string): boolean {
  const [red, green, blue] = channels(hex);
  return blue - green > 20 && red > green + 8;
}

/** Darker than this a face is an engine's or a wheel's, 0 to 255. */
const darkFace = 110;

const isDark = (hex: string): boolean => {
  const [red, green, blue] = channels(hex);
  return 0.3 * red + 0.59 * green + 0.11 * blue < darkFace;
};

/** How far light faces go towards the ground where more contrast is asked for. */
const towardsGround = 0.6;

/** White paper, black ink, the marking colour at its darkest. */
export const contrastTheme: Theme = (hex, use) => {
  if (use === 'grid') return '#C6CCD2';
  if (use === 'ink') return isMark(hex) ? '#3F0D8C' : '#000000';
  return isDark(hex) ? hex : mixed(hex, '#FFFFFF', isMark(hex) ? 0 : towardsGround);
};

/** The colours a person has forced upon every page. */
export interface SystemColours {
  readonly ground: string;
  readonly ink: string;
  readonly mark: string;
}

/** How much ink a dark face gets where colours are forced: it still differs from its edges. */
const forcedDark = 0.45;
/** How much of it the grid gets. */
const forcedGrid = 0.22;

/** Only the person's own colours. */
export const forcedTheme =
  ({ ground, ink, mark }: SystemColours): Theme =>
  (hex, use) => {
    if (use === 'grid') return mixed(ground, ink, forcedGrid);
    if (use === 'ink') return isMark(hex) ? mark : ink;
    if (isMark(hex)) return mixed(ground, mark, forcedDark);
    return isDark(hex) ? mixed(ground, ink, forcedDark) : ground;
  };

const made = new Map<string, { readonly hex: string; readonly use: ColourUse; readonly colour: Color }>();
let theme: Theme = plainTheme;

/** `#RRGGBB` as it will be written to the screen: no conversion to linear light, since nothing here is lit. */
function write(colour: Color, hex: string): void {
  const [red, green, blue] = channels(hex);
  colour.r = red / 255;
  colour.g = green / 255;
  colour.b = blue / 255;
}

/** A colour of the palette as the theme has it; one object for all who ask, repainted in place when the theme changes. */
export function themed(hex: string, use: ColourUse): Color {
  const key = `${use} ${hex}`;
  const known = made.get(key);
  if (known) return known.colour;
  const colour = new Color();
  write(colour, theme(hex, use));
  made.set(key, { hex, use, colour });
  return colour;
}

/** Repaints every colour that was handed out. */
export function setTheme(next: Theme): void {
  theme = next;
  for (const { hex, use, colour } of made.values()) write(colour, theme(hex, use));
}
