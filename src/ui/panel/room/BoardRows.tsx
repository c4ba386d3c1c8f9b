import { proposedBoard, type SceneBaseboard } from '../../../state/room/index.ts';
import type { Scene } from '../../../state/types.ts';
import { EditField } from '../../controls/EditField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { RectangleFields } from './RectangleFields.tsx';
import { useRoom } from './useRoom.ts';

/** The format's bound of a height, mm. */
const highestMm = 10_000;

/** The boards that carry the railway. */
export function BoardRows({ scene }: { readonly scene: Scene }) {
  const { room, put } = useRoom();
  const { baseboards = [] } = room;
  const { thicknessMm, underlayMm, trackMm } = scene.deck;
  const underDeckMm = -(thicknessMm + underlayMm + trackMm);
  const change = (index: number, label: string, part: Partial<SceneBaseboard>) =>
    put(`${label} of board ${index + 1}`, { baseboards: baseboards.with(index, { ...baseboards[index], ...part }) });
  return (
    <>
      <ol className="room-list" aria-label="Boards">
        {baseboards.map((board, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: boards are numbered, and the number is their name
          <li key={index} className="edit-row">
            <p className="row-head">
              <i>{index + 1}</i>
              <b>Board</b>
            </p>
            <RectangleFields
              of={board}
              onChange={({ xMm, yMm, lengthMm, widthMm }) => change(index, 'place', { xMm, yMm, lengthMm, widthMm })}
            />
            <div className="room-row">
              <div className="fields two">
                <EditField
                  label="Top"
                  measures="length"
                  step={5}
                  least={-highestMm}
                  most={highestMm}
                  value={board.topMm ?? underDeckMm}
                  onChange={(topMm) => change(index, 'height', { topMm })}
                />
              </div>
              <Refusable
                acts={[
                  {
                    words: 'Remove',
                    spoken: `Remove board ${index + 1}`,
                    act: () => put(`removal of board ${index + 1}`, { baseboards: baseboards.toSpliced(index, 1) }),
                  },
                ]}
              />
            </div>
          </li>
        ))}
      </ol>
      <div className="add-row">
        <span>Boards</span>
        <Refusable
          acts={[
            {
              words: baseboards.length === 0 ? 'One under the railway' : 'Add one',
              spoken: 'Add a board',
              act: () => put('new board', { baseboards: [...baseboards, proposedBoard(scene)] }),
            },
          ]}
        />
      </div>
    </>
  );
}
