import type { Color } from 'three';
import { faintFaces, faintStrokes, lensPalettes, stockPalettes } from '../palette.ts';
import { paletteColours } from '../solid/matt.ts';

/** What colours a vehicle wears. */
export type Dress = keyof typeof stockPalettes;

const coloursOf = (
  palettes: typeof stockPalettes,
  shade: (colours: readonly string[]) => readonly string[] = (colours) => colours,
): Record<Dress, Color[]> => ({
  vehicle: paletteColours(shade(palettes.vehicle.faces)),
  engine: paletteColours(shade(palettes.engine.faces)),
  chosen: paletteColours(shade(palettes.chosen.faces)),
});
export const stageColours = coloursOf(stockPalettes);
export const lensColours = coloursOf(lensPalettes);
/** Of a train that stands behind another in the same place. */
export const faintColours = coloursOf(stockPalettes, faintFaces);

const inksOf = (shade: (colours: readonly string[]) => readonly string[]): Record<Dress, Color[]> => ({
  vehicle: paletteColours(shade(stockPalettes.vehicle.strokes), 'ink'),
  engine: paletteColours(shade(stockPalettes.engine.strokes), 'ink'),
  chosen: paletteColours(shade(stockPalettes.chosen.strokes), 'ink'),
});
export const inkColours = inksOf((colours) => colours);
export const faintInkColours = inksOf(faintStrokes);
