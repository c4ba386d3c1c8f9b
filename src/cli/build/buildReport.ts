import { z } from 'zod';
import { type CutPieces, pieceName, type SupportRow } from '../../core/build/index.ts';
import type { BuildPlan, TrackBuild } from '../../sim/build/index.ts';
import { number, text, whole } from '../reportFields.ts';

const support = z.strictObject({
  track: text('Id of the track.'),
  support: whole('Its number, from 1.'),
  chainageMm: number('Along the centreline in plan, mm.'),
  xMm: number('East, mm.'),
  yMm: number('North, mm.'),
  railMm: number('Rail top as planned, mm.'),
  undersideMm: number('Underside of the strip: what the support has to reach, mm.'),
  planMm: z
    .number()
    .nullable()
    .meta({ description: 'From the support before, along the plan, mm; null at the first.' }),
  riseMm: z.number().nullable().meta({ description: 'Above the support before, mm; null at the first.' }),
  gradePercent: number('Grade of the plan here, per cent.'),
  rounding: z.boolean().meta({ description: 'Within a vertical curve.' }),
  leftAboveRightMm: number('Left edge of the strip above its right edge, mm: the cant that is planned.'),
  on: z
    .enum(['board', 'strip', 'floor'])
    .nullable()
    .meta({ description: 'What lies below; null: nothing is known of.' }),
  onMm: z.number().nullable().meta({ description: 'Its height, mm.' }),
  riserMm: z.number().nullable().meta({ description: 'From there to the underside, mm.' }),
});

const helix = z.strictObject({
  fromMm: number('Chainage, mm.'),
  toMm: number('Chainage, mm.'),
  radiusMm: number('Of the centreline, mm.'),
  turnMm: number('A turn in plan, mm.'),
  supportsPerTurn: number('Supports to a turn.'),
  asideMm: z.number().nullable().meta({
    description:
      'The furthest that a support stands from being over one of the turn below, mm; null: no turn lies over another.',
  }),
  inLineEveryMm: number('Spacing nearest to the one there is with which they stand over one another, mm.'),
  blocks: z
    .array(z.strictObject({ heightMm: number('Between the strips, mm.'), count: whole('How many alike.') }))
    .meta({ description: 'Blocks between one turn and the next; none where supports do not stand over one another.' }),
});

const pieces = z.strictObject({
  name: text('What is written on them, a number of its own behind it where there are several.'),
  fromMm: number('Chainage, mm.'),
  toMm: number('Chainage, mm.'),
  shape: z.enum(['straight', 'sector', 'easement']),
  count: whole('Pieces alike; those of an easement only come out of blanks alike.'),
  blankLengthMm: number('Least rectangle that one comes out of, mm.'),
  blankWidthMm: number('And across, mm.'),
  flatRadiusMm: z.exactOptional(number('Radius of the middle of a sector as it is cut, mm.')),
  angleDeg: z.exactOptional(number('Of a sector, degrees.')),
  mitreDeg: z.exactOptional(number('What each end of a sector is cut off square, degrees.')),
  innerChordMm: z.exactOptional(number('Of a sector, mm.')),
  outerChordMm: z.exactOptional(number('Of a sector, mm.')),
  setOut: z.exactOptional(
    z
      .array(z.array(z.strictObject({ alongMm: number('mm'), leftMm: number('mm') })))
      .meta({ description: 'Edges of each piece of an easement from the line between the ends of its middle.' }),
  ),
  cuts: z.array(
    z.strictObject({
      chainageMm: number('Where it butts against the next, mm.'),
      rounding: z.boolean().meta({ description: 'Within a vertical curve.' }),
    }),
  ),
});

/** The document that `gradewright build --json` writes. */
export const buildReportSchema = z
  .strictObject({
    report: z.literal('gradewright-build'),
    version: z.literal(1),
    scene: z.string(),
    supports: z.array(support),
    tracks: z.array(
      z.strictObject({
        track: text('Id of the track.'),
        stripWidthMm: number('Width of the strip, mm.'),
        besides: z.array(z.string()).meta({ description: 'Tracks whose strips overlap its own at the same height.' }),
        helices: z.array(helix),
        pieces: z.array(pieces),
      }),
    ),
    sheet: z.strictObject({
      lengthMm: number('mm'),
      widthMm: number('mm'),
      kerfMm: number('Width of the saw’s cut, mm.'),
      needed: whole('Sheets, laid out as `laid` has it.'),
      atLeast: whole('No layout does with fewer.'),
      laid: z
        .array(
          z.strictObject({
            track: text('Id of the track.'),
            fromMm: number('Chainage where the pieces of its kind begin, mm.'),
            sheet: whole('From 1.'),
            xMm: number('Corner of its blank from the corner of the sheet, mm.'),
            yMm: number('And across, mm.'),
          }),
        )
        .meta({ description: 'Where each piece lies.' }),
    }),
  })
  .meta({ title: 'What a railway is built of' });

