import type { Scene } from '../scene/index.ts';

/** A deck, in gauges, where the scene does not give its width. Source: NEM 122 (2007), formation of H0 70 mm wide. */
const usualInGauges = 70 / 16.5;

/** Width of the decks that carry the tracks, m. */
export const deckWidth = ({ deck, scale }: Scene): number =>
  deck.widthMm === undefined ? (usualInGauges * scale.gaugeMm) / 1000 : deck.widthMm / 1000;
