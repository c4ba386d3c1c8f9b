import { mmText } from '../edits/tidy.ts';
import { cornerMm, supportsFor } from './pieces.ts';
import {
  chosen,
  inProportion,
  type ShapeField,
  type StartingShape,
  shapedScene,
  usualCoaches,
  wholeTrack,
} from './shape.ts';
import { usualTrainMm } from './stock.ts';

const fields: readonly ShapeField[] = [
  {
    id: 'lengthMm',
    name: 'Length of the first straight',
    unit: 'mm',
    low: 200,
    high: 40_000,
    usual: inProportion(3000, 100),
  },
  { id: 'heightMm', name: 'Height of the rails', unit: 'mm', low: -2000, high: 2000, usual: () => 0 },
];

/** Nothing but one straight to draw on from. */
export const emptyRoom: StartingShape = {
  id: 'empty-room',
  name: 'Empty room',
  about: 'One straight, level track to go on from.',
  fields,
  make(scale, values) {
    const lengthMm = chosen({ fields }, scale, values, 'lengthMm');
    const heightMm = chosen({ fields }, scale, values, 'heightMm');
    const trainMm = usualTrainMm(scale, usualCoaches);
    if (lengthMm < 1.2 * trainMm) {
      throw new RangeError(
        `A train of ${mmText(trainMm)} needs at least ${Math.ceil((1.2 * trainMm) / 10) * 10} mm to run.`,
      );
    }
    const track = {
      id: 'line',
      name: 'Line',
      start: { xMm: cornerMm, yMm: cornerMm, headingDeg: 0 },
      alignment: [{ kind: 'straight' as const, id: 'first', lengthMm }],
      profile: [{ atMm: 0, heightMm }],
      supports: { everyMm: supportsFor(scale) },
    };
    return {
      scene: shapedScene(scale, {
        name: 'New railway',
        shows: 'A new railway.',
        tracks: [track],
        runs: [wholeTrack('line', ['out', 'back'])],
      }),
      promise: { riseMm: 0, gradePercent: 0, radiusMm: Number.POSITIVE_INFINITY, clearMm: null },
      because: [],
    };
  },
};
