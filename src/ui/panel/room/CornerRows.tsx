import { type SceneCorner, sideMm, withCorner, withoutCorner } from '../../../state/room/index.ts';
import { EditField } from '../../controls/EditField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { mmShown } from '../../measures.ts';
import { useShow } from '../../show.ts';
import { farthestMm } from './farthest.ts';
import { useRoom } from './useRoom.ts';

/** The corners of the room in their order, each with the wall that begins at it. */
export function CornerRows({ corners }: { readonly corners: readonly SceneCorner[] }) {
  const { room, put } = useRoom();
  const show = useShow();
  const place = { measures: 'length', step: 10, least: -farthestMm, most: farthestMm } as const;
  const move = (index: number, change: Partial<SceneCorner>) =>
    put(`corner ${index + 1} of the room`, {
      corners: corners.with(index, { ...corners[index], ...change }) as SceneCorner[],
    });
  return (
    <ol className="room-list" aria-label="Corners of the room">
      {corners.map((corner, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: corners are numbered, and the number is their name
        <li key={index} className="edit-row">
          <p className="row-head">
            <i>{index + 1}</i>
            <b>Corner</b>
            <small className="place">
              wall {index + 1}: {mmShown(sideMm(corners, index), show).shown.join('\u2009')}
            </small>
          </p>
          <div className="room-row">
            <div className="fields two">
              <EditField label="East" {...place} value={corner.xMm} onChange={(xMm) => move(index, { xMm })} />
              <EditField label="North" {...place} value={corner.yMm} onChange={(yMm) => move(index, { yMm })} />
            </div>
            <Refusable
              acts={[
                {
                  words: 'Split wall',
                  spoken: `Split wall ${index + 1} in the middle`,
                  act: () => put(`split of wall ${index + 1}`, withCorner(room, index)),
                },
                ...(corners.length > 3
                  ? [
                      {
                        words: 'Remove',
                        spoken: `Remove corner ${index + 1}`,
                        act: () => put(`removal of corner ${index + 1}`, withoutCorner(room, index)),
                      },
                    ]
                  : [
                      {
                        words: 'No walls',
                        spoken: 'Remove all walls',
                        act: () => put('removal of the walls', { corners: undefined, doors: undefined }),
                      },
                    ]),
              ]}
            />
          </div>
        </li>
      ))}
    </ol>
  );
}
