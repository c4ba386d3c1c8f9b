import { plannedHeight } from '../../../core/track/index.ts';
import type { Track } from '../../../core/track/types.ts';
import { chosenSpan } from '../../../state/route/index.ts';
import { placedSupports, type SceneTrack, setSupportsEvery, trackLengthMm } from '../../../state/routeEdits/index.ts';
import { useDesk, useRoute } from '../../context.tsx';
import { EditField } from '../../controls/EditField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { mmShown } from '../../measures.ts';
import { useShow } from '../../show.ts';
import { ChosenSupports } from './ChosenSupports.tsx';
import { mostOffMm, SupportRow } from './SupportRow.tsx';

interface SupportRowsProps {
  readonly track: SceneTrack;
  /** The same track compiled: it knows the planned heights. Null while it cannot be. */
  readonly drawn: Track | null;
}

/** Distance that supports are first given, mm: common practice for 9 mm ply, no source. */
const usualMm = 300;
/** The format's bounds, mm. */
const [leastEveryMm, mostEveryMm] = [20, 5000];

/** How the supports stand along the track, and each one's height with how far it stands off its plan. */
export function SupportRows({ track, drawn }: SupportRowsProps) {
  const { actions } = useDesk();
  const show = useShow();
  const { supports } = track;
  const placed = placedSupports(track);
  const chosen = useRoute((state) => state.chosenSupports);
  const span = chosenSpan(chosen, track);
  const everyWords = mmShown(usualMm, show).shown.join('\u2009');
  return (
    <>
      <h3 id="support-rows">Supports</h3>
      {supports && 'everyMm' in supports ? (
        <div className="edit-row">
          <div className="fields two">
            <EditField
              label="One every"
              measures="length"
              value={supports.everyMm}
              step={5}
              least={leastEveryMm}
              most={mostEveryMm}
              onChange={(value) =>
                actions.attempt('distance of supports', (scene) => setSupportsEvery(scene, track.id, value))
              }
            />
            <EditField
              label="First at"
              measures="length"
              value={supports.firstMm ?? 0}
              step={5}
              least={0}
              most={trackLengthMm(track)}
              onChange={(value) =>
                actions.attempt('place of the first support', (scene) =>
                  setSupportsEvery(scene, track.id, supports.everyMm, value),
                )
              }
            />
          </div>
        </div>
      ) : (
        <div className="add-row">
          <span>{supports ? `${placed.length}, each at its own place` : 'None yet'}</span>
          <Refusable
            acts={[
              {
                words: `One every ${everyWords}`,
                act: () =>
                  actions.attempt(`supports every ${everyWords}`, (scene) =>
                    setSupportsEvery(scene, track.id, usualMm),
                  ),
              },
            ]}
          />
        </div>
      )}
      {placed.length > 2 && <ChosenSupports track={track} drawn={drawn} mostOffMm={mostOffMm} />}
      <ol className="support-list" aria-labelledby="support-rows">
        {placed.map(({ atMm, offMm }, index) => (
          <SupportRow
            // biome-ignore lint/suspicious/noArrayIndexKey: supports are numbered, and the number is their name
            key={index}
            trackId={track.id}
            index={index}
            atMm={atMm}
            offMm={offMm}
            height={drawn ? mmShown(plannedHeight(drawn, atMm / 1000) * 1000, show).shown.join('\u2009') : ''}
            chosen={span !== null && span.from <= index && index <= span.to}
          />
        ))}
      </ol>
    </>
  );
}
