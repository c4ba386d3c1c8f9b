import { parallelTrack } from '../edits/parallel.ts';
import { tidy } from '../edits/tidy.ts';
import { elementLengthMm } from '../places.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import { gradeChange } from './climb.ts';
import { cornerMm, easedBend, leadFor, supportsFor, verticalCurveFor } from './pieces.ts';
import { type Because, clearHeightFor, deckDepthMm, easementFor, type ShapeScale } from './scales.ts';
import { chosen, inProportion, type ShapeField, type StartingShape, shapedScene, wholeTrack } from './shape.ts';
import { spacingFor } from './spacing.ts';
import { roomForCoach } from './stock.ts';

const usualInnerMm = inProportion(540);

const fields: readonly ShapeField[] = [
  { id: 'innerMm', name: 'Radius, inner track', unit: 'mm', low: 100, high: 5000, usual: usualInnerMm },
  {
    id: 'outerMm',
    name: 'Radius, outer track',
    unit: 'mm',
    low: 110,
    high: 5200,
    usual: (scale) => usualInnerMm(scale) + spacingFor(scale, 'line', usualInnerMm(scale)).mm,
  },
  {
    id: 'perTurnMm',
    name: 'Rise of a turn, rail to rail',
    unit: 'mm',
    low: 15,
    high: 500,
    usual: (scale) => clearHeightFor(scale).mm + deckDepthMm(scale),
  },
  { id: 'turns', name: 'Turns', unit: 'turns', low: 0.5, high: 30, usual: () => 3 },
  {
    id: 'easeMm',
    name: 'Easements of the outer track',
    unit: 'mm',
    low: 0,
    high: 5000,
    usual: (scale) => {
      const innerMm = usualInnerMm(scale);
      return easementFor(scale, innerMm + spacingFor(scale, 'line', innerMm).mm).mm;
    },
  },
  { id: 'lowMm', name: 'Height of the lower deck', unit: 'mm', low: -2000, high: 2000, usual: () => 0 },
];

/**
 * Two tracks on one spiral of decks: at the same height wherever they pass the same spoke, so the inner one is the steeper. The grade goes from the middle of an easement to
 * the middle of the other, which is as long as the whole turning on the arc's radius.
 */
export const doubleHelixShape: StartingShape = {
  id: 'double-helix',
  name: 'Double helix',
  about: 'Two tracks on one spiral, given by the rise of a turn: up on one, down on the other.',
  fields,
  make(scale, values) {
    const [innerMm, outerMm, perTurnMm, turns, easeMm, lowMm] = fields.map(({ id }) =>
      chosen({ fields }, scale, values, id),
    );
    roomForCoach(scale, innerMm);
    const depthMm = deckDepthMm(scale);
    const least = scale.gaugeMm;
    if (outerMm - innerMm < least) {
      throw new RangeError(
        `Radii of ${innerMm} and ${outerMm} mm are ${tidy(outerMm - innerMm)} mm apart: an outer radius of ${Math.ceil(innerMm + least)} mm or more.`,
      );
    }
    if (turns > 1 && perTurnMm <= depthMm) {
      throw new RangeError(
        `A rise of ${perTurnMm} mm a turn leaves nothing under a deck of ${depthMm} mm: more than that.`,
      );
    }
    const curve = verticalCurveFor(scale);
    const risingMm = 2 * Math.PI * innerMm * turns;
    if (risingMm < curve.mm) {
      throw new RangeError(
        `${turns} turns of ${innerMm} mm are shorter than the vertical curves of ${curve.mm} mm: more turns or a larger radius.`,
      );
    }
    const riseMm = tidy(perTurnMm * turns);
    const bend = easedBend(scale, outerMm, 2 * Math.PI * turns, 'left', { id: 'helix', easeMm });
    const lead = leadFor(scale) + Math.ceil(easeMm / 100) * 50;
    const outer: SceneTrack = {
      id: 'outer',
      name: 'Outer line',
      start: { xMm: cornerMm, yMm: cornerMm, headingDeg: 0 },
      alignment: [
        { kind: 'straight', id: 'foot', lengthMm: lead },
        ...bend.elements,
        { kind: 'straight', id: 'head', lengthMm: lead },
      ],
      profile: [{ atMm: 0, heightMm: lowMm }],
      supports: { everyMm: supportsFor(scale) },
    };
    const climbing = (track: SceneTrack): SceneTrack => ({ ...track, profile: profileOf(scale, track, lowMm, riseMm) });
    const alone = shapedScene(scale, {
      name: 'New double helix',
      shows: `A double helix of ${innerMm} and ${outerMm} mm radius that rises ${perTurnMm} mm a turn.`,
      tracks: [outer],
      runs: [{ id: 'outer', name: 'outer line', ...wholeTrack('outer', ['up', 'down']) }],
    });
    const [, inner] = parallelTrack(alone, 'outer', tidy(outerMm - innerMm), { name: 'Inner line' }).tracks;
    const { shows, name } = alone;
    return {
      scene: shapedScene(scale, {
        name,
        shows: shows ?? name,
        tracks: [climbing(outer), climbing({ ...inner, id: 'inner' })],
        runs: [
          { id: 'outer', name: 'outer line', ...wholeTrack('outer', ['up', 'down']) },
          { id: 'inner', name: 'inner line', ...wholeTrack('inner', ['up', 'down']) },
        ],
      }),
      promise: {
        riseMm,
        gradePercent: (100 * perTurnMm) / (2 * Math.PI * innerMm),
        radiusMm: innerMm,
        clearMm: turns > 1 ? perTurnMm - depthMm : null,
      },
      because: because(scale, { innerMm, outerMm, perTurnMm, depthMm }, easeMm > 0 ? bend.because : null),
    };
  },
};

