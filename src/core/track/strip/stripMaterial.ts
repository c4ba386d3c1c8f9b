import type { StripSection } from '../types.ts';

/** What trackbed strips are sawn from. */
export type StripMaterialName = 'birch-ply' | 'softwood-ply' | 'mdf';

/** Bending modulus along the strip, N/m², density, kg/m³, and creep at rest in a heated room, each with what it may be. */
export interface StripMaterial {
  readonly name: StripMaterialName;
  readonly modulus: number;
  readonly modulusLow: number;
  readonly modulusHigh: number;
  readonly density: number;
  /** Further sag of a strip under its own weight over years, as a multiple of the sag at once. */
  readonly creep: number;
}

/**
 * Materials of trackbed. All values are assumptions from memory, no page confirming them was found: moduli span
 * strips sawn along and across the face grain and boards of 4 to 12 mm; creep is the deformation factor of Eurocode 5 for
 * permanent load indoors (plywood 0.8, MDF 2.25, table 3.2). Sags scale with 1/modulus.
 */
export const stripMaterials: Readonly<Record<StripMaterialName, StripMaterial>> = {
  'birch-ply': { name: 'birch-ply', modulus: 9e9, modulusLow: 4.5e9, modulusHigh: 13e9, density: 680, creep: 0.8 },
  'softwood-ply': { name: 'softwood-ply', modulus: 7e9, modulusLow: 3e9, modulusHigh: 11e9, density: 520, creep: 0.8 },
  mdf: { name: 'mdf', modulus: 3e9, modulusLow: 2.2e9, modulusHigh: 4e9, density: 750, creep: 2.25 },
};

/** Acceleration of free fall, m/s². */
const GRAVITY = 9.80665;

/**
 * A strip of rectangular section, `thickness` and `width` in m, from chainage `from` on: EI = modulus·width·thickness³/12,
 * with its own weight and `carried`, the mass of track and underlay, kg/m. Throws RangeError unless sizes are positive.
 */
export function stripSection(
  material: StripMaterial,
  thickness: number,
  width: number,
  carried = 0,
  from = 0,
): StripSection {
  if (!(thickness > 0) || !(width > 0) || !(carried >= 0)) {
    throw new RangeError(`A strip cannot be ${thickness} m thick and ${width} m wide with ${carried} kg/m on it.`);
  }
  return {
    from,
    stiffness: (material.modulus * width * thickness * thickness * thickness) / 12,
    weight: (material.density * width * thickness + carried) * GRAVITY,
  };
}
