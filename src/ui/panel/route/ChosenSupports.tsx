import { useEffect, useRef } from 'react';
import { plannedHeight } from '../../../core/track/index.ts';
import type { Track } from '../../../core/track/types.ts';
import { placeWords } from '../../../state/index.ts';
import { chosenSpan, spanWords } from '../../../state/route/index.ts';
import {
  evenSupports,
  meanOffMm,
  moveSupports,
  placedSupports,
  removeSupports,
  type SceneTrack,
  supportsAsPlanned,
} from '../../../state/routeEdits/index.ts';
import { useDesk, useRoute } from '../../context.tsx';
import { EditField } from '../../controls/EditField.tsx';
import { type Act, Refusable } from '../../controls/Refusable.tsx';
import { offShown } from '../../measures.ts';
import { gradeShown, useShow } from '../../show.ts';
import './chosenSupports.css';

interface ChosenSupportsProps {
  readonly track: SceneTrack;
  /** The same track compiled: it knows the planned heights. Null while it cannot be. */
  readonly drawn: Track | null;
  /** The format's bound of a departure, mm. */
  readonly mostOffMm: number;
}

/** The neighbouring supports that are chosen, and what can be done to them together. */
export function ChosenSupports({ track, drawn, mostOffMm }: ChosenSupportsProps) {
  const { actions, route } = useDesk();
  const show = useShow();
  const chosen = useRoute((state) => state.chosenSupports);
  const several = useRoute((state) => state.takesSeveral);
  const span = chosenSpan(chosen, track);
  const row = useRef<HTMLDivElement>(null);
  const any = span !== null;
  // What was chosen in the section comes into view; a choice in the list leaves the list where it is.
  useEffect(() => {
    if (any && !document.activeElement?.closest('.edit-sheet')) row.current?.scrollIntoView({ block: 'nearest' });
  }, [any]);
  const words = span && spanWords(span);
  const placed = placedSupports(track);
  const [first, last] = span ? [placed[span.from], placed[span.to]] : [];
  const plannedMm = (atMm: number): number => (drawn ? plannedHeight(drawn, atMm / 1000) * 1000 : Number.NaN);
  const grade =
    first && last && last !== first
      ? (plannedMm(last.atMm) + last.offMm - plannedMm(first.atMm) - first.offMm) / (last.atMm - first.atMm)
      : Number.NaN;
  const stretch = [...new Set([first, last])]
    .flatMap((place) => (place ? [placeWords(place.atMm / 1000, show)] : []))
    .join(' to ');
  const slope = Number.isFinite(grade)
    ? `; end to end ${gradeShown(Math.abs(grade), show).shown.join(' ').trim()}${grade < 0 ? ', falling' : ''}`
    : '';
  const letGo = () => {
    route.actions.chooseSupports(null);
    return null;
  };
  const acts: Act[] = span
    ? [
        ...(drawn && span.to - span.from > 1
          ? [
              {
                words: 'Even grade',
                spoken: `Even grade over ${words}: the inner ones on the line between the outer two`,
                act: () =>
                  actions.attempt(`even grade over ${words}`, (scene) =>
                    evenSupports(scene, track.id, span, plannedMm),
                  ),
              },
            ]
          : []),
        {
          words: 'As planned',
          spoken: `As planned: ${words}`,
          act: () => actions.attempt(`${words} as planned`, (scene) => supportsAsPlanned(scene, track.id, span)),
        },
        {
          words: 'Delete',
          spoken: `Delete ${words}`,
          act: () => actions.attempt(`${words} taken out`, (scene) => removeSupports(scene, track.id, span)) ?? letGo(),
        },
        { words: 'Let go', spoken: `Let go of ${words}`, act: letGo },
      ]
    : [];
  const meanMm = span ? meanOffMm(track, span) : 0;
  return (
    <div ref={row} className={span ? 'edit-row chosen chosen-supports' : 'edit-row chosen-supports'}>
      <div className="acts">
        <button type="button" aria-pressed={several} onClick={() => route.actions.takeSeveral(!several)}>
          Select several
        </button>
      </div>
      <p aria-live="polite">
        {span && first && last && words
          ? `${words.charAt(0).toUpperCase()}${words.slice(1)} chosen, ${stretch}${slope}`
          : several
            ? 'Tap the first and the last, here or in the section.'
            : 'Shift and a click, or a pull along the section, takes several.'}
      </p>
      {span && (
        <>
          <div className="fields two">
            <EditField
              label={span.to > span.from ? 'Off plan, on average' : 'Off plan'}
              measures="length"
              value={meanMm}
              step={0.1}
              least={-mostOffMm}
              most={mostOffMm}
              shown={offShown(meanMm, show)}
              onChange={(value) =>
                actions.attempt(`heights of ${words}`, (scene) => {
                  const now = scene.tracks.find(({ id }) => id === track.id) ?? track;
                  return moveSupports(scene, track.id, span, value - meanOffMm(now, span));
                })
              }
            />
          </div>
          <Refusable key={words} acts={acts} />
        </>
      )}
    </div>
  );
}
