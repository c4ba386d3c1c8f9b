import { useMemo } from 'react';
import { type ShapeScale, type StartingShape, startingShapes, usualValues } from '../../state/shapes/index.ts';
import { madeOf } from './made.ts';
import { Sketch } from './Sketch.tsx';

interface ShapeListProps {
  readonly scale: ShapeScale;
  readonly chosen: StartingShape;
  readonly onChoose: (shape: StartingShape) => void;
}

/** The shapes to start from, each drawn as it comes with its usual numbers. */
export function ShapeList({ scale, chosen, onChoose }: ShapeListProps) {
  const drawn = useMemo(
    () => startingShapes.map((shape) => ({ shape, made: madeOf(shape, scale, usualValues(shape, scale)) })),
    [scale],
  );
  return (
    <fieldset className="shape-list">
      <legend className="seen-by-readers">Start from</legend>
      {drawn.map(({ shape, made }) => (
        <label key={shape.id}>
          <input type="radio" name="shape" checked={shape === chosen} onChange={() => onChoose(shape)} />
          <span className="card">
            {made.ok ? <Sketch scene={made.shaped.scene} view="side" /> : <span className="sketch" />}
            <b>{shape.name}</b>
          </span>
        </label>
      ))}
    </fieldset>
  );
}
