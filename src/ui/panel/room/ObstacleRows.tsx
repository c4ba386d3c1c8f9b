import { asRectangle, fromRectangle, type SceneObstacle, usualPart } from '../../../state/room/index.ts';
import type { Scene } from '../../../state/types.ts';
import { EditField } from '../../controls/EditField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { RectangleFields } from './RectangleFields.tsx';
import { RoundFields } from './RoundFields.tsx';
import { useRoom } from './useRoom.ts';

/** The format's bound, mm; height that an obstacle is first given when it no longer goes up to the ceiling, mm. */
const [highestMm, usualHeightMm] = [10_000, 1400];

/** What stands on the floor and stays. */
export function ObstacleRows({ scene }: { readonly scene: Scene }) {
  const { room, put } = useRoom();
  const { obstacles = [] } = room;
  const change = (index: number, label: string, obstacle: SceneObstacle) =>
    put(`${label} of ${obstacles[index].name}`, { obstacles: obstacles.with(index, obstacle) });
  return (
    <>
      <ol className="room-list" aria-label="What stands in the way">
        {obstacles.map((obstacle, index) => {
          const { name, outline = [], round, heightMm } = obstacle;
          const rectangle = asRectangle(outline);
          const { heightMm: _height, ...toCeiling } = obstacle;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: two may be called the same
            <li key={index} className="edit-row">
              <TypedField
                className="dimension-field text"
                label="In the way"
                value={name}
                onTake={(wanted) => change(index, 'name', { ...obstacle, name: wanted })}
              />
              {round !== undefined ? (
                <RoundFields of={round} onChange={(wanted) => change(index, 'place', { ...obstacle, round: wanted })} />
              ) : rectangle === null ? (
                <p className="quiet">{outline.length} corners</p>
              ) : (
                <RectangleFields
                  of={rectangle}
                  onChange={(wanted) => change(index, 'place', { ...obstacle, outline: fromRectangle(wanted) })}
                />
              )}
              <div className="room-row">
                <div className="fields two">
                  <EditField
                    label="Height"
                    measures="length"
                    step={10}
                    least={10}
                    most={highestMm}
                    value={heightMm ?? usualHeightMm}
                    {...(heightMm === undefined && { shown: ['to the ceiling', ''] as const })}
                    onChange={(wanted) => change(index, 'height', { ...obstacle, heightMm: wanted })}
                  />
                </div>
                <Refusable
                  acts={[
                    ...(heightMm === undefined
                      ? []
                      : [
                          {
                            words: 'To the ceiling',
                            spoken: `${name} goes up to the ceiling`,
                            act: () => change(index, 'height', toCeiling),
                          },
                        ]),
                    {
                      words: 'Remove',
                      spoken: `Remove ${name}`,
                      act: () => put(`removal of ${name}`, { obstacles: obstacles.toSpliced(index, 1) }),
                    },
                  ]}
                />
              </div>
            </li>
          );
        })}
      </ol>
      <div className="add-row">
        <span>Pillars, posts, boiler, chimney breast</span>
        <Refusable
          acts={[
            {
              words: 'Add one',
              spoken: 'Add something that stands in the way',
              act: () => put('new pillar', usualPart(scene, 'pillar')),
            },
            {
              words: 'Add a round one',
              spoken: 'Add a round one that stands in the way',
              act: () => put('new post', usualPart(scene, 'post')),
            },
          ]}
        />
      </div>
    </>
  );
}
