import { useCallback, useMemo, useRef } from 'react';
import { explainRisk, riskTitle } from '../../../core/findings/index.ts';
import { riskById } from '../../../core/risks/index.ts';
import type { RiskSeries } from '../../../core/risks/types.ts';
import { marginColours, marginShade } from '../carpet/colourScales.ts';
import { type AxisScale, type Span, valueAt, xOf } from '../frame/axis.ts';
import type { BandFrame } from '../frame/bandFrame.ts';
import { type LeastMargins, leastMargins } from '../frame/columns.ts';
import type { Moment } from '../frame/live.ts';
import { trackChainage } from '../frame/motion.ts';
import { type Paint, Painted } from '../frame/Painted.tsx';
import type { TrialView } from '../frame/trialView.ts';
import { GoButton } from '../GoButton.tsx';
import { Row } from '../rows/Row.tsx';
import { chainageFigure, differenceFigure, marginFigure, marginUnit, withUnit } from '../words.ts';
import { MarginTable } from './MarginTable.tsx';
import { failingStretches, paintMargin } from './paintMargin.ts';
import { seriesPlaces } from './seriesPlaces.ts';
import { subjectWords } from './subjectWords.ts';
import './margin.css';

const STRIP = { top: 3.5, height: 9 };
/** A figure beside a failing stretch needs this much before the next one, CSS px. */
const FIGURE_ROOM = 34;

interface WholeRow {
  readonly of: LeastMargins | null;
  readonly span: Span;
  readonly least: LeastMargins | null;
}

function leastOf(view: TrialView, series: RiskSeries, axis: AxisScale, density: number): LeastMargins | null {
  const { motion, trial } = view;
  if (!motion) return null;
  const count = Math.max(1, Math.round(axis.width * density));
  const columns = { from: axis.span.from, perUnit: count / (axis.span.to - axis.span.from), count };
  if (axis.kind === 'time') {
    return leastMargins(series.margins, series.subjects, () => motion.time, Number.POSITIVE_INFINITY, columns);
  }
  const places = seriesPlaces(series, trial.path);
  return leastMargins(series.margins, series.subjects, (subject) => places[subject], motion.jump, columns);
}