export type BuildReport = z.infer<typeof buildReportSchema>;

const mm = (metres: number): number => metres * 1e3;
const mmOrNull = (metres: number | null | undefined): number | null => (metres == null ? null : metres * 1e3);
const deg = (radians: number): number => (radians * 180) / Math.PI;

/** A build plan as its document. */
export function buildReport(scene: string, { tracks, sheet, layout }: BuildPlan): BuildReport {
  const owners = tracks.flatMap(({ trackId, pieces: own }) => own.map(({ from }) => ({ track: trackId, from })));
  return {
    report: 'gradewright-build',
    version: 1,
    scene,
    supports: tracks.flatMap(({ trackId, supports }) => supports.map((row) => supportFields(trackId, row))),
    tracks: tracks.map((one, index) => trackFields(one, index)),
    sheet: {
      lengthMm: mm(sheet.length),
      widthMm: mm(sheet.width),
      kerfMm: mm(sheet.kerf),
      needed: layout.sheets,
      atLeast: layout.least,
      laid: layout.pieces.map(({ of, sheet: on, x, y }) => ({
        track: owners[of].track,
        fromMm: mm(owners[of].from),
        sheet: on + 1,
        xMm: mm(x),
        yMm: mm(y),
      })),
    },
  };
}

const supportFields = (track: string, row: SupportRow): BuildReport['supports'][number] => ({
  track,
  support: row.number,
  chainageMm: mm(row.chainage),
  xMm: mm(row.x),
  yMm: mm(row.y),
  railMm: mm(row.rail),
  undersideMm: mm(row.underside),
  planMm: mmOrNull(row.from?.plan),
  riseMm: mmOrNull(row.from?.rise),
  gradePercent: row.grade * 100,
  rounding: row.rounding,
  leftAboveRightMm: mm(row.acrossLeft),
  on: row.standing?.on ?? null,
  onMm: mmOrNull(row.standing?.height),
  riserMm: mmOrNull(row.riser),
});

const trackFields = (
  { trackId, layers, besides, helices, pieces: own }: TrackBuild,
  index: number,
): BuildReport['tracks'][number] => ({
  track: trackId,
  stripWidthMm: mm(layers.width),
  besides: [...besides],
  helices: helices.map((one) => ({
    fromMm: mm(one.from),
    toMm: mm(one.to),
    radiusMm: mm(one.radius),
    turnMm: mm(one.turn),
    supportsPerTurn: one.perTurn,
    asideMm: mmOrNull(one.aside),
    inLineEveryMm: mm(one.inLine),
    blocks: one.blocks.map(({ height, count }) => ({ heightMm: mm(height), count })),
  })),
  pieces: own.map((piece) => ({ name: pieceName(index, piece.element), ...pieceFields(piece) })),
});

const pieceFields = ({
  from,
  to,
  shape,
  count,
  blank,
  sector,
  ordinates,
  cuts,
}: CutPieces): Omit<BuildReport['tracks'][number]['pieces'][number], 'name'> => ({
  fromMm: mm(from),
  toMm: mm(to),
  shape,
  count,
  blankLengthMm: mm(blank.length),
  blankWidthMm: mm(blank.width),
  ...(sector && {
    flatRadiusMm: mm(sector.radius),
    angleDeg: deg(sector.angle),
    mitreDeg: deg(sector.mitre),
    innerChordMm: mm(sector.innerChord),
    outerChordMm: mm(sector.outerChord),
  }),
  ...(ordinates && {
    setOut: ordinates.map((piece) => piece.map(({ along, left }) => ({ alongMm: mm(along), leftMm: mm(left) }))),
  }),
  cuts: cuts.map(({ chainage, rounding }) => ({ chainageMm: mm(chainage), rounding })),
});
