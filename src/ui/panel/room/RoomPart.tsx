import { proposedWalls, usualEyeMm, usualReachMm } from '../../../state/room/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk, useRoute } from '../../context.tsx';
import { EditField } from '../../controls/EditField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { BoardRows } from './BoardRows.tsx';
import { CornerRows } from './CornerRows.tsx';
import { DoorRows } from './DoorRows.tsx';
import { ObstacleRows } from './ObstacleRows.tsx';
import { RoomRemarks } from './RoomRemarks.tsx';
import { useRoom } from './useRoom.ts';
import './room.css';

/** The format's bounds, mm. */
const [highestMm, [lowestEyeMm, highestEyeMm], farthestMm] = [5000, [300, 2500], 2000] as const;

/** The room around the railway: who works in it, its walls and doors, what stands in the way, the boards. */
export function RoomPart({ scene }: { readonly scene: Scene }) {
  const { room, put } = useRoom();
  const { route } = useDesk();
  const works = useRoute((state) => state.works);
  const { person = {} } = room;
  return (
    <section className="room-part" aria-labelledby="room-part">
      <h3 id="room-part">Room</h3>
      <div className="add-row">
        <span>Walls, doors, boards and bridges by hand</span>
        <div className="acts">
          <button
            type="button"
            aria-pressed={works === 'room'}
            onClick={() => route.actions.workAt(works === 'room' ? 'line' : 'room')}
          >
            On the stage
          </button>
        </div>
      </div>
      <RoomRemarks scene={scene} />
      <div className="edit-row">
        <div className="fields three">
          <EditField
            label="Height 0 over floor"
            measures="length"
            step={10}
            least={0}
            most={highestMm}
            value={room.datumAboveFloorMm ?? 0}
            {...(room.datumAboveFloorMm === undefined && { shown: ['not said', ''] as const })}
            onChange={(datumAboveFloorMm) => put('height over the floor', { datumAboveFloorMm })}
          />
          <EditField
            label="Eye over floor"
            measures="length"
            step={10}
            least={lowestEyeMm}
            most={highestEyeMm}
            value={person.eyeMm ?? usualEyeMm}
            onChange={(eyeMm) => put('height of the eye', { person: { ...person, eyeMm } })}
          />
          <EditField
            label="Reach"
            measures="length"
            step={10}
            least={1}
            most={farthestMm}
            value={person.reachMm ?? usualReachMm}
            {...(person.reachMm === undefined && { shown: ['not said', ''] as const })}
            onChange={(reachMm) => put('reach', { person: { ...person, reachMm } })}
          />
        </div>
      </div>
      {room.corners === undefined ? (
        <div className="add-row">
          <span>No walls yet</span>
          <Refusable
            acts={[
              {
                words: 'Four walls around the railway',
                act: () => put('walls of the room', { corners: proposedWalls(scene) }),
              },
            ]}
          />
        </div>
      ) : (
        <>
          <CornerRows corners={room.corners} />
          <DoorRows corners={room.corners} />
        </>
      )}
      <ObstacleRows scene={scene} />
      <BoardRows scene={scene} />
    </section>
  );
}
