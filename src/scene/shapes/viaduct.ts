import { tidy } from '../edits/tidy.ts';
import { cornerMm, leadFor, supportsFor, verticalCurveFor } from './pieces.ts';
import { clearHeightFor, deckFor } from './scales.ts';
import { chosen, type ShapeField, type StartingShape, shapedScene } from './shape.ts';

const fields: readonly ShapeField[] = [
  { id: 'gradePercent', name: 'Grade', unit: 'percent', low: 0.5, high: 8, usual: () => 2.5 },
  { id: 'spareMm', name: 'Height to spare over the clear height', unit: 'mm', low: 0, high: 500, usual: () => 0 },
  { id: 'lowMm', name: 'Height of the lower line', unit: 'mm', low: -2000, high: 2000, usual: () => 0 },
];

/** A climb from the level of a line to a viaduct that crosses over it. */
export const viaductShape: StartingShape = {
  id: 'viaduct',
  name: 'Viaduct approach',
  about: 'A climb that lifts one line over another, square to it.',
  fields,
  make(scale, values) {
    const [gradePercent, spareMm, lowMm] = fields.map(({ id }) => chosen({ fields }, scale, values, id));
    const clear = clearHeightFor(scale);
    const { thicknessMm, underlayMm, trackMm } = deckFor(scale);
    const depthMm = thicknessMm + underlayMm + trackMm;
    const riseMm = clear.mm + depthMm + spareMm;
    const curve = verticalCurveFor(scale);
    const slopeMm = tidy((100 * riseMm) / gradePercent);
    if (slopeMm < curve.mm) {
      const steepest = Math.floor((1000 * riseMm) / curve.mm) / 10;
      throw new RangeError(
        `A climb of ${Math.round(riseMm)} mm at ${gradePercent} % is shorter than its vertical curves of ${curve.mm} mm: ${steepest} % at most.`,
      );
    }
    const lead = leadFor(scale);
    const everyMm = supportsFor(scale);
    const lower = {
      id: 'lower-line',
      name: 'Lower line',
      start: { xMm: cornerMm, yMm: cornerMm + 1.5 * lead + slopeMm, headingDeg: 0 },
      alignment: [{ kind: 'straight' as const, lengthMm: 2 * lead }],
      profile: [{ atMm: 0, heightMm: lowMm }],
      supports: { everyMm },
    };
    const upper = {
      id: 'viaduct-line',
      name: 'Viaduct line',
      start: { xMm: cornerMm + lead, yMm: cornerMm, headingDeg: 90 },
      alignment: [
        { kind: 'straight' as const, id: 'foot', lengthMm: lead },
        { kind: 'straight' as const, id: 'approach', lengthMm: slopeMm },
        { kind: 'straight' as const, id: 'viaduct', lengthMm: lead },
      ],
      profile: [
        { atMm: 0, heightMm: lowMm },
        { at: { endOf: 'foot' }, heightMm: lowMm, verticalCurveLengthMm: curve.mm },
        { at: { startOf: 'viaduct' }, heightMm: tidy(lowMm + riseMm), verticalCurveLengthMm: curve.mm },
        { at: { endOf: 'track' }, heightMm: tidy(lowMm + riseMm) },
      ],
      supports: { everyMm },
    };
    return {
      scene: shapedScene(scale, {
        name: 'New viaduct',
        shows: `A climb of ${Math.round(riseMm)} mm at ${gradePercent} per cent that lifts one line over another.`,
        tracks: [upper, lower],
        runs: ['viaduct-line'],
        climbs: true,
      }),
      promise: { riseMm, gradePercent, radiusMm: Number.POSITIVE_INFINITY, clearMm: clear.mm + spareMm },
      because: [clear.because, curve.because],
    };
  },
};
