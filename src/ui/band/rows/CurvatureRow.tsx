import { useMemo, useRef } from 'react';
import { trackPoint } from '../../../core/track/index.ts';
import type { Track } from '../../../core/track/types.ts';
import { timeAtPlace } from '../../../state/index.ts';
import type { BandFrame, Fonts } from '../frame/bandFrame.ts';
import { stretchesOf } from '../frame/columns.ts';
import { LiveText } from '../frame/LiveText.tsx';
import { ROW_HEIGHT } from '../frame/layout.ts';
import { useLive } from '../frame/live.ts';
import { asideOf, type InStretch } from '../section/asideOf.ts';
import type { Ground } from '../section/ground.ts';
import { textWidth } from '../textWidth.ts';
import { chainageFigure, chainageUnit, radiusWords, type Show } from '../words.ts';
import { Row } from './Row.tsx';
import '../section/lines.css';

const HEIGHT = ROW_HEIGHT.curvature;
const LINE = 12.5;
/** The sharpest curve reaches this far from the line, px. */
const REACH = 9;
/** A track without curves sharper than this is drawn to this scale, 1/m. */
const LEAST_SHARPNESS = 0.2;

/** A stretch of constant curvature. */
interface Bend {
  readonly from: number;
  readonly to: number;
  readonly curvature: number;
}

/** Arcs and helixes, neighbours of one radius as one. */
function bendsOf(track: Track): Bend[] {
  const bends: Bend[] = [];
  const { elements, startChainage } = track.plan;
  for (const [k, element] of elements.entries()) {
    const curvature = element.startCurvature;
    if (curvature !== element.endCurvature || curvature === 0) continue;
    const from = startChainage[k];
    const before = bends[bends.length - 1];
    if (before && before.curvature === curvature && Math.abs(before.to - from) < 1e-9) {
      bends[bends.length - 1] = { ...before, to: from + element.length };
    } else bends.push({ from, to: from + element.length, curvature });
  }
  return bends;
}

const sharpestOf = (track: Track): number =>
  Math.max(
    LEAST_SHARPNESS,
    ...track.plan.elements.flatMap((element) => [Math.abs(element.startCurvature), Math.abs(element.endCurvature)]),
  );

/** The line of another track's curvature to a scale (px times m), as far as it goes. */
function lineOf(track: Track, ground: Ground, perUnit: number): string {
  const points = [...ground.places].flatMap((place, x) =>
    place >= 0 && place <= track.length
      ? [`${x},${(LINE - trackPoint(track, place).curvature * perUnit).toFixed(1)}`]
      : [],
  );
  return points.length === 0 ? '' : `M${points.join('L')}`;
}

interface Label extends InStretch {
  readonly key: string;
  readonly y: number;
  readonly text: string;
}

function drawingOf(
  track: Track,
  ground: Ground,
  bends: readonly Bend[],
  show: Show,
  fonts: Fonts,
  beside: Track | null,
) {
  const perUnit = REACH / Math.max(sharpestOf(track), beside === null ? 0 : sharpestOf(beside));
  const last = ground.places.length - 1;
  const points: string[] = [];
  let before = Number.NaN;
  let held = '';
  for (let x = 0; x <= last; x++) {
    const y = LINE - trackPoint(track, ground.places[x]).curvature * perUnit;
    const point = `${x},${y.toFixed(2)}`;
    if (y !== before || x === last) {
      if (held) points.push(held);
      points.push(point);
      held = '';
    } else held = point;
    before = y;
  }
  const labels = bends.flatMap((bend) =>
    stretchesOf(ground.places.length, (x) => ground.places[x] >= bend.from && ground.places[x] <= bend.to).flatMap(
      ({ first, last: end }) => {
        const text = radiusWords(bend.curvature, show);
        const width = textWidth(text, `11.5px ${fonts.letter}`);
        if (width + 8 > end - first) return [];
        // On the free side of the line, away from the curve's own area.
        return [
          {
            key: `${bend.from} ${first}`,
            x: (first + end) / 2,
            from: first,
            to: end,
            width,
            y: bend.curvature > 0 ? LINE + 10 : LINE - 3,
            text,
          },
        ];
      },
    ),
  );
  return {
    path: `M0,${LINE}L${points.join('L')}L${last},${LINE}Z`,
    beside: beside && lineOf(beside, ground, perUnit),
    labels,
  };
}