/** One risk along the axis: the least margin of whatever passes each place. */
export function MarginRow({ frame, series }: { readonly frame: BandFrame; readonly series: RiskSeries }) {
  const { view, ghost, beside, axis, layout, show, inks, paint: mode, actions } = frame;
  const risk = riskById(series.risk);
  const title = riskTitle(series.risk);
  const unit = marginUnit(risk.unit, show);
  const { density } = layout;
  const figure = (margin: number) => marginFigure(margin, risk.unit, show);
  const least = useMemo(() => leastOf(view, series, axis, density), [view, series, axis, density]);
  // A cure that is being tried is looked at before a variant is.
  const second = ghost ?? beside?.view ?? null;
  const secondSeries = second?.result?.risks.find((other) => other.risk === series.risk) ?? null;
  const secondLeast = useMemo(
    () => (second && secondSeries ? leastOf(second, secondSeries, axis, density) : null),
    [second, secondSeries, axis, density],
  );
  const strip = useMemo(() => ({ ...STRIP, top: STRIP.top + (layout.marginRow - 16) / 2 }), [layout.marginRow]);

  const paint = useCallback<Paint>(
    (context) => {
      const style = getComputedStyle(context.canvas);
      const rest = {
        colour: marginColours(risk.plenty, inks),
        left: (margin: number) => 1 - marginShade(margin, risk.plenty),
        density,
        mode,
        ink: style.color,
        mark: style.outlineColor,
      };
      // The margins of a cure or of a variant take the lower half of the strip.
      const half = strip.height / 2;
      if (least)
        paintMargin(context, { ...rest, ...strip, ...(secondLeast ? { height: half } : {}), margin: least.margin });
      if (secondLeast) {
        paintMargin(context, { ...rest, margin: secondLeast.margin, top: strip.top + half + 1, height: half - 1 });
      }
    },
    [least, secondLeast, risk.plenty, inks, mode, density, strip],
  );

  const failing = useMemo(() => {
    if (!least) return [];
    let free = Number.NEGATIVE_INFINITY;
    return failingStretches(least.margin, density).flatMap(({ first, last }) => {
      let low = 0;
      for (let c = first; c <= last; c++) if (least.margin[c] < low) low = least.margin[c];
      const left = (last + 1) / density + 3;
      if (left < free) return [];
      free = left + FIGURE_ROOM;
      return [{ key: first, left, low }];
    });
  }, [least, density]);

  const { worst } = series;
  const place = worst ? trackChainage(view.trial.path, worst.chainage) : Number.NaN;
  const fails = worst !== null && worst.margin < 0;
  const go = () => {
    if (!worst || !view.motion || !view.result) return;
    const finding = view.result.findings.findIndex((candidate) => candidate.risk === series.risk);
    if (finding >= 0) {
      actions.seekToFinding(finding);
      return;
    }
    if (risk.subject === 'joint') actions.chooseJoint(worst.subject);
    actions.seek(view.motion.time[worst.frame]);
  };
  const pointer =
    worst && view.motion ? xOf(axis, axis.kind === 'time' ? view.motion.time[worst.frame] : place) : Number.NaN;
  const secondAt = (x: number) =>
    secondLeast?.margin[Math.floor(Math.min(x, axis.width - 0.5) * density)] ?? Number.NaN;
  const marginAtX = (x: number) => least?.margin[Math.floor(x * density)] ?? Number.NaN;
  // Off a zoomed axis the value at the playhead comes from the whole of it, worked out when first asked for.
  const whole = useRef<WholeRow | null>(null);
  const marginNow = ({ x }: Moment): number => {
    if (!least || Number.isNaN(x) || (x >= 0 && x <= axis.width)) return marginAtX(Math.min(x, axis.width - 0.5));
    if (whole.current?.of !== least || whole.current.span !== frame.full) {
      const all = leastOf(view, series, { ...axis, span: frame.full }, density);
      whole.current = { of: least, span: frame.full, least: all };
    }
    const at = xOf({ ...axis, span: frame.full }, valueAt(axis, x));
    return whole.current.least?.margin[Math.floor(at * density)] ?? Number.NaN;
  };
  const subject = worst ? subjectWords(view.naming, risk.subject, worst.subject) : '';
  const after = secondSeries?.worst && worst ? figure(secondSeries.worst.margin) : '';
  const change = after && worst && after !== figure(worst.margin) ? ` → ${after}` : '';

  return (
    <Row
      frame={frame}
      id={series.risk}
      name={title}
      explain={explainRisk(series.risk)}
      unit={unit}
      height={layout.marginRow}
      className="gwb-margin"
      value={(moment) => {
        const margin = marginNow(moment);
        return Number.isNaN(margin) ? '–' : figure(margin);
      }}
      marked={(moment) => marginNow(moment) < 0}
      beside={
        beside && !ghost ? (moment) => differenceFigure(secondAt(moment.x) - marginNow(moment), risk.unit, show) : null
      }
      hover={(x) => {
        const margin = marginAtX(x);
        if (!least || Number.isNaN(margin)) return '';
        const sample = least.sample[Math.floor(x * density)];
        const who = subjectWords(view.naming, risk.subject, sample % series.subjects);
        const other = secondAt(x);
        const than = Number.isNaN(other) ? '' : ` → ${figure(other)}`;
        return `${withUnit(`${figure(margin)}${than}`, unit)}${who ? ` · ${who}` : ''}`;
      }}
      {...(worst ? { enter: go } : {})}
      right={
        worst ? (
          <GoButton go={go} label={`Least of ${title}`} marked={fails}>
            {withUnit(figure(worst.margin), unit)}
            {change}
            {subject && !layout.narrow && !change ? ` · ${subject}` : ''} · {chainageFigure(place, show)}
          </GoButton>
        ) : view.result ? (
          <span className="gwb-foot">nowhere in question</span>
        ) : null
      }
      table={<MarginTable view={view} show={show} series={series} title={title} />}
    >
      <Painted
        key={view.result ? `${view.result.trialId} ${view.result.run.steps}` : 'none'}
        width={axis.width}
        height={layout.marginRow}
        density={density}
        paint={paint}
        className={view.trial.path.reversed && axis.kind === 'chainage' ? 'gwb-sweep gwb-sweep-back' : 'gwb-sweep'}
      />
      <svg className="gwb-draw" width={axis.width} height={layout.marginRow} aria-hidden="true">
        {beside && !ghost ? (
          <line
            x1={0}
            x2={axis.width}
            y1={strip.top + strip.height / 2 + 0.5}
            y2={strip.top + strip.height / 2 + 0.5}
            className="gwb-beside"
          />
        ) : null}
        {failing.map(({ key, left, low }) => (
          <text key={key} x={left} y={strip.top + 8.5} className="gwb-letters gwb-below">
            {figure(low)}
          </text>
        ))}
        {pointer >= 0 && pointer <= axis.width ? (
          <path
            d={`M${(pointer - 3.5).toFixed(1)},${strip.top - 2.5}h7l-3.5,5z`}
            className={fails ? 'gwb-least gwb-bad' : 'gwb-least'}
          />
        ) : null}
      </svg>
    </Row>
  );
}
