import { useMemo } from 'react';
import type { Track } from '../../../core/track/types.ts';
import { outOfReach } from '../../../state/room/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk } from '../../context.tsx';
import { counted, distanceShown, lengthShown, useShow } from '../../show.ts';

/** How much of a track no hand gets to, as a fact: nothing where the room does not say how far its person reaches. */
export function ReachFact({ scene, track }: { readonly scene: Scene; readonly track: Track }) {
  const { actions } = useDesk();
  const show = useShow();
  const stretches = useMemo(() => outOfReach(scene, track), [scene, track]);
  if (stretches === null) return null;
  const worst = stretches.reduce((most, one) => (one.farthest > most.farthest ? one : most), {
    from: 0,
    to: 0,
    farthest: 0,
  });
  const length = stretches.reduce((sum, { from, to }) => sum + to - from, 0);
  const where = Number.isFinite(worst.farthest)
    ? `${lengthShown(worst.farthest, show).shown.join('\u2009')} from the edge`
    : 'nowhere to stand';
  return (
    <div className="reach-fact">
      <dt>Out of reach</dt>
      <dd>
        {stretches.length === 0 ? (
          'nothing'
        ) : (
          <button type="button" title="Go there" onClick={() => actions.goToPlace((worst.from + worst.to) / 2)}>
            {distanceShown(length, show).shown.join('\u2009')}
            <small>
              {stretches.length > 1 && `${counted(stretches.length, 'stretch', 'stretches')}, `}
              {where}
            </small>
          </button>
        )}
      </dd>
    </div>
  );
}
