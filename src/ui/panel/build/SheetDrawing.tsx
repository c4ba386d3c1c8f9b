import { laidOutlines, outlinePath, pieceName } from '../../../core/build/index.ts';
import type { BuildPlan } from '../../../state/build/index.ts';
import { counted, lengthShown, useShow } from '../../show.ts';

/** Every sheet with what is sawn from it, to scale. */
export function SheetDrawing({ plan }: { readonly plan: BuildPlan }) {
  const show = useShow();
  const { sheet, layout, tracks } = plan;
  const words = (metres: number): string => lengthShown(metres, show).shown.join('\u2009');
  const all = tracks.flatMap(({ pieces, layers }, track) => pieces.map((piece) => ({ piece, layers, track })));
  const laid = laidOutlines(
    all.map(({ piece }) => piece),
    all.map(({ layers }) => layers.width),
    layout,
  );
  const edge = sheet.length * 0.01;
  return (
    <figure className="build-sheets">
      {Array.from({ length: layout.sheets }, (_, number) => (
        <svg
          // biome-ignore lint/suspicious/noArrayIndexKey: sheets are nothing but their number
          key={number}
          viewBox={`${-edge} ${-edge} ${sheet.length + 2 * edge} ${sheet.width + 2 * edge}`}
          role="img"
          aria-label={`Sheet ${number + 1} of ${layout.sheets}`}
        >
          <rect className="board" width={sheet.length} height={sheet.width} />
          {laid.map(
            (one) =>
              one.sheet === number && (
                <g key={`${one.of}-${one.which}`}>
                  <path className="piece" d={outlinePath(one.outline)} />
                  <text x={one.middle[0]} y={one.middle[1]} fontSize={sheet.length * 0.018}>
                    {pieceName(all[one.of].track, all[one.of].piece.element)}
                  </text>
                </g>
              ),
          )}
        </svg>
      ))}
      <figcaption className="quiet">
        {counted(layout.sheets, 'sheet')} of {words(sheet.length)} × {words(sheet.width)}, so laid out; no layout does
        with fewer than {layout.least}.
      </figcaption>
    </figure>
  );
}