/** Level, up from the middle of the first easement to the middle of the last, and level. */
function profileOf(scale: ShapeScale, track: SceneTrack, lowMm: number, riseMm: number): SceneTrack['profile'] {
  const eased = track.alignment.find(({ kind }) => kind === 'transition');
  const half = eased === undefined ? 0 : tidy(elementLengthMm(eased) / 2);
  return [
    { atMm: 0, heightMm: lowMm },
    gradeChange(scale, { endOf: 'foot', ...(half > 0 && { plusMm: half }) }, lowMm),
    gradeChange(scale, { startOf: 'head', ...(half > 0 && { plusMm: -half }) }, lowMm + riseMm),
    { at: { endOf: 'track' }, gradePercent: 0 },
  ];
}

interface Sizes {
  readonly innerMm: number;
  readonly outerMm: number;
  readonly perTurnMm: number;
  readonly depthMm: number;
}

/** What the numbers come to on each track, beside what the norms ask for. */
function because(scale: ShapeScale, sizes: Sizes, ease: Because | null): readonly Because[] {
  const { innerMm, outerMm, perTurnMm, depthMm } = sizes;
  const clear = clearHeightFor(scale);
  const spacing = spacingFor(scale, 'line', innerMm);
  const turn = (radiusMm: number): string => {
    const lengthMm = 2 * Math.PI * radiusMm;
    return `1 in ${(lengthMm / perTurnMm).toFixed(1)}, ${Math.round(lengthMm)} mm a turn`;
  };
  return [
    { what: `Inner track ${turn(innerMm)}`, source: 'rise of a turn over 2π times the radius; no source needed' },
    { what: `Outer track ${turn(outerMm)}`, source: 'the same rise on its own radius; no source needed' },
    {
      what: `${Math.round((perTurnMm - depthMm) * 10) / 10} mm clear between turns, under a deck of ${depthMm} mm`,
      source: `asked for: ${clear.mm} mm, ${clear.because.source}`,
    },
    {
      what: `Tracks ${Math.round((outerMm - innerMm) * 10) / 10} mm apart`,
      source: `asked for: ${spacing.mm} mm, ${spacing.because.source}`,
    },
    ...(ease === null ? [] : [ease]),
    verticalCurveFor(scale).because,
  ];
}
