import { plannedHeight } from '../../../core/track/index.ts';
import type { Track } from '../../../core/track/types.ts';
import { placeWords } from '../../../state/index.ts';
import { chosenSpan, upTo } from '../../../state/route/index.ts';
import {
  moveSupport,
  placedSupports,
  type SceneTrack,
  setSupportsEvery,
  trackLengthMm,
} from '../../../state/routeEdits/index.ts';
import { useDesk, useRoute } from '../../context.tsx';
import { EditField } from '../../controls/EditField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { mmShown, offShown } from '../../measures.ts';
import { useShow } from '../../show.ts';
import { ChosenSupports } from './ChosenSupports.tsx';

interface SupportRowsProps {
  readonly track: SceneTrack;
  /** The same track compiled: it knows the planned heights. Null while it cannot be. */
  readonly drawn: Track | null;
}

/** Distance that supports are first given, mm: common practice for 9 mm ply, no source. */
const usualMm = 300;
/** The format's bounds, mm. */
const [leastEveryMm, mostEveryMm, mostOffMm] = [20, 5000, 100];

/** How the supports stand along the track, and each one's height with how far it stands off its plan. */
export function SupportRows({ track, drawn }: SupportRowsProps) {
  const { actions, route } = useDesk();
  const show = useShow();
  const { supports } = track;
  const placed = placedSupports(track);
  const chosen = useRoute((state) => state.chosenSupports);
  const several = useRoute((state) => state.takesSeveral);
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
        {placed.map(({ atMm, offMm }, index) => {
          const height = drawn ? mmShown(plannedHeight(drawn, atMm / 1000) * 1000, show).shown.join('\u2009') : '';
          const isChosen = span !== null && span.from <= index && index <= span.to;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: supports are numbered, and the number is their name
            <li key={index} className={rowClass(offMm, isChosen)}>
              <button
                type="button"
                title="Go there; with Shift, choose all up to it"
                aria-pressed={isChosen || undefined}
                onClick={(event) => {
                  if (event.shiftKey || several) route.actions.chooseSupports(upTo(chosen, track, index, index));
                  else actions.goToPlace(atMm / 1000);
                }}
              >
                <i>{index + 1}</i>
                <small>{placeWords(atMm / 1000, show)}</small>
                <b>{height}</b>
              </button>
              <div className="fields">
                <EditField
                  label={`Support ${index + 1} off its plan`}
                  measures="length"
                  value={offMm}
                  step={0.1}
                  least={-mostOffMm}
                  most={mostOffMm}
                  shown={offMm === 0 ? ['as planned', ''] : offShown(offMm, show)}
                  onChange={(value) =>
                    actions.attempt(`support ${index + 1} off its plan`, (scene) =>
                      moveSupport(scene, track.id, index, value),
                    )
                  }
                />
              </div>
            </li>
          );
        })}
      </ol>
    </>
  );
}

const rowClass = (offMm: number, isChosen: boolean): string | undefined =>
  [offMm !== 0 && 'off', isChosen && 'taken'].filter(Boolean).join(' ') || undefined;
