import { useMemo } from 'react';
import { sketchOf } from '../../state/shapes/index.ts';
import type { Scene } from '../../state/types.ts';

interface SketchProps {
  readonly scene: Scene;
  readonly view: 'above' | 'side';
}

/** The tracks of a railway in ink, without a word: what stands beside it says what it is. */
export function Sketch({ scene, view }: SketchProps) {
  const sketch = useMemo(() => sketchOf(scene, view), [scene, view]);
  if (!sketch) return <span className="sketch" />;
  return (
    <svg className="sketch" viewBox={sketch.viewBox} preserveAspectRatio="xMidYMid meet" aria-hidden="true">
      <path d={sketch.posts} className="posts" />
      {sketch.lines.map((line) => (
        <path key={line} d={line} className="line" />
      ))}
    </svg>
  );
}
