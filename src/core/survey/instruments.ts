import type { Instrument, ReadingKind } from './types.ts';

/** Errors of the usual instruments where a survey gives none. Every one is an assumption to be replaced by the person's own. */
export const usualInstruments: Readonly<Record<ReadingKind, Instrument>> = {
  // A digital level of the trade shows 0.1° or 0.1 %; two placings differ by about as much; its zero is adjusted to 0.1°.
  grade: { id: 'level', deviation: 0.0005, step: 0.001, zero: 0.00175 },
  // A laser or water line against a steel rule read to half a millimetre.
  height: { id: 'line', deviation: 0.0003, step: 0.0005, zero: 0 },
  // Spacers by vernier caliper, seated on board that gives a little.
  rise: { id: 'spacer', deviation: 0.0002, step: 0.0001, zero: 0 },
  // Feeler gauges under a straightedge.
  gap: { id: 'straightedge', deviation: 0.0001, step: 0.00005, zero: 0 },
  // The digital level across both rails: it rocks on 16.5 mm more than along the track, by 0.05 mm.
  cross: { id: 'cross-level', deviation: 0.003, step: 0.001, zero: 0.00175 },
};

/** How closely a support is set to its mark, standard deviation, m. Assumption: a quarter of a turn of
 * M6, less what is taken back by measuring. */
export const usualSetting = 0.0002;
