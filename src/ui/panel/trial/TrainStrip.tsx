import type { KeyboardEvent } from 'react';
import { jointNumber, jointVehicles } from '../../../core/findings/index.ts';
import { namingOf } from '../../../state/index.ts';
import type { CompiledTrial } from '../../../state/types.ts';
import { useDesk, useSession } from '../../context.tsx';
import { layOutStrip } from './stripLayout.ts';

/** Size of the drawing, px. */
const width = 148;
const height = 38;
const ground = 20;

interface TrainStripProps {
  readonly trial: CompiledTrial;
}

/**
 * The train from the side, lengths to scale, standing the way it goes along the band. The chosen joint is ringed; arrow keys and a
 * press choose another.
 */
export function TrainStrip({ trial }: TrainStripProps) {
  const { actions } = useDesk();
  const chosen = useSession((state) => state.chosenJoint);
  const { train, path, propelled } = trial;
  const naming = namingOf({ trial, result: null });
  const boxes = layOutStrip(train.vehicles, { width: width - 2, tallest: 15, mirrored: !path.reversed });
  const joints = boxes
    .slice(1)
    .map((box, joint) =>
      box.from < boxes[joint].from ? (box.to + boxes[joint].from) / 2 : (boxes[joint].to + box.from) / 2,
    );
  const step = (event: KeyboardEvent) => {
    const along = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    if (along === undefined || joints.length === 0) return;
    event.preventDefault();
    event.stopPropagation();
    // The first joint behind the leading vehicle stands at the right unless the train goes left.
    const by = path.reversed ? along : -along;
    actions.chooseJoint(Math.min(joints.length - 1, Math.max(0, (chosen ?? (by > 0 ? -1 : 0)) + by)));
  };
  const between = (joint: number) =>
    `joint ${jointNumber(naming, joint)}, between ${jointVehicles(naming, joint).join(' and ')}`;
  const ringed = chosen !== null && chosen < joints.length ? joints[chosen] : null;
  const ends = path.reversed ? ['leads', propelled ? 'propels' : ''] : [propelled ? 'propels' : '', 'leads'];
  const inTheWay = ringed !== null && (ringed < 56 || ringed > width - 50);
  return (
    <div
      className="train-strip"
      role="slider"
      tabIndex={0}
      aria-label="Chosen joint"
      aria-valuemin={1}
      aria-valuemax={joints.length}
      aria-valuenow={chosen === null ? 0 : jointNumber(naming, chosen)}
      aria-valuetext={chosen === null ? 'none' : between(chosen)}
      onKeyDown={step}
    >
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {boxes.map((box, index) => {
          const vehicle = train.vehicles[index];
          const atJoint = chosen !== null && (index === chosen || index === chosen + 1);
          return (
            <rect
              key={box.from}
              className={atJoint ? 'vehicle chosen' : vehicle.drive ? 'vehicle engine' : 'vehicle'}
              x={1 + box.from}
              y={ground - 2 - box.tall}
              width={box.to - box.from}
              height={box.tall}
            >
              <title>{vehicle.name}</title>
            </rect>
          );
        })}
        <path className="rail-line" d={`M0 ${ground + 0.5}H${width}`} />
        {joints.map((x, joint) => (
          <rect
            key={x}
            className="catch"
            x={1 + x - 6}
            y={0}
            width={12}
            height={ground + 4}
            onPointerDown={() => actions.chooseJoint(chosen === joint ? null : joint)}
          >
            <title>{between(joint)}</title>
          </rect>
        ))}
        {ringed !== null && <circle className="ring" cx={1 + ringed} cy={ground - 6} r={3} />}
        {ringed !== null && (
          <text className="joint" x={Math.min(width - 18, Math.max(18, 1 + ringed))} y={34} textAnchor="middle">
            joint {jointNumber(naming, chosen!)}
          </text>
        )}
        {!(inTheWay && ringed! < 56) && (
          <text x={0} y={34}>
            {ends[0]}
          </text>
        )}
        {!(inTheWay && ringed! > width - 50) && (
          <text x={width} y={34} textAnchor="end">
            {ends[1]}
          </text>
        )}
      </svg>
    </div>
  );
}
