import { cos } from '../../core/math/index.ts';
import { mmText } from '../edits/tidy.ts';
import type { SceneElement } from '../schema/trackSchema.ts';
import { cornerMm, standingFor, supportsFor } from './pieces.ts';
import { chosen, inProportion, type ShapeField, type StartingShape, shapedScene, wholeTrack } from './shape.ts';
import { straightSpacingFor } from './spacing.ts';
import { roomForCoach } from './stock.ts';

const fields: readonly ShapeField[] = [
  { id: 'radiusMm', name: 'Radius of both curves', unit: 'mm', low: 100, high: 20_000, usual: inProportion(914, 1) },
  { id: 'angleDeg', name: 'Each turns by', unit: 'degrees', low: 1, high: 90, usual: () => 12 },
  { id: 'betweenMm', name: 'Straight between', unit: 'mm', low: 0, high: 5000, usual: () => 0 },
  { id: 'coaches', name: 'Coaches behind the engine', unit: 'count', low: 1, high: 12, usual: () => 5 },
];

/** One curve and its reverse: the way over a crossover, or an S of set-track. */
export const reverseCurveShape: StartingShape = {
  id: 's-bend',
  name: 'Crossover or S-bend',
  about:
    'The way a train takes over a crossover or an S: a curve, its reverse, and a train’s length of straight at either end.',
  fields,
  make(scale, values) {
    const [radiusMm, angleDeg, betweenMm, coaches] = fields.map(({ id }) => chosen({ fields }, scale, values, id));
    roomForCoach(scale, radiusMm);
    const lead = standingFor(scale, coaches);
    const curve = (turn: 'left' | 'right'): SceneElement => ({ kind: 'arc', radiusMm, turn, angleDeg });
    const alignment: SceneElement[] = [
      { kind: 'straight', id: 'before', lengthMm: lead },
      curve('left'),
      ...(betweenMm > 0 ? [{ kind: 'straight' as const, lengthMm: betweenMm }] : []),
      curve('right'),
      { kind: 'straight', id: 'after', lengthMm: lead },
    ];
    const angle = (angleDeg * Math.PI) / 180;
    const asideMm = 2 * radiusMm * (1 - cos(angle)) + betweenMm * cos(Math.PI / 2 - angle);
    const line = straightSpacingFor(scale, 'line');
    return {
      scene: shapedScene(scale, {
        name: 'New crossover',
        shows: `A curve of ${radiusMm} mm and its reverse${betweenMm > 0 ? ` with ${betweenMm} mm of straight between` : ''}.`,
        tracks: [
          {
            id: 'over',
            name: 'Over',
            start: { xMm: cornerMm, yMm: cornerMm, headingDeg: 0 },
            alignment,
            profile: [{ atMm: 0, heightMm: 0 }],
            supports: { everyMm: supportsFor(scale) },
          },
        ],
        runs: [wholeTrack('over', ['across', 'back'])],
        coaches,
      }),
      promise: { riseMm: 0, gradePercent: 0, radiusMm, clearMm: null },
      because: [
        {
          what: `From line to line ${mmText(asideMm)}`,
          source: `two curves and what lies between; parallel tracks: ${line.mm} mm, ${line.because.source}`,
        },
        {
          what: `${lead} mm of straight before and after`,
          source: 'common practice, no source: the length of the train and a tenth',
        },
      ],
    };
  },
};
