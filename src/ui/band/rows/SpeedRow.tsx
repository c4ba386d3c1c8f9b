import { useMemo } from 'react';
import type { Run } from '../../../core/dynamics/types.ts';
import { formatNumber, formatSpeed } from '../../../core/units/index.ts';
import { xOf } from '../frame/axis.ts';
import type { BandFrame } from '../frame/bandFrame.ts';
import { LiveText } from '../frame/LiveText.tsx';
import { ROW_HEIGHT, speedHeight } from '../frame/layout.ts';
import { frameAt, valueBetween } from '../frame/motion.ts';
import { timeAtX } from '../frame/navigate.ts';
import { Row } from './Row.tsx';
import '../section/lines.css';

const HEIGHT = ROW_HEIGHT.speed;
const BASE = 18;
const REACH = 15;
/** Points of the line closer than this to the one before are left out, px. */
const FINE = 0.5;

/** Speed of a vehicle by frame, m/s. */
function speedsOf(run: Run, vehicle: number): Float64Array {
  return Float64Array.from({ length: run.frames }, (_, f) => run.speed[f * run.vehicles + vehicle]);
}

/** Speed along the axis, and to scale beside it. */
export function SpeedRow({ frame }: { readonly frame: BandFrame }) {
  const { view, axis, reference, vehicle, live, ratio, show } = frame;
  const { result, motion } = view;
  const speeds = useMemo(() => (result ? speedsOf(result.run, vehicle) : null), [result, vehicle]);
  const line = useMemo(() => {
    if (!speeds || !motion || !reference) return '';
    const greatest = speeds.reduce((most, speed) => Math.max(most, Math.abs(speed)), 0.01);
    const parts: string[] = [];
    let lastX = Number.NEGATIVE_INFINITY;
    let lastY = Number.NEGATIVE_INFINITY;
    for (let f = 0; f < speeds.length; f++) {
      const x = xOf(axis, axis.kind === 'time' ? motion.time[f] : reference[f]);
      const y = BASE - (Math.abs(speeds[f]) / greatest) * REACH;
      // Off the axis the line is only kept going; a hundred screens away it need not be exact.
      const clipped = Math.max(-1e4, Math.min(1e4, x));
      if (f < speeds.length - 1 && Math.abs(clipped - lastX) < FINE && Math.abs(y - lastY) < FINE) continue;
      parts.push(`${parts.length === 0 ? 'M' : 'L'}${clipped.toFixed(1)},${y.toFixed(1)}`);
      lastX = clipped;
      lastY = y;
    }
    return parts.join('');
  }, [speeds, motion, reference, axis]);
  const figure = (speed: number) =>
    formatNumber(show.lengthUnit === 'in' ? speed / 0.0254 : speed, { digits: show.lengthUnit === 'in' ? 1 : 3 });
  const unit = show.lengthUnit === 'in' ? 'in/s' : 'm/s';
  const toScale = (speed: number) =>
    ratio === null
      ? ''
      : `scale ${formatSpeed(speed, { scale: ratio, unit: show.lengthUnit === 'in' ? 'mph' : 'km/h', digits: 0 })}`;
  const seconds = motion ? Array.from({ length: Math.ceil((motion.time.at(-1) ?? 0) / 10) + 1 }, (_, k) => k * 10) : [];
  const enter = () => {
    if (!speeds || !motion) return;
    const greatest = speeds.reduce((most, speed) => Math.max(most, Math.abs(speed)), 0);
    // Starting and stopping are always slow; the least is looked for between them.
    const under = (speed: number) => Math.abs(speed) > greatest / 2;
    const first = speeds.findIndex(under);
    const last = speeds.findLastIndex(under);
    let best = first;
    for (let f = first; f <= last; f++) if (Math.abs(speeds[f]) < Math.abs(speeds[best])) best = f;
    if (best >= 0) frame.actions.seek(motion.time[best]);
  };
  return (
    <Row
      frame={frame}
      id="speed"
      name="Speed"
      unit={unit}
      height={speedHeight(frame.layout)}
      value={(moment) => (speeds ? figure(valueBetween(speeds, moment)) : '–')}
      hover={(x) => {
        const time = timeAtX(frame, axis, x, live.moment?.time ?? 0);
        if (time === null || !speeds || !motion) return '';
        return `${figure(valueBetween(speeds, frameAt(motion.time, time)))} ${unit}`;
      }}
      enter={enter}
      right={
        <LiveText
          live={live}
          className="gwb-foot"
          read={(moment) => (speeds ? toScale(Math.abs(valueBetween(speeds, moment))) : '')}
        />
      }
      table={
        <table>
          <caption>Speed every ten seconds</caption>
          <thead>
            <tr>
              <th scope="col">time, s</th>
              <th scope="col">speed, {unit}</th>
            </tr>
          </thead>
          <tbody>
            {seconds.map((second) => {
              const f = motion && speeds ? motion.time.findIndex((time) => time >= second) : -1;
              return f < 0 || !speeds ? null : (
                <tr key={second}>
                  <td>{second}</td>
                  <td>{figure(speeds[f])}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      }
    >
      <svg className="gwb-draw" width={axis.width} height={HEIGHT} aria-hidden="true">
        <line x1={0} x2={axis.width} y1={BASE} y2={BASE} className="gwb-comb-base" />
        {line ? <path d={line} className="gwb-speed" /> : null}
      </svg>
    </Row>
  );
}
