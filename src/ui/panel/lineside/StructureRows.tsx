import type { Track } from '../../../core/track/types.ts';
import { proposedDeck, proposedPier, type SceneStructure } from '../../../state/lineside/index.ts';
import { asRectangle, fromRectangle, type SceneCorner } from '../../../state/room/index.ts';
import type { SceneTrack } from '../../../state/routeEdits/index.ts';
import type { Scene } from '../../../state/types.ts';
import { EditField } from '../../controls/EditField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { freeName } from '../freeName.ts';
import { farthestMm } from '../room/farthest.ts';
import { RectangleFields } from '../room/RectangleFields.tsx';
import { farthestHeightMm } from './bounds.ts';
import { useSurroundings } from './useSurroundings.ts';

interface StructureRowsProps {
  readonly scene: Scene;
  /** The track that a new one is put over or beside. */
  readonly track: SceneTrack;
  readonly drawn: Track | null;
}

/** What stands in the room by its corners and heights: decks across, piers, gantries. */
export function StructureRows({ scene, track, drawn }: StructureRowsProps) {
  const { structures, put } = useSurroundings();
  const change = (index: number, what: string, part: Partial<SceneStructure>) =>
    put(`${what} of ${structures[index].name}`, {
      structures: structures.with(index, { ...structures[index], ...part }),
    });
  const add = (propose: typeof proposedDeck, wish: string) => (): string | null => {
    if (drawn === null) return 'This track cannot be laid as it is.';
    const name = freeName(structures, wish);
    return put(`new ${wish.toLowerCase()}`, {
      structures: [...structures, propose(scene, { id: track.id, drawn }, name)],
    });
  };
  const height = { measures: 'length', step: 1, least: -farthestHeightMm, most: farthestHeightMm } as const;
  return (
    <>
      <h3 id="structure-rows">Bridges and piers</h3>
      <ol className="room-list" aria-labelledby="structure-rows">
        {structures.map((structure, index) => {
          const { name, outline, bottomMm, topMm } = structure;
          const rectangle = asRectangle(outline);
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: two may be called the same
            <li key={index} className="edit-row" data-structure={index}>
              <TypedField
                className="dimension-field text"
                label="In the room"
                value={name}
                onTake={(wanted) => change(index, 'name', { name: wanted })}
              />
              {rectangle === null ? (
                <CornerFields
                  outline={outline}
                  onChange={(corners) => change(index, 'corners', { outline: corners })}
                />
              ) : (
                <RectangleFields
                  of={rectangle}
                  onChange={(wanted) => change(index, 'place', { outline: fromRectangle(wanted) })}
                />
              )}
              <div className="room-row">
                <div className="fields two">
                  <EditField
                    label="Underside"
                    {...height}
                    value={bottomMm}
                    onChange={(wanted) => change(index, 'underside', { bottomMm: wanted })}
                  />
                  <EditField
                    label="Top"
                    {...height}
                    value={topMm}
                    onChange={(wanted) => change(index, 'top', { topMm: wanted })}
                  />
                </div>
                <Refusable
                  acts={[
                    {
                      words: 'Remove',
                      spoken: `Remove ${name}`,
                      act: () => put(`removal of ${name}`, { structures: structures.toSpliced(index, 1) }),
                    },
                  ]}
                />
              </div>
            </li>
          );
        })}
      </ol>
      <div className="add-row">
        <span>At {track.name}</span>
        <Refusable
          acts={[
            { words: 'Bridge across', spoken: 'Add a bridge across', act: add(proposedDeck, 'Bridge') },
            { words: 'Pier', spoken: 'Add a pier', act: add(proposedPier, 'Pier') },
          ]}
        />
      </div>
    </>
  );
}

interface CornerFieldsProps {
  readonly outline: readonly SceneCorner[];
  readonly onChange: (outline: SceneCorner[]) => string | null;
}

/** The corners of an outline that does not lie square to the room. */
function CornerFields({ outline, onChange }: CornerFieldsProps) {
  const place = { measures: 'length', step: 10, least: -farthestMm, most: farthestMm } as const;
  return outline.map((corner, k) => {
    const move = (part: Partial<SceneCorner>) => onChange(outline.with(k, { ...corner, ...part }));
    return (
      // biome-ignore lint/suspicious/noArrayIndexKey: corners are numbered, and the number is their name
      <div key={k} className="fields two">
        <EditField label={`Corner ${k + 1}, east`} {...place} value={corner.xMm} onChange={(xMm) => move({ xMm })} />
        <EditField label={`Corner ${k + 1}, north`} {...place} value={corner.yMm} onChange={(yMm) => move({ yMm })} />
      </div>
    );
  });
}
