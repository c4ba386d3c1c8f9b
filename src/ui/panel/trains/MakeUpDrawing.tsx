import type { TrainOfScene } from '../../../state/index.ts';
import { layOutStrip } from '../trial/stripLayout.ts';

/** Size of the drawing, px. */
const width = 312;
const height = 34;
const ground = 28;

interface MakeUpDrawingProps {
  readonly train: TrainOfScene;
  /** Index of an entry. */
  readonly chosen: number;
  readonly onChoose: (entry: number) => void;
}

/** The train from the side, lengths to scale, its end called "first" at the left; a press chooses a vehicle. The list under it does the same by keyboard. */
export function MakeUpDrawing({ train, chosen, onChoose }: MakeUpDrawingProps) {
  const boxes = layOutStrip(train.vehicles, { width: width - 2, tallest: 24, mirrored: false });
  const entryOf = (index: number) => train.groups.findIndex(({ from, count }) => index + 1 < from + count);
  return (
    <svg
      className="make-up-drawing"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      aria-hidden="true"
    >
      {boxes.map((box, index) => {
        const { name, drive } = train.vehicles[index];
        const kind = drive ? 'vehicle engine' : 'vehicle';
        return (
          <rect
            key={box.from}
            className={entryOf(index) === chosen ? `${kind} chosen` : kind}
            x={1 + box.from}
            y={ground - box.tall}
            width={box.to - box.from}
            height={box.tall}
            onPointerDown={() => onChoose(entryOf(index))}
          >
            <title>{name}</title>
          </rect>
        );
      })}
      <path className="rail-line" d={`M0 ${ground + 2.5}H${width}`} />
    </svg>
  );
}
