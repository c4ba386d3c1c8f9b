import { forceShade } from './colourScales.ts';

/** Print patterns of one colour: hatching for buff, dots for draft, four densities of each. Spacings in mm on paper. */
const SPACINGS_MM = [3.2, 2.4, 1.6, 0.9];
const PIXELS_PER_MM = 96 / 25.4;
/** Line and dot sizes, CSS px. */
const LINE = 0.6;
const DOT = 0.7;

export interface Patterns {
  /** Fill for a force that is not zero. */
  fill(force: number, greatest: number): CanvasPattern | string;
}

export function patternsOf(context: CanvasRenderingContext2D, density: number, ink: string): Patterns {
  const tiles = (draw: (tile: CanvasRenderingContext2D, size: number) => void) =>
    SPACINGS_MM.map((spacing) => {
      const size = Math.max(2, Math.round(spacing * PIXELS_PER_MM * density));
      const tile = document.createElement('canvas');
      tile.width = size;
      tile.height = size;
      const onTile = tile.getContext('2d');
      if (onTile) draw(onTile, size);
      return context.createPattern(tile, 'repeat') ?? ink;
    });
  const hatch = tiles((tile, size) => {
    tile.strokeStyle = ink;
    tile.lineWidth = LINE * density;
    tile.beginPath();
    // Beyond the corners on both sides, so that tiles join.
    for (const shift of [-size, 0, size]) {
      tile.moveTo(shift - 1, size + 1);
      tile.lineTo(shift + size + 1, -1);
    }
    tile.stroke();
  });
  const dots = tiles((tile, size) => {
    tile.fillStyle = ink;
    tile.beginPath();
    tile.arc(size / 2, size / 2, DOT * density, 0, 2 * Math.PI);
    tile.fill();
  });
  return {
    fill: (force, greatest) => {
      const stop = Math.min(3, Math.floor(forceShade(force, greatest) * 4));
      return (force < 0 ? hatch : dots)[stop];
    },
  };
}
