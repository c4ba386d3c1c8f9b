import { climbTrack, slopeMm } from './climb.ts';
import { cornerMm, leadFor, supportsFor, verticalCurveFor } from './pieces.ts';
import { clearHeightFor, deckDepthMm } from './scales.ts';
import { chosen, type ShapeField, type StartingShape, shapedScene, wholeTrack } from './shape.ts';

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
    const riseMm = clear.mm + deckDepthMm(scale) + spareMm;
    const slope = slopeMm(scale, riseMm, gradePercent);
    const lead = leadFor(scale);
    const lower = {
      id: 'lower-line',
      name: 'Lower line',
      start: { xMm: cornerMm, yMm: cornerMm + 1.5 * lead + slope, headingDeg: 0 },
      alignment: [{ kind: 'straight' as const, lengthMm: 2 * lead }],
      profile: [{ atMm: 0, heightMm: lowMm }],
      supports: { everyMm: supportsFor(scale) },
    };
    const upper = climbTrack(scale, {
      id: 'viaduct-line',
      name: 'Viaduct line',
      start: { xMm: cornerMm + lead, yMm: cornerMm, headingDeg: 90 },
      footMm: lead,
      rising: [{ kind: 'straight', id: 'approach', lengthMm: slope }],
      headMm: lead,
      fromMm: lowMm,
      toMm: lowMm + riseMm,
    });
    return {
      scene: shapedScene(scale, {
        name: 'New viaduct',
        shows: `A climb of ${Math.round(riseMm)} mm at ${gradePercent} per cent that lifts one line over another.`,
        tracks: [upper, lower],
        runs: [wholeTrack('viaduct-line', ['up', 'down'])],
      }),
      promise: { riseMm, gradePercent, radiusMm: Number.POSITIVE_INFINITY, clearMm: clear.mm + spareMm },
      because: [clear.because, verticalCurveFor(scale).because],
    };
  },
};
