import { tidy } from '../edits/tidy.ts';
import type { SceneElement, SceneProfilePoint, SceneTrack } from '../schema/trackSchema.ts';
import { cornerMm, leadFor, supportsFor, verticalCurveFor } from './pieces.ts';
import { clearHeightFor, deckDepthMm, type ShapeScale } from './scales.ts';
import { chosen, type ShapeField, type StartingShape, shapedScene, wholeTrack } from './shape.ts';

const fields: readonly ShapeField[] = [
  {
    id: 'riseMm',
    name: 'Rail over rail',
    unit: 'mm',
    low: 15,
    high: 1000,
    usual: (scale) => clearHeightFor(scale).mm + deckDepthMm(scale),
  },
  { id: 'gradePercent', name: 'Grade', unit: 'percent', low: 0.5, high: 8, usual: () => 2.5 },
  {
    id: 'curveMm',
    name: 'Vertical curves',
    unit: 'mm',
    low: 0,
    high: 5000,
    usual: (scale) => verticalCurveFor(scale).mm,
  },
  { id: 'sunkMm', name: 'Of it, the lower line goes down', unit: 'mm', low: 0, high: 1000, usual: () => 0 },
  { id: 'lowMm', name: 'Height where both begin', unit: 'mm', low: -2000, high: 2000, usual: () => 0 },
];

/** One line over another, square to it. A climb is laid as one piece of straight with its vertical curves within, so its length is all the way that it takes. */
export const viaductShape: StartingShape = {
  id: 'viaduct',
  name: 'Viaduct approach',
  about: 'A climb that lifts one line over another, square to it; the lower line may go down for a share of it.',
  fields,
  make(scale, values) {
    const [riseMm, gradePercent, curveMm, sunkMm, lowMm] = fields.map(({ id }) =>
      chosen({ fields }, scale, values, id),
    );
    const clear = clearHeightFor(scale);
    const depthMm = deckDepthMm(scale);
    if (riseMm <= depthMm) {
      throw new RangeError(
        `${riseMm} mm from rail to rail leave nothing under a deck of ${depthMm} mm: more than that.`,
      );
    }
    if (sunkMm >= riseMm) {
      throw new RangeError(
        `The lower line cannot go down by all ${riseMm} mm or more: ${Math.floor(riseMm / 2)} mm share the climb.`,
      );
    }
    const climb = wayOf(tidy(riseMm - sunkMm), gradePercent, curveMm);
    const lead = leadFor(scale);
    const upper: SceneTrack = {
      id: 'viaduct-line',
      name: 'Viaduct line',
      start: { xMm: cornerMm + lead, yMm: cornerMm, headingDeg: 90 },
      alignment: [piece('foot', lead), piece('approach', climb), piece('head', lead)],
      profile: [
        { atMm: 0, heightMm: lowMm },
        bend({ startOf: 'approach' }, lowMm, curveMm),
        bend({ endOf: 'approach' }, tidy(lowMm + riseMm - sunkMm), curveMm),
        { at: { endOf: 'track' }, gradePercent: 0 },
      ],
      supports: { everyMm: supportsFor(scale) },
    };
    const lower = lowerLine(scale, {
      lead,
      northMm: cornerMm + 1.5 * lead + climb,
      lowMm,
      sunkMm,
      gradePercent,
      curveMm,
    });
    const way = (mm: number): string =>
      `${Math.round(mm)} mm: ${Math.round(mm - curveMm)} of grade and ${Math.round(curveMm)} for its vertical curves`;
    return {
      scene: shapedScene(scale, {
        name: 'New viaduct',
        shows: `A climb of ${Math.round(riseMm - sunkMm)} mm at ${gradePercent} per cent that lifts one line over another.`,
        tracks: [upper, lower],
        runs: [wholeTrack('viaduct-line', ['up', 'down'])],
      }),
      promise: { riseMm, gradePercent, radiusMm: Number.POSITIVE_INFINITY, clearMm: riseMm - depthMm },
      because: [
        {
          what: `The climb takes ${way(climb)}`,
          source: 'rise over grade, and half a curve at either end; no source needed',
        },
        ...(sunkMm > 0
          ? [
              {
                what: `The lower line takes ${way(wayOf(sunkMm, gradePercent, curveMm))}, down and up again`,
                source: 'the same; no source needed',
              },
            ]
          : []),
        {
          what: `${Math.round((riseMm - depthMm) * 10) / 10} mm clear, under a deck of ${depthMm} mm`,
          source: `asked for: ${clear.mm} mm, ${clear.because.source}`,
        },
        curveMm === verticalCurveFor(scale).mm
          ? verticalCurveFor(scale).because
          : {
              what: `Vertical curves of ${curveMm} mm`,
              source: `asked for: ${verticalCurveFor(scale).mm} mm, ${verticalCurveFor(scale).because.source}`,
            },
      ],
    };
  },
};

