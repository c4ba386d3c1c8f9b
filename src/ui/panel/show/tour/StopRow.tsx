import type { SceneTourStop } from '../../../../state/show/index.ts';
import type { Scene } from '../../../../state/types.ts';
import { useDesk, useSession } from '../../../context.tsx';
import { Refusable } from '../../../controls/Refusable.tsx';
import { StopFields } from './StopFields.tsx';
import { momentWords, viewWords } from './words.ts';

interface StopRowProps {
  readonly scene: Scene;
  readonly stop: SceneTourStop;
  /** Its place in the tour, from 0. */
  readonly index: number;
}

/** One stop of the tour: pressed it is gone to, and says there what it is made of. */
export function StopRow({ scene, stop, index }: StopRowProps) {
  const { actions } = useDesk();
  const here = useSession((state) => state.tour.stop === stop.id);
  const count = scene.tour?.length ?? 0;
  return (
    <li className={here ? 'edit-row chosen' : 'edit-row'}>
      <button
        type="button"
        className="row-head"
        aria-current={here ? 'step' : undefined}
        title="Go there"
        onClick={() => void actions.goToStop(stop.id)}
      >
        <i>{index + 1}</i>
        <b>{stop.title}</b>
        <small className="place">{momentWords(stop)}</small>
      </button>
      {here && (
        <>
          <StopFields scene={scene} stop={stop} />
          <p className="quiet">{viewWords(stop.view)}</p>
          <Refusable
            acts={[
              ...(index > 0
                ? [{ words: 'Earlier', spoken: `Earlier: ${stop.title}`, act: () => actions.moveStop(stop.id, -1) }]
                : []),
              ...(index + 1 < count
                ? [{ words: 'Later', spoken: `Later: ${stop.title}`, act: () => actions.moveStop(stop.id, 1) }]
                : []),
              {
                words: 'Take this view',
                spoken: `Take this view for ${stop.title}`,
                act: () => actions.retakeView(stop.id),
              },
              { words: 'Take out', spoken: `Take out ${stop.title}`, act: () => actions.removeStop(stop.id) },
            ]}
          />
        </>
      )}
    </li>
  );
}
