import { Fragment } from 'react';
import {
  easeable,
  easeJoin,
  easementFor,
  elementStartsMm,
  freshElement,
  insertElement,
  kindWords,
  type SceneElement,
  type SceneTrack,
} from '../../../state/routeEdits/index.ts';
import { useDesk } from '../../context.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { mmShown } from '../../measures.ts';
import { useShow } from '../../show.ts';
import { ElementRow } from './ElementRow.tsx';

interface AlignmentRowsProps {
  readonly track: SceneTrack;
  readonly chosen: number | null;
  readonly onChoose: (element: number | null) => void;
}

/** What can be put in. An easement is laid over a join instead, where it has its meaning. */
const kinds: readonly SceneElement['kind'][] = ['straight', 'arc', 'helix'];

/** Every element of the alignment in order, the joins that jump with an easement to lay there, and new elements. */
export function AlignmentRows({ track, chosen, onChoose }: AlignmentRowsProps) {
  const { actions } = useDesk();
  const show = useShow();
  const starts = elementStartsMm(track);
  const after = chosen === null ? track.alignment.length : Math.min(chosen + 1, track.alignment.length);
  const where = after === track.alignment.length ? 'at the end' : `after ${after}`;
  return (
    <>
      <h3 id="alignment-rows">Alignment</h3>
      <ol className="edit-rows" aria-labelledby="alignment-rows">
        {track.alignment.map((element, index) => (
          // Elements have no name that must be there: their order is what they are.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          <Fragment key={`${element.kind}-${index}`}>
            {easeable(track, index) && (
              <li className="join-row">
                <span>curvature jumps here</span>
                <Refusable
                  acts={[
                    {
                      words: `Ease over ${mmShown(easementFor(track, index), show).shown.join('\u2009')}`,
                      spoken: `Ease the join before element ${index + 1}`,
                      act: () => {
                        const why = actions.attempt(`easement before ${index + 1}`, (scene) =>
                          easeJoin(scene, track.id, index, easementFor(track, index)),
                        );
                        if (why === null) onChoose(index);
                        return why;
                      },
                    },
                  ]}
                />
              </li>
            )}
            <ElementRow
              track={track}
              index={index}
              fromMm={starts[index]}
              toMm={starts[index + 1]}
              chosen={chosen === index}
              onChoose={() => onChoose(chosen === index ? null : index)}
            />
          </Fragment>
        ))}
      </ol>
      <div className="add-row">
        <span>Add {where}</span>
        <Refusable
          acts={kinds.map((kind) => ({
            words: kindWords[kind],
            spoken: `Add a ${kindWords[kind].toLowerCase()} ${where}`,
            act: () => {
              const why = actions.attempt(`new ${kindWords[kind].toLowerCase()}`, (scene) =>
                insertElement(scene, track.id, after, freshElement(kind, track.alignment.slice(0, after))),
              );
              if (why === null) onChoose(after);
              return why;
            },
          }))}
        />
      </div>
    </>
  );
}
