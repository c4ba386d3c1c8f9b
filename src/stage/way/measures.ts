/** Sizes of trackbed and track as they are drawn, m. Heights hang from the rail top downward. */
export interface WayMeasures {
  readonly gauge: number;
  readonly stripWidth: number;
  readonly railHeight: number;
  readonly railHead: number;
  readonly railFoot: number;
  readonly sleeperPitch: number;
  readonly sleeperLength: number;
  readonly sleeperWidth: number;
  readonly sleeperHeight: number;
  readonly underlay: number;
  readonly deck: number;
}

/** The deck of a scene, mm, as its file gives it. */
export interface DeckSizes {
  readonly thicknessMm: number;
  readonly underlayMm: number;
  readonly trackMm: number;
}

/**
 * Sizes to draw for a gauge (m) and a deck. The file gives the layers; rail, sleeper and strip widths are plain
 * proportions of the gauge, chosen to look like ordinary track.
 */
export function wayMeasures(gauge: number, deck: DeckSizes): WayMeasures {
  const track = deck.trackMm > 0 ? deck.trackMm / 1000 : 0.2 * gauge;
  const railHeight = Math.min(0.15 * gauge, 0.6 * track);
  return {
    gauge,
    stripWidth: 4 * gauge,
    railHeight,
    railHead: 0.07 * gauge,
    railFoot: 0.15 * gauge,
    sleeperPitch: 0.46 * gauge,
    sleeperLength: 1.85 * gauge,
    sleeperWidth: 0.2 * gauge,
    sleeperHeight: track - railHeight,
    underlay: deck.underlayMm / 1000,
    deck: deck.thicknessMm / 1000,
  };
}

/** Rail top down to the top of the strip (under the sleepers), and to its underside, m. */
export const stripTop = (m: WayMeasures): number => m.railHeight + m.sleeperHeight;
export const stripUnderside = (m: WayMeasures): number => stripTop(m) + m.underlay + m.deck;
