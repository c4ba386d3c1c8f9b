import type { BuildReport } from './buildReport.ts';

type SupportFields = BuildReport['supports'][number];
type TrackFields = BuildReport['tracks'][number];

const columns = [
  'track',
  'support',
  'chainageMm',
  'xMm',
  'yMm',
  'railMm',
  'undersideMm',
  'planMm',
  'riseMm',
  'gradePercent',
  'rounding',
  'leftAboveRightMm',
  'on',
  'onMm',
  'riserMm',
] as const satisfies readonly (keyof SupportFields)[];

/** The schedule of supports as comma-separated values with a heading, in full precision; nothing where there is nothing to say. */
export const buildCsv = ({ supports }: BuildReport): string =>
  `${[columns.join(','), ...supports.map((row) => columns.map((column) => row[column] ?? '').join(','))].join('\n')}\n`;

const fixed = (value: number, digits: number): string => value.toFixed(digits).replace(/^-(?=[0.]+$)/, '');
const orDash = (value: number | null, digits: number): string => (value === null ? '–' : fixed(value, digits));

/** Shown in this order; a nut is turned by `turns` from the one before where a thread is named. */
function cells(row: SupportFields, pitchMm: number | null): string[] {
  const turns = pitchMm === null ? [] : [orDash(row.riseMm === null ? null : row.riseMm / pitchMm, 2)];
  return [
    String(row.support),
    fixed(row.chainageMm, 1),
    fixed(row.railMm, 1),
    fixed(row.undersideMm, 1),
    orDash(row.riseMm, 2),
    ...turns,
    `${fixed(row.gradePercent, 2)}${row.rounding ? ' ~' : ''}`,
    row.on ?? '–',
    orDash(row.riserMm, 1),
  ];
}

const heading = (thread: string | null): string[] => [
  'support',
  'chainage',
  'rail',
  'underside',
  'rise',
  ...(thread === null ? [] : [`turns of ${thread}`]),
  'grade %',
  'stands on',
  'riser',
];

function table(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0].map((_, k) => Math.max(...rows.map((row) => row[k].length)));
  return rows.map((row) => row.map((cell, k) => cell.padStart(widths[k])).join('  '));
}

function helixText({
  turnMm,
  supportsPerTurn,
  asideMm,
  inLineEveryMm,
  blocks,
}: TrackFields['helices'][number]): string[] {
  const turn = `Helix: ${fixed(turnMm, 1)} mm a turn, ${fixed(supportsPerTurn, 2)} supports to it.`;
  if (asideMm === null) return [turn];
  if (blocks.length === 0) {
    return [
      `${turn} They do not stand over one another: ${fixed(asideMm, 1)} mm aside at most. Every ${fixed(inLineEveryMm, 2)} mm they would, and one rod could carry all turns.`,
    ];
  }
  const told = blocks.map(({ heightMm, count }) => `${count} of ${fixed(heightMm, 1)} mm`).join(', ');
  return [`${turn} They stand over one another within ${fixed(asideMm, 1)} mm.`, `Blocks from turn to turn: ${told}.`];
}

function pieceText(piece: TrackFields['pieces'][number]): string {
  const blank = `blank ${fixed(piece.blankLengthMm, 1)} x ${fixed(piece.blankWidthMm, 1)}`;
  const where = `${fixed(piece.fromMm, 0)} to ${fixed(piece.toMm, 0)} mm`;
  if (piece.shape !== 'sector' || piece.flatRadiusMm === undefined) {
    return `  ${piece.name}  ${piece.count} ${piece.shape}, ${blank} (${where})`;
  }
  const { flatRadiusMm, angleDeg = 0, mitreDeg = 0, innerChordMm = 0, outerChordMm = 0 } = piece;
  return `  ${piece.name}  ${piece.count} sector of ${fixed(angleDeg, 2)} degrees on ${fixed(flatRadiusMm, 1)} mm, ends ${fixed(mitreDeg, 2)} degrees off square, chords ${fixed(innerChordMm, 1)} and ${fixed(outerChordMm, 1)}, ${blank} (${where})`;
}

/** What a butt in a vertical curve does, said once. */
function cutText(pieces: TrackFields['pieces']): string[] {
  const cuts = pieces.flatMap((piece) => piece.cuts).filter(({ rounding }) => rounding);
  if (cuts.length === 0) return [];
  const places = cuts.map(({ chainageMm }) => fixed(chainageMm, 0)).join(', ');
  return [`Butts within a vertical curve, which they would kink: ${places} mm. Splice them well, or cut elsewhere.`];
}

function trackText(
  report: BuildReport,
  track: TrackFields,
  thread: { name: string; pitchMm: number } | null,
): string[] {
  const rows = report.supports.filter((row) => row.track === track.track);
  return [
    '',
    `Track ${track.track}, strip ${fixed(track.stripWidthMm, 1)} mm wide`,
    ...(track.besides.length > 0
      ? [`Its strip overlaps that of ${track.besides.join(', ')} at the same height: one wider deck may carry both.`]
      : []),
    ...(rows.length === 0
      ? ['The scene gives it no supports; --every 300mm lays them out.']
      : table([heading(thread?.name ?? null), ...rows.map((row) => cells(row, thread?.pitchMm ?? null))])),
    ...(rows.some((row) => row.rounding) ? ['~ within a vertical curve: the heights carry its rounding.'] : []),
    ...track.helices.flatMap(helixText),
    'Pieces, mm:',
    ...track.pieces.map(pieceText),
    ...cutText(track.pieces),
  ];
}

/** Said with every plan that is sawn and set up by. */
const cautions =
  'Before you begin: dust of MDF and plywood is not for lungs; guards on saws, caps on the ends of rods; whatever carries trains over a drop is guarded at its edge; shelves are fixed by someone who knows the wall; mains wiring is for qualified people, and local rules come first (docs/guide/cautions.md).';

/** The plan as tables for the eye, rounded; with a thread, its name and pitch, how far each nut is turned beyond the one before. */
export function buildText(report: BuildReport, thread: { name: string; pitchMm: number } | null): string {
  const { sheet } = report;
  const sheets = `${sheet.needed} of ${fixed(sheet.lengthMm, 0)} x ${fixed(sheet.widthMm, 0)} mm as laid out here; no layout does with fewer than ${sheet.atLeast}.`;
  const lines = [
    `${report.scene}: heights to build to, mm above the datum`,
    ...report.tracks.flatMap((track) => trackText(report, track, thread)),
    '',
    `Sheets: ${sheets}`,
    cautions,
  ];
  return `${lines.join('\n')}\n`;
}
