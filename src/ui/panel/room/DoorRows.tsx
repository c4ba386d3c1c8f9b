import { proposedDoor, type SceneCorner, type SceneDoor, sideMm, usualSwingDeg } from '../../../state/room/index.ts';
import { EditField } from '../../controls/EditField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { useRoom } from './useRoom.ts';

/** The format's bounds. */
const [widestMm, leastSwingDeg, mostSwingDeg] = [5000, 5, 180];

/** The doors in the walls of the room, and how each swings. */
export function DoorRows({ corners }: { readonly corners: readonly SceneCorner[] }) {
  const { room, put } = useRoom();
  const { doors = [] } = room;
  const change = (index: number, label: string, part: Partial<SceneDoor>) =>
    put(`${label} of door ${index + 1}`, { doors: doors.with(index, { ...doors[index], ...part }) });
  return (
    <>
      <ol className="room-list" aria-label="Doors">
        {doors.map((door, index) => {
          const wallMm = sideMm(corners, door.wall - 1);
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: doors are numbered, and the number is their name
            <li key={index} className="edit-row">
              <p className="row-head">
                <i>{index + 1}</i>
                <b>Door</b>
                <small className="place">in wall {door.wall}</small>
              </p>
              <div className="fields three">
                <EditField
                  label={`From corner ${door.wall}`}
                  measures="length"
                  step={10}
                  least={0}
                  most={Math.max(0, wallMm - door.widthMm)}
                  value={door.fromMm}
                  onChange={(fromMm) => change(index, 'place', { fromMm })}
                />
                <EditField
                  label="Width"
                  measures="length"
                  step={10}
                  least={100}
                  most={widestMm}
                  value={door.widthMm}
                  onChange={(widthMm) => change(index, 'width', { widthMm })}
                />
                <EditField
                  label="Swings by"
                  measures="angle"
                  step={5}
                  least={leastSwingDeg}
                  most={mostSwingDeg}
                  value={door.swingDeg ?? usualSwingDeg}
                  onChange={(swingDeg) => change(index, 'swing', { swingDeg })}
                />
              </div>
              <div className="room-choices">
                <Segmented
                  label={`Door ${index + 1} opens`}
                  value={door.opens}
                  onChange={(opens) => void change(index, 'swing', { opens })}
                  choices={[
                    { value: 'inwards', label: 'inwards' },
                    { value: 'outwards', label: 'outwards' },
                  ]}
                />
                <Segmented
                  label={`Door ${index + 1} hangs on the jamb`}
                  value={door.hinge}
                  onChange={(hinge) => void change(index, 'hinge', { hinge })}
                  choices={[
                    { value: 'near', label: 'near jamb', spoken: `nearer to corner ${door.wall}` },
                    { value: 'far', label: 'far jamb', spoken: `further from corner ${door.wall}` },
                  ]}
                />
              </div>
              <Refusable
                acts={[
                  {
                    words: 'Next wall',
                    spoken: `Door ${index + 1} into the next wall`,
                    act: () => change(index, 'wall', { wall: (door.wall % corners.length) + 1 }),
                  },
                  {
                    words: 'Remove',
                    spoken: `Remove door ${index + 1}`,
                    act: () => put(`removal of door ${index + 1}`, { doors: doors.toSpliced(index, 1) }),
                  },
                ]}
              />
            </li>
          );
        })}
      </ol>
      <div className="add-row">
        <span>Doors</span>
        <Refusable
          acts={[
            {
              words: 'Add one',
              spoken: 'Add a door',
              act: () => put('new door', { doors: [...doors, proposedDoor(room)] }),
            },
          ]}
        />
      </div>
    </>
  );
}
