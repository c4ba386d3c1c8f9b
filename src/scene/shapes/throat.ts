import { tidy } from '../edits/tidy.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import { climbTrack, slopeMm } from './climb.ts';
import { cornerMm, leadFor, supportsFor, verticalCurveFor } from './pieces.ts';
import { chosen, inProportion, type ShapeField, type StartingShape, shapedScene, wholeTrack } from './shape.ts';
import { straightSpacingFor } from './spacing.ts';
import { roadId, standFor, storageRoads } from './storage.ts';
import { type Hand, turnoutFor, wayBeside } from './turnouts.ts';

const fields: readonly ShapeField[] = [
  { id: 'roads', name: 'Storage roads', unit: 'count', low: 1, high: 8, usual: () => 4 },
  { id: 'oneIn', name: 'Crossings of 1 in', unit: 'count', low: 4, high: 12, usual: () => 6 },
  { id: 'riseMm', name: 'Rise of the approach', unit: 'mm', low: 5, high: 2000, usual: inProportion(50) },
  { id: 'gradePercent', name: 'Grade', unit: 'percent', low: 0.5, high: 8, usual: () => 2.5 },
  { id: 'lowMm', name: 'Height at its foot', unit: 'mm', low: -2000, high: 2000, usual: () => 0 },
];

/** A double line that climbs to a level throat: crossovers either way, then a ladder of storage roads. */
export const throatShape: StartingShape = {
  id: 'throat',
  name: 'Crossover throat',
  about: 'A double line on a climb, two crossovers, and a ladder of storage roads at its head.',
  fields,
  make(scale, values) {
    const [roads, oneIn, riseMm, gradePercent, lowMm] = fields.map(({ id }) => chosen({ fields }, scale, values, id));
    const curve = verticalCurveFor(scale);
    const lead = leadFor(scale);
    const slope = slopeMm(scale, riseMm, gradePercent);
    const turnout = turnoutFor(scale, oneIn);
    const line = straightSpacingFor(scale, 'line');
    const station = straightSpacingFor(scale, 'station');
    const highMm = tidy(lowMm + riseMm);
    const over = wayBeside(turnout, 'left', line.mm);
    // From front joint to front joint: the second turnout is the first one turned about.
    const acrossMm = over.alongMm + turnout.frontMm;
    const gapMm = curve.mm / 2;
    const firstMm = lead + slope + 2 * gapMm;
    const secondMm = firstMm + acrossMm + gapMm;
    const ladderMm = secondMm + acrossMm + gapMm;
    const storage = storageRoads(scale, {
      main: 'inner',
      atMm: ladderMm,
      hand: 'right',
      turnout,
      roads,
      clearMm: line.mm,
      spacingMm: station.mm,
      heightMm: highMm,
    });
    const y = cornerMm + storage.asideMm;
    const main = (id: string, name: string, yMm: number): SceneTrack =>
      climbTrack(scale, {
        id,
        name,
        start: { xMm: cornerMm, yMm, headingDeg: 0 },
        footMm: lead,
        rising: [{ kind: 'straight', id: 'slope', lengthMm: slope }],
        headMm: ladderMm - lead - slope + storage.alongMm,
        fromMm: lowMm,
        toMm: highMm,
      });
    const crossover = (id: string, name: string, branchOf: string, atMm: number, hand: Hand): SceneTrack => ({
      id,
      name,
      start: { branchOf, atMm: tidy(atMm), towards: 'end', turnout: turnout.to(hand) },
      alignment: [...wayBeside(turnout, hand, line.mm).elements, { kind: 'straight', lengthMm: turnout.frontMm }],
      profile: [{ at: { endOf: 'track' }, heightMm: highMm }],
      supports: { everyMm: supportsFor(scale) },
    });
    return {
      scene: shapedScene(scale, {
        name: 'New throat',
        shows: `A double line that climbs ${riseMm} mm at ${gradePercent} per cent to crossovers and ${roads === 1 ? 'a storage road' : `${roads} storage roads`}.`,
        tracks: [
          main('inner', 'Inner line', y),
          main('outer', 'Outer line', y + line.mm),
          crossover('inwards', 'Crossover inwards', 'outer', firstMm, 'right'),
          crossover('outwards', 'Crossover outwards', 'inner', secondMm, 'left'),
          ...storage.tracks,
        ],
        runs: [
          {
            id: 'store',
            name: 'to storage',
            route: [
              { track: 'outer', towards: 'end' },
              { track: 'inwards', towards: 'end' },
              { track: 'inner', towards: 'end', fromMm: tidy(firstMm + acrossMm) },
              { track: roadId(roads), towards: 'end' },
            ],
            ways: ['up', 'down'],
          },
          { id: 'inner', name: 'inner line', ...wholeTrack('inner', ['up', 'down']) },
        ],
      }),
      promise: { riseMm, gradePercent, radiusMm: turnout.radiusMm, clearMm: null },
      because: [turnout.because, line.because, station.because, standFor(scale).because, curve.because],
    };
  },
};