/** Way that a climb takes with its vertical curves, half of one at either end, mm. Throws RangeError, in words, where the curves alone are longer than the grade. */
function wayOf(riseMm: number, gradePercent: number, curveMm: number): number {
  const slopeMm = (100 * riseMm) / gradePercent;
  if (slopeMm < curveMm) {
    throw new RangeError(
      `A climb of ${Math.round(riseMm)} mm at ${gradePercent} % is shorter than its vertical curves of ${curveMm} mm: curves of ${Math.floor(slopeMm)} mm, or a gentler grade.`,
    );
  }
  return tidy(slopeMm + curveMm);
}

const piece = (id: string, lengthMm: number): SceneElement => ({ kind: 'straight', id, lengthMm: tidy(lengthMm) });

/** The point in the middle of a vertical curve that lies all within a climb, at its start or its end. */
function bend(
  end: { readonly startOf: string } | { readonly endOf: string },
  heightMm: number,
  curveMm: number,
): SceneProfilePoint {
  if (curveMm === 0) return { at: end, heightMm };
  const plusMm = 'startOf' in end ? curveMm / 2 : -curveMm / 2;
  return { at: { ...end, plusMm }, heightMm, verticalCurveLengthMm: curveMm };
}

interface Lower {
  readonly lead: number;
  readonly northMm: number;
  readonly lowMm: number;
  readonly sunkMm: number;
  readonly gradePercent: number;
  readonly curveMm: number;
}

/** The line below, level, or down to the crossing and up again. */
function lowerLine(scale: ShapeScale, { lead, northMm, lowMm, sunkMm, gradePercent, curveMm }: Lower): SceneTrack {
  const line = {
    id: 'lower-line',
    name: 'Lower line',
    supports: { everyMm: supportsFor(scale) },
  };
  if (sunkMm === 0) {
    return {
      ...line,
      start: { xMm: cornerMm, yMm: northMm, headingDeg: 0 },
      alignment: [{ kind: 'straight', lengthMm: 2 * lead }],
      profile: [{ atMm: 0, heightMm: lowMm }],
    };
  }
  const dip = wayOf(sunkMm, gradePercent, curveMm);
  const bottom = tidy(lowMm - sunkMm);
  return {
    ...line,
    // The middle of what lies low is under the bridge.
    start: { xMm: tidy(cornerMm - lead / 2 - dip), yMm: northMm, headingDeg: 0 },
    alignment: [
      piece('before', lead),
      piece('down', dip),
      piece('under', lead),
      piece('up', dip),
      piece('after', lead),
    ],
    profile: [
      { atMm: 0, heightMm: lowMm },
      bend({ startOf: 'down' }, lowMm, curveMm),
      bend({ endOf: 'down' }, bottom, curveMm),
      bend({ startOf: 'up' }, bottom, curveMm),
      bend({ endOf: 'up' }, lowMm, curveMm),
      { at: { endOf: 'track' }, gradePercent: 0 },
    ],
  };
}
