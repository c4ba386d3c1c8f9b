import { placeWords } from '../../../state/index.ts';
import {
  copyTurn,
  type ElementChange,
  elementFields,
  kindWords,
  removeElement,
  type SceneElement,
  type SceneTrack,
  setEasement,
  setElement,
  splitElement,
} from '../../../state/routeEdits/index.ts';
import { useDesk } from '../../context.tsx';
import { EditField } from '../../controls/EditField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { mmShown } from '../../measures.ts';
import { useShow } from '../../show.ts';

interface ElementRowProps {
  readonly track: SceneTrack;
  readonly index: number;
  /** Chainages of its ends, mm. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly chosen: boolean;
  readonly onChoose: () => void;
}

const nameOf = (element: SceneElement): string =>
  element.id === undefined ? kindWords[element.kind].toLowerCase() : `“${element.id}”`;

/** One element of the alignment: its numbers to type or drag, its hand, and, when it is chosen, what else can be done to it. */
export function ElementRow({ track, index, fromMm, toMm, chosen, onChoose }: ElementRowProps) {
  const { actions } = useDesk();
  const show = useShow();
  const element = track.alignment[index];
  const name = nameOf(element);
  const put = (words: string, change: ElementChange) =>
    actions.attempt(`${words} of ${name}`, (scene) =>
      // An easement takes from its neighbours what it grows by, so that the line beyond it stays.
      element.kind === 'transition' && change.lengthMm !== undefined
        ? setEasement(scene, track.id, index, change.lengthMm)
        : setElement(scene, track.id, index, change),
    );
  const middleMm = (fromMm + toMm) / 2;
  return (
    <li className={chosen ? 'edit-row chosen' : 'edit-row'} data-element={index}>
      <button type="button" className="row-head" aria-pressed={chosen} onClick={onChoose}>
        <i>{index + 1}</i>
        <b>{kindWords[element.kind]}</b>
        {element.id !== undefined && <small>{element.id}</small>}
        <small className="place">
          {placeWords(fromMm / 1000, show)} to {placeWords(toMm / 1000, show)}
        </small>
      </button>
      <div className="fields three">
        {elementFields(element, track.cant !== undefined).map((field) => (
          <EditField
            key={field.key}
            label={field.label}
            measures={field.measures}
            value={field.value}
            step={field.step}
            least={field.least}
            most={field.most}
            onChange={(value) =>
              put(field.label.toLowerCase(), { [field.key]: field.key === 'cantMm' && value === 0 ? null : value })
            }
          />
        ))}
        {'turn' in element && (
          <div className="hand">
            <Segmented
              label={`${kindWords[element.kind]} ${index + 1} turns`}
              value={element.turn}
              onChange={(turn) => void put('turn', { turn })}
              choices={[
                { value: 'left', label: 'left' },
                { value: 'right', label: 'right' },
              ]}
            />
          </div>
        )}
      </div>
      {element.kind === 'helix' && (
        <p className="quiet">{mmShown(2 * Math.PI * element.radiusMm, show).shown.join('\u2009')} a turn</p>
      )}
      {chosen && (
        <Refusable
          acts={[
            {
              words: 'Go there',
              act: () => {
                actions.goToPlace(middleMm / 1000);
                return null;
              },
            },
            ...(element.kind === 'helix' && element.turns >= 1
              ? [
                  {
                    words: 'Copy a turn',
                    act: () => actions.attempt(`one more turn of ${name}`, (scene) => copyTurn(scene, track.id, index)),
                  },
                ]
              : []),
            {
              words: 'Split in the middle',
              act: () => actions.attempt(`split of ${name}`, (scene) => splitElement(scene, track.id, middleMm)),
            },
            {
              words: 'Remove',
              act: () =>
                actions.attempt(`removal of ${name}`, (scene) =>
                  element.kind === 'transition'
                    ? setEasement(scene, track.id, index, 0)
                    : removeElement(scene, track.id, index),
                ),
            },
          ]}
        />
      )}
    </li>
  );
}
