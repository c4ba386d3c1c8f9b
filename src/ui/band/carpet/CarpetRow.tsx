import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { xOf } from '../frame/axis.ts';
import type { BandFrame } from '../frame/bandFrame.ts';
import { strongestForces } from '../frame/columns.ts';
import { CARPET_MARGIN, carpetLayout, scrollFor } from '../frame/layout.ts';
import { type Moment, useLive } from '../frame/live.ts';
import { nearestFrame, valueBetween } from '../frame/motion.ts';
import { type Paint, Painted } from '../frame/Painted.tsx';
import { strongestForceOf } from '../frame/trialView.ts';
import { Row } from '../rows/Row.tsx';
import { forceFigure } from '../words.ts';
import { CarpetGutter } from './CarpetGutter.tsx';
import { CarpetTable } from './CarpetTable.tsx';
import { forceColours } from './colourScales.ts';
import { ForceLegend } from './ForceLegend.tsx';
import { jointName } from './jointName.ts';
import { paintCarpet } from './paintCarpet.ts';
import './carpet.css';

/** The legend needs this much, so a short train's carpet stands in a taller row. */
const LEAST_HEIGHT = 58;

export function carpetHeight(joints: number): number {
  return Math.max(LEAST_HEIGHT, carpetLayout(joints).height);
}

/** The force carpet: chainage across, joint by joint downward, each joint at its own chainage. */
export function CarpetRow({ frame }: { readonly frame: BandFrame }) {
  const { view, axis, layout, inks, live, chosenJoint, paint: mode, actions } = frame;
  const { motion, forces, greatestForce, trial, result } = view;
  const joints = trial.train.vehicles.length - 1;
  const carpet = useMemo(() => carpetLayout(joints), [joints]);
  const colours = useMemo(() => forceColours(greatestForce, inks), [greatestForce, inks]);
  const columns = useMemo(() => {
    if (!motion) return [];
    const count = Math.max(1, Math.round(axis.width * layout.density));
    const perUnit = count / (axis.span.to - axis.span.from);
    return motion.joints.map((places, j) =>
      strongestForces(
        axis.kind === 'time' ? motion.time : places,
        axis.kind === 'time' ? Number.POSITIVE_INFINITY : motion.jump,
        forces[j],
        { from: axis.span.from, perUnit, count },
      ),
    );
  }, [motion, forces, axis, layout.density]);
  const paint = useCallback<Paint>(
    (context) => {
      const { color: ink } = getComputedStyle(context.canvas);
      paintCarpet(context, { columns, carpet, density: layout.density, colours, inks, mode, ink });
    },
    [columns, carpet, layout.density, colours, inks, mode],
  );

  const [scroll, setScroll] = useState(0);
  useEffect(() => {
    setScroll((now) => scrollFor(chosenJoint ?? 0, carpet, now));
  }, [chosenJoint, carpet]);

  const halo = useRef<SVGPathElement>(null);
  const thread = useRef<SVGPathElement>(null);
  const beads = useRef<SVGPathElement>(null);
  const ring = useRef<SVGCircleElement>(null);
  const middleOf = (joint: number) => CARPET_MARGIN + joint * carpet.pitch + (carpet.pitch - 1) / 2;
  useLive(live, (moment) => {
    if (!motion) return;
    const xs = motion.joints.map((places) =>
      axis.kind === 'time' ? xOf(axis, moment.time) : xOf(axis, valueBetween(places, moment)),
    );
    const line = xs.map((x, j) => `${j === 0 ? 'M' : 'L'}${x.toFixed(1)},${middleOf(j)}`).join('');
    halo.current?.setAttribute('d', line);
    thread.current?.setAttribute('d', line);
    const dots = xs.map((x, j) => (j === chosenJoint ? '' : `M${x.toFixed(1)},${middleOf(j)}h0`)).join('');
    beads.current?.setAttribute('d', dots);
    if (chosenJoint !== null && ring.current) ring.current.setAttribute('cx', xs[chosenJoint].toFixed(1));
  });

  const jointAt = (y: number) => {
    const joint = Math.floor((y + scroll - CARPET_MARGIN) / carpet.pitch);
    return motion && joint >= 0 && joint < joints ? joint : undefined;
  };
  const forceNow = (joint: number, moment: Moment) =>
    result ? result.run.force[nearestFrame(moment) * joints + joint] : Number.NaN;
  const goToStrongest = () => {
    const best = strongestForceOf(view, chosenJoint);
    if (!best || !motion) return;
    actions.chooseJoint(best.joint);
    actions.seek(motion.time[best.frame]);
  };
  const height = carpetHeight(joints);
  const size = { width: axis.width, height: carpet.full };

  return (
    <Row
      frame={frame}
      id="carpet"
      name="Coupler force"
      unit="N"
      height={height}
      className="gwb-carpet"
      value={(moment) => (chosenJoint === null ? '' : forceFigure(forceNow(chosenJoint, moment), greatestForce))}
      hover={(x, y) => {
        const joint = jointAt(y);
        const force = joint === undefined ? Number.NaN : columns[joint][Math.floor(x * layout.density)];
        if (joint === undefined || !(Math.abs(force) >= 0)) return '';
        return `${jointName(view.naming, joint)} · ${force === 0 ? 'slack' : `${forceFigure(force, greatestForce)} N`}`;
      }}
      press={(_, y) => {
        const joint = jointAt(y);
        if (joint !== undefined) actions.chooseJoint(joint);
        return joint;
      }}
      upDown={(direction) =>
        actions.chooseJoint(Math.max(0, Math.min(joints - 1, (chosenJoint ?? -direction) + direction)))
      }
      enter={goToStrongest}
      gutter={<CarpetGutter frame={frame} carpet={carpet} scroll={scroll} setScroll={setScroll} forceNow={forceNow} />}
      right={<ForceLegend frame={frame} colours={colours} height={height} />}
      table={<CarpetTable view={view} show={frame.show} />}
    >
      <div className="gwb-window" style={{ height: carpet.height }}>
        <div className="gwb-scrolled" style={{ transform: `translateY(${-scroll}px)`, height: carpet.full }}>
          {/* The train's own way of coming in: a new result is drawn from where the train starts. */}
          <Painted
            key={result ? `${result.trialId} ${result.run.steps}` : 'none'}
            {...size}
            density={layout.density}
            paint={paint}
            className={trial.path.reversed && axis.kind === 'chainage' ? 'gwb-sweep gwb-sweep-back' : 'gwb-sweep'}
          />
          {motion ? (
            <svg className="gwb-draw" {...size} aria-hidden="true">
              <path ref={halo} className="gwb-thread-halo" />
              <path ref={thread} className="gwb-thread" />
              <path ref={beads} className={carpet.pitch < 8 ? 'gwb-beads gwb-small' : 'gwb-beads'} />
              {chosenJoint !== null && chosenJoint < joints ? (
                <circle ref={ring} r={carpet.pitch < 8 ? 3.6 : 4.2} cy={middleOf(chosenJoint)} className="gwb-ring" />
              ) : null}
            </svg>
          ) : null}
        </div>
      </div>
    </Row>
  );
}
