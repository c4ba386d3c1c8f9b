import { memo, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { riskTitle } from '../../../core/findings/index.ts';
import { risks } from '../../../core/risks/index.ts';
import type { RiskId } from '../../../core/risks/types.ts';
import { CarpetRow, carpetHeight } from '../carpet/CarpetRow.tsx';
import type { BandFrame, SectionEdit } from '../frame/bandFrame.ts';
import { ROW_HEIGHT, speedHeight } from '../frame/layout.ts';
import { type PointerMarks, useBodyPointer } from '../frame/useBodyPointer.ts';
import { MarginRow } from '../margin/MarginRow.tsx';
import { emptySeries } from '../margin/seriesPlaces.ts';
import { Grid, Overlay } from '../Overlay.tsx';
import { SectionRow } from '../section/SectionRow.tsx';
import { AxisRow } from './AxisRow.tsx';
import { CurvatureRow } from './CurvatureRow.tsx';
import { allRows, chosenRows, fittingRows, orderedRows, type RowChoice, type RowId } from './rowChoice.ts';
import type { RowKeeper } from './rowKeeper.ts';
import { type RowHooks, RowsContext } from './rows.ts';
import { SpeedRow } from './SpeedRow.tsx';

// They show the trial that ran, so they keep still while a hand drags in the section.
const StillCurvatureRow = memo(CurvatureRow);
const StillSpeedRow = memo(SpeedRow);
const StillCarpetRow = memo(CarpetRow);
const StillMarginRow = memo(MarginRow);
const StillGrid = memo(Grid);
const StillOverlay = memo(Overlay);

const NAMES: Readonly<Partial<Record<RowId, string>>> = {
  section: 'Section',
  curvature: 'Curvature',
  speed: 'Speed',
  carpet: 'Coupler force',
};

const nameOf = (row: RowId): string => NAMES[row] ?? riskTitle(row as RiskId);

/** On a tablet the section may give up this much for a fourth risk. */
const SECTION_GIVE = 8;
/** Beyond this a taller section says no more. */
const SECTION_MOST = 220;

interface RowsProps {
  readonly frame: BandFrame;
  /** Null where the section is to be read only. */
  readonly edit: SectionEdit | null;
  /** What there is for all of the band, px. */
  readonly room: number;
  readonly rowKeeper: RowKeeper;
}

/** The rows on view, the axis under them, and what is drawn over all of them. */
export function Rows({ frame, edit, room, rowKeeper }: RowsProps) {
  const { view, layout } = frame;
  const [choice, setChoice] = useState<RowChoice | null>(rowKeeper.read);
  const choose = (wanted: RowChoice | null) => {
    rowKeeper.keep(wanted);
    setChoice(wanted);
  };
  const [hooks] = useState(() => new Map<string, RowHooks>());
  const stack = useRef<HTMLDivElement>(null);
  const overlay = useRef<PointerMarks>(null);
  const [marks] = useState<PointerMarks>(() => ({
    hover: (at) => overlay.current?.hover(at),
    brush: (range) => overlay.current?.brush(range),
  }));
  useBodyPointer(stack, frame, hooks, marks);

  // Before the first run every risk has its row already, so that nothing jumps when the result arrives.
  const { result } = view;
  const joints = view.trial.train.vehicles.length - 1;
  const all = useMemo(() => {
    const rows = allRows(
      result ? result.risks.map((one) => one.risk) : risks.map((one) => one.id),
      result?.findings ?? [],
    );
    // A light engine has no joints to show.
    return joints > 0 ? rows : rows.filter((row) => row !== 'carpet');
  }, [result, joints]);
  const silent = useMemo(
    () => new Set<RowId>(result ? result.risks.filter((one) => one.worst === null).map((one) => one.risk) : []),
    [result],
  );
  const sectionLeast = ROW_HEIGHT.section - (layout.narrow ? SECTION_GIVE : 0);
  const heightOf = (row: RowId): number => {
    if (row === 'section') return sectionLeast;
    if (row === 'curvature') return ROW_HEIGHT.curvature;
    if (row === 'speed') return speedHeight(layout);
    return row === 'carpet' ? carpetHeight(joints) : layout.marginRow;
  };
  // The transport's rule and the axis row are outside.
  const free = room - layout.transport - ROW_HEIGHT.axis - (layout.narrow ? 1 : 0);
  const order = choice ? orderedRows(all, choice.order) : all;
  const shown = choice ? chosenRows(all, choice) : fittingRows(all, heightOf, free, silent);
  const used = shown.reduce((sum, row) => sum + heightOf(row), 0);
  const sectionHeight = Math.min(SECTION_MOST, sectionLeast + Math.max(0, Math.floor(free - used)));
  const stackHeight = used + (shown.includes('section') ? sectionHeight - sectionLeast : 0);

  // A row folded under the pointer leaves its hairline behind.
  useLayoutEffect(() => marks.hover(null));

  return (
    <RowsContext value={hooks}>
      <div className="gwb-rows">
        <div ref={stack} className="gwb-stack" style={{ width: layout.gutter + layout.body + layout.right }}>
          <StillGrid frame={frame} height={stackHeight} />
          {shown.map((row) => {
            if (row === 'section') return <SectionRow key={row} frame={frame} edit={edit} height={sectionHeight} />;
            if (row === 'curvature') return <StillCurvatureRow key={row} frame={frame} />;
            if (row === 'speed') return <StillSpeedRow key={row} frame={frame} />;
            if (row === 'carpet') return <StillCarpetRow key={row} frame={frame} />;
            const series = result?.risks.find((candidate) => candidate.risk === row) ?? emptySeries(row);
            return <StillMarginRow key={row} frame={frame} series={series} />;
          })}
          <StillOverlay frame={frame} marks={overlay} />
        </div>
      </div>
      <AxisRow frame={frame} list={{ rows: order, shown, nameOf, own: choice !== null, choose }} />
    </RowsContext>
  );
}
