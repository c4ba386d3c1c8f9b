import { climbTrack } from './climb.ts';
import { cornerMm, easedBend, leadFor, verticalCurveFor } from './pieces.ts';
import { clearHeightFor, deckDepthMm, easementFor } from './scales.ts';
import { chosen, inProportion, type ShapeField, type StartingShape, shapedScene, wholeTrack } from './shape.ts';

const fields: readonly ShapeField[] = [
  { id: 'riseMm', name: 'From deck to deck', unit: 'mm', low: 20, high: 3000, usual: inProportion(300) },
  { id: 'radiusMm', name: 'Radius', unit: 'mm', low: 100, high: 5000, usual: inProportion(600) },
  { id: 'gradePercent', name: 'Grade at most', unit: 'percent', low: 0.5, high: 6, usual: () => 2.5 },
  { id: 'lowMm', name: 'Height of the lower deck', unit: 'mm', low: -2000, high: 2000, usual: () => 0 },
];

/** Turning that the line leaves the helix by is a whole number of these, rad: square to how it came or along it. */
const quarter = Math.PI / 2;

/** A helix from one deck to another. */
export const helixShape: StartingShape = {
  id: 'helix',
  name: 'Helix between two decks',
  about: 'Level lead, eased helix, level lead, as many quarter turns as keep the grade.',
  fields,
  make(scale, values) {
    const [riseMm, radiusMm, gradePercent, lowMm] = fields.map(({ id }) => chosen({ fields }, scale, values, id));
    const curve = verticalCurveFor(scale);
    const clear = clearHeightFor(scale);
    const depthMm = deckDepthMm(scale);
    // The grade runs from the start of the first easement to the end of the last.
    const neededMm = (riseMm * 100) / gradePercent;
    const turning = (neededMm - easementFor(scale, radiusMm).mm) / radiusMm;
    const bend = easedBend(scale, radiusMm, Math.max(1, Math.ceil(turning / quarter - 1e-9)) * quarter, 'left', {
      id: 'helix',
    });
    const grade = (100 * riseMm) / bend.lengthMm;
    const perTurnMm = (grade / 100) * 2 * Math.PI * radiusMm;
    const over = turning > 4 * quarter;
    if (over && perTurnMm < clear.mm + depthMm) {
      const needs = Math.ceil((clear.mm + depthMm) / (2 * Math.PI * (grade / 100)) / 10) * 10;
      throw new RangeError(
        `A turn of ${radiusMm} mm at ${grade.toFixed(2)} % rises ${Math.floor(perTurnMm)} mm; trains under the deck need ${clear.mm} mm clear and ${depthMm} mm of deck: a radius of ${needs} mm or more, or a steeper grade.`,
      );
    }
    if (curve.mm > bend.lengthMm) {
      throw new RangeError(
        `The climb, ${Math.round(bend.lengthMm)} mm, is shorter than the vertical curves at its ends: a greater rise or a lesser grade.`,
      );
    }
    const lead = leadFor(scale);
    const track = climbTrack(scale, {
      id: 'climb',
      name: 'Climb',
      start: { xMm: cornerMm, yMm: cornerMm, headingDeg: 0 },
      footMm: lead,
      rising: bend.elements,
      headMm: lead,
      fromMm: lowMm,
      toMm: lowMm + riseMm,
    });
    return {
      scene: shapedScene(scale, {
        name: 'New helix',
        shows: `A helix of ${radiusMm} mm radius that rises ${riseMm} mm at ${grade.toFixed(2)} per cent.`,
        tracks: [track],
        runs: [wholeTrack('climb', ['up', 'down'])],
      }),
      promise: { riseMm, gradePercent: grade, radiusMm, clearMm: over ? perTurnMm - depthMm : null },
      because: [bend.because, clear.because, curve.because],
    };
  },
};
