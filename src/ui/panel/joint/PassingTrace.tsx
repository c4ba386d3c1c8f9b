import { useEffect, useMemo, useRef } from 'react';
import type { Finding } from '../../../core/findings/types.ts';
import { riskById } from '../../../core/risks/index.ts';
import { placeWords } from '../../../state/index.ts';
import { frameAt, nearestFrame, trackChainage } from '../../band/frame/motion.ts';
import { marginFigure, marginUnit } from '../../band/words.ts';
import { useDesk, useSession } from '../../context.tsx';
import { useShow } from '../../show.ts';
import { type Passing, passingOf } from './passing.ts';

const width = 148;
const height = 54;
const top = 6;

/** The margin along the last and next 300 mm of the joint's way, nothing left being the dashed line; the cure's dashed over it. */
export function PassingTrace({ finding, joint }: { readonly finding: Finding; readonly joint: number }) {
  const { playback } = useDesk();
  const show = useShow();
  const result = useSession((state) => state.result);
  const trial = useSession((state) => state.trial);
  const ghost = useSession((state) => state.ghost);
  const now = useRef<SVGGElement>(null);

  const passing = useMemo(
    () =>
      result &&
      trial &&
      passingOf(result, finding.risk, joint, finding.chainage, (at) => trackChainage(trial.path, at)),
    [result, trial, finding, joint],
  );
  const cured = useMemo(() => {
    // Only a train of the same vehicles the same way round has the same joint.
    const same =
      ghost &&
      trial &&
      ghost.trial.propelled === trial.propelled &&
      ghost.result.run.vehicles === trial.train.vehicles.length;
    if (!same) return null;
    return passingOf(ghost.result, finding.risk, joint, finding.chainage, (at) => trackChainage(ghost.trial.path, at));
  }, [ghost, trial, finding, joint]);

  const from = passing ? Math.min(...passing.at) : 0;
  const to = passing ? Math.max(...passing.at) : 1;
  const values = [...(passing?.margin ?? []), ...(cured?.margin ?? []), 0];
  const least = Math.min(...values);
  const most = Math.max(...values);
  const x = (at: number) => ((at - from) / Math.max(1e-9, to - from)) * width;
  const y = (margin: number) => top + ((most - margin) / Math.max(1e-12, most - least)) * (height - top - 4);

  useEffect(() => {
    if (!passing || !result) return;
    const follow = () => {
      const { time } = playback.getState();
      const index = passing.frame.indexOf(nearestFrame(frameAt(result.run.time, time)));
      if (!now.current) return;
      now.current.style.visibility = index < 0 ? 'hidden' : 'visible';
      if (index < 0) return;
      const across = ((passing.at[index] - from) / Math.max(1e-9, to - from)) * width;
      const down = top + ((most - passing.margin[index]) / Math.max(1e-12, most - least)) * (height - top - 4);
      now.current.setAttribute('transform', `translate(${across} ${down})`);
    };
    follow();
    return playback.subscribe(follow);
  }, [passing, playback, result, from, to, most, least]);

  if (!passing) return null;
  const line = (points: Passing) =>
    `M${points.at.map((at, index) => `${x(at).toFixed(1)} ${y(points.margin[index]).toFixed(1)}`).join('L')}`;
  const { unit } = riskById(finding.risk);
  return (
    <div className="passing-trace">
      <p className="name">Margin as it passes, {marginUnit(unit, show)}</p>
      <svg width={width} height={height + 16} role="img" aria-label={`Least ${marginFigure(least, unit, show)}`}>
        <path className="nothing-left" d={`M0 ${y(0)}H${width}`} />
        {cured && <path className="cured" d={line(cured)} />}
        <path className="trace" d={line(passing)} />
        <g ref={now}>
          <path className="playhead" d={`M0 ${-height}V${height * 2}`} />
          <circle r={3.2} />
        </g>
        <path className="ground" d={`M0 ${height}H${width}`} />
        <text x={0} y={height + 13}>
          {placeWords(from, show)}
        </text>
        <text x={width} y={height + 13} textAnchor="end">
          {placeWords(to, show)}
        </text>
      </svg>
    </div>
  );
}
