import { climbTrack } from './climb.ts';
import { cornerMm, leadFor, verticalCurveFor } from './pieces.ts';
import { chosen, inProportion, type ShapeField, type StartingShape, shapedScene, wholeTrack } from './shape.ts';

const fields: readonly ShapeField[] = [
  { id: 'riseMm', name: 'Rise', unit: 'mm', low: 5, high: 2000, usual: inProportion(80) },
  { id: 'gradePercent', name: 'Grade at most', unit: 'percent', low: 0.5, high: 8, usual: () => 2.5 },
  { id: 'wallMm', name: 'Length of the wall', unit: 'mm', low: 500, high: 60_000, usual: inProportion(7000, 100) },
  { id: 'lowMm', name: 'Height at its foot', unit: 'mm', low: -2000, high: 2000, usual: () => 0 },
];

/** A straight climb along a wall, level for the length of a train at either end. */
export const rampShape: StartingShape = {
  id: 'ramp',
  name: 'Ramp along a wall',
  about: 'A straight climb with a level lead at its foot and its head.',
  fields,
  make(scale, values) {
    const [riseMm, gradePercent, wallMm, lowMm] = fields.map(({ id }) => chosen({ fields }, scale, values, id));
    const curve = verticalCurveFor(scale);
    const lead = leadFor(scale);
    const climbMm = Math.max((100 * riseMm) / gradePercent, curve.mm);
    const neededMm = Math.ceil(climbMm + 2 * lead);
    if (neededMm > wallMm) {
      const left = wallMm - 2 * lead;
      const would = left < curve.mm ? '' : `, or ${((100 * riseMm) / left).toFixed(2)} % on this one`;
      throw new RangeError(
        `${riseMm} mm at ${gradePercent} % take ${Math.round(climbMm)} mm and two leads of ${lead} mm: a wall of ${neededMm} mm${would}.`,
      );
    }
    // All the wall there is makes the climb gentler.
    const slope = wallMm - 2 * lead;
    const track = climbTrack(scale, {
      id: 'ramp',
      name: 'Ramp',
      start: { xMm: cornerMm, yMm: cornerMm, headingDeg: 0 },
      footMm: lead,
      rising: [{ kind: 'straight', id: 'slope', lengthMm: slope }],
      headMm: lead,
      fromMm: lowMm,
      toMm: lowMm + riseMm,
    });
    const grade = (100 * riseMm) / slope;
    return {
      scene: shapedScene(scale, {
        name: 'New ramp',
        shows: `A straight climb of ${riseMm} mm at ${grade.toFixed(2)} per cent.`,
        tracks: [track],
        runs: [wholeTrack('ramp', ['up', 'down'])],
      }),
      promise: { riseMm, gradePercent: grade, radiusMm: Number.POSITIVE_INFINITY, clearMm: null },
      because: [curve.because],
    };
  },
};
