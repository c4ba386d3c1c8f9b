import { useRef } from 'react';
import type { ShapedScene } from '../../state/shapes/index.ts';
import { sketchOf } from '../../state/shapes/index.ts';
import { distanceShown, gradeShown, lengthShown, type Show, useShow } from '../show.ts';
import type { Made } from './made.ts';
import { Sketch } from './Sketch.tsx';

/** What the numbers come to: its plan, the room it takes, what it has, and which standard each further number comes from. */
export function Proposal({ made }: { readonly made: Made }) {
  const show = useShow();
  // While the numbers make nothing, what they made last stays, dimmed.
  const last = useRef<ShapedScene | null>(null);
  if (made.ok) last.current = made.shaped;
  const shaped = last.current;
  return (
    <div className={made.ok ? 'proposal' : 'proposal not'}>
      {shaped && <Sketch scene={shaped.scene} view="above" />}
      {made.ok ? (
        <p className="comes-to">{comesTo(made.shaped, show)}</p>
      ) : (
        <p className="comes-to" role="alert">
          {made.why}
        </p>
      )}
      {made.ok && made.shaped.because.length > 0 && (
        <dl>
          {made.shaped.because.map(({ what, source }) => (
            <div key={what}>
              <dt>{what}</dt>
              <dd>{source}</dd>
            </div>
          ))}
        </dl>
      )}
    </div>
  );
}

function comesTo({ scene, promise }: ShapedScene, show: Show): string {
  const sketch = sketchOf(scene, 'above');
  const metres = (length: number) => distanceShown(length, show).shown.join('\u2009');
  const small = (mm: number) => lengthShown(mm / 1000, show).shown.join('\u2009');
  return [
    sketch && `${metres(sketch.width)} by ${metres(sketch.depth)} on the table`,
    sketch && sketch.broader > 1 && `drawn ${Math.round(sketch.broader)} times as broad`,
    promise.riseMm > 0 && `rises ${small(promise.riseMm)}`,
    promise.gradePercent > 0 &&
      `at most ${gradeShown(promise.gradePercent / 100, show)
        .shown.filter((part) => part !== '')
        .join('\u2009')}`,
    promise.clearMm !== null && `${small(promise.clearMm)} clear under the deck above`,
  ]
    .filter(Boolean)
    .join(' · ');
}