/** A radius written in its bend. It makes room for the playhead; where there is none it goes, and the row's own value says it meanwhile. */
function CurvatureLabel({ label, frame }: { readonly label: Label; readonly frame: BandFrame }) {
  const text = useRef<SVGTextElement>(null);
  useLive(frame.live, ({ x }) => {
    const element = text.current;
    if (!element) return;
    const aside = asideOf(label, x);
    element.style.visibility = aside === null ? 'hidden' : '';
    if (aside !== null) element.setAttribute('x', aside.toFixed(1));
  });
  return (
    <text ref={text} x={label.x} y={label.y} textAnchor="middle" className="gwb-letters gwb-figure">
      {label.text}
    </text>
  );
}

/** Curvature: left above the line, right below. */
export function CurvatureRow({ frame }: { readonly frame: BandFrame }) {
  const { view, beside, ground, show, axis, fonts, live } = frame;
  const other = beside?.view.track ?? null;
  const { track, motion } = view;
  const bends = useMemo(() => bendsOf(track), [track]);
  const drawing = useMemo(
    () => (ground ? drawingOf(track, ground, bends, show, fonts, other) : null),
    [track, ground, bends, show, fonts, other],
  );
  const words = (place: number) => (Number.isNaN(place) ? '–' : radiusWords(trackPoint(track, place).curvature, show));
  const enter = () => {
    const sharpest = bends.reduce<Bend | null>(
      (best, bend) => (best && Math.abs(best.curvature) >= Math.abs(bend.curvature) ? best : bend),
      null,
    );
    if (!sharpest || !motion || !frame.reference) return;
    frame.actions.seek(
      timeAtPlace(motion.time, frame.reference, (sharpest.from + sharpest.to) / 2, live.moment?.time ?? 0),
    );
  };
  return (
    <Row
      frame={frame}
      id="curvature"
      name="Curvature"
      height={HEIGHT}
      value={({ place }) => words(place)}
      hover={(x) => words(ground ? ground.places[Math.min(ground.places.length - 1, Math.round(x))] : Number.NaN)}
      enter={enter}
      right={
        other === null ? (
          <span className="gwb-foot">left above, right below</span>
        ) : (
          <LiveText
            live={live}
            className="gwb-foot"
            read={({ place }) =>
              place >= 0 && place <= other.length
                ? `→ ${radiusWords(trackPoint(other, place).curvature, show)}`
                : 'ends before'
            }
          />
        )
      }
      table={
        <table>
          <caption>Curvature</caption>
          <thead>
            <tr>
              <th scope="col">from, {chainageUnit(show)}</th>
              <th scope="col">to</th>
              <th scope="col">radius</th>
            </tr>
          </thead>
          <tbody>
            {bends.map((bend) => (
              <tr key={bend.from}>
                <td>{chainageFigure(bend.from, show)}</td>
                <td>{chainageFigure(bend.to, show)}</td>
                <td>{radiusWords(bend.curvature, show)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      }
    >
      <svg className="gwb-draw" width={axis.width} height={HEIGHT} aria-hidden="true">
        {drawing ? <path d={drawing.path} className="gwb-curvature" /> : null}
        <line x1={0} x2={axis.width} y1={LINE} y2={LINE} className="gwb-curvature-line" />
        {drawing?.beside ? <path d={drawing.beside} className="gwb-beside" /> : null}
        {drawing?.labels.map((label) => (
          <CurvatureLabel key={label.key} label={label} frame={frame} />
        ))}
      </svg>
    </Row>
  );
}
