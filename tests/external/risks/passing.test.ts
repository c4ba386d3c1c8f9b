import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import { curvedSpacingH0Mm, prototypeCoach, straightSpacingH0Mm } from '../../../src/core/stock/index.ts';
import { arc, makeTrack, straight, type Track } from '../../../src/core/track/index.ts';
import { madeUpTrial } from '../../core/risks/samples.ts';
import { sampleVehicle } from '../../core/stock/samples.ts';

const scale = 87;
/** The longest coach of NEM 103 (2016), group C: 27.2 m on 19.5 m between bogies. */
const { body, bogieCentres } = prototypeCoach.C;
/** Full-size coaches are about 3.0 m wide over everything (common practice, no source): 35 mm in H0, rounded up. */
const coach = sampleVehicle(
  { pivotSpacing: bogieCentres / scale, overhang: (body - bogieCentres) / 2 / scale },
  { bodyWidth: 0.035 },
);

/** Least room between two such coaches on a pair of tracks, seen from either, m. */
function room(tracks: readonly Track[]): number {
  return Math.min(
    ...tracks.map((track) => {
      const context = madeUpTrial(track, [coach], [{ lead: track.length / 2 }], {
        surroundings: { tracks, deckDepth: 0.017 },
      });
      return assessRun(context, [riskById('passing')])[0].worst?.margin ?? Number.NaN;
    }),
  );
}

const curved = (radius: number): Track =>
  makeTrack({
    start: { x: 0, y: -radius, heading: 0 },
    elements: [arc(radius, 2)],
    profile: { points: [{ chainage: 0, height: 0 }] },
  });

describe('NEM 112: on parallel curves long coaches just clear each other', () => {
  // Source: gotthardbahn.ch, track dimensions, quoting the norm: spacing by radius, H0. It allows for an overhang in whole millimetres on either
  // side, so what is left between bodies may differ by 1 mm for each of the two from row to row.
  it.each(curvedSpacingH0Mm)('$radiusMm mm at $spacingMm mm', ({ radiusMm, spacingMm }) => {
    const left = room([curved(radiusMm / 1000), curved((radiusMm + spacingMm) / 1000)]);
    expect(left).toBeGreaterThanOrEqual(0);
    expect(left).toBeLessThan(0.002);
    expect(room([curved(radiusMm / 1000), curved((radiusMm + spacingMm - 2) / 1000)])).toBeLessThan(0);
  });

  it('the spacing of straight tracks would not do on 1000 mm and less but for a millimetre', () => {
    const { line } = straightSpacingH0Mm;
    expect(room([curved(0.7), curved(0.7 + line / 1000)])).toBeLessThan(-0.004);
    expect(room([curved(1), curved(1 + line / 1000)])).toBeLessThan(0);
  });

  it('on the straight it leaves 46 - 35 = 11 mm', () => {
    const parallel = [0, straightSpacingH0Mm.line / 1000].map((y) =>
      makeTrack({
        start: { x: 0, y, heading: 0 },
        elements: [straight(2)],
        profile: { points: [{ chainage: 0, height: 0 }] },
      }),
    );
    expect(room(parallel)).toBeCloseTo(0.011, 9);
  });
});
