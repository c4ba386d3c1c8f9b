import type { Track } from '../../../core/track/types.ts';
import { proposedMouth, proposedPlatform, proposedWall, type SceneLineside } from '../../../state/lineside/index.ts';
import { type SceneTrack, trackLengthMm } from '../../../state/routeEdits/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk } from '../../context.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { freeName } from '../freeName.ts';
import { PortalFields } from './PortalFields.tsx';
import { useSurroundings } from './useSurroundings.ts';
import { WallFields } from './WallFields.tsx';
import '../room/room.css';

interface LinesideRowsProps {
  readonly scene: Scene;
  readonly track: SceneTrack;
  /** The same track compiled; null while it cannot be. */
  readonly drawn: Track | null;
}

/** Where a thing beside a track is, mm along it: its middle. */
const placeMm = (thing: SceneLineside): number =>
  thing.kind === 'portal' ? thing.atMm : (thing.fromMm + thing.toMm) / 2;

/** What stands along one track: mouths of tunnels, platforms, walls. */
export function LinesideRows({ scene, track, drawn }: LinesideRowsProps) {
  const { route } = useDesk();
  const { lineside, put } = useSurroundings();
  const lengthMm = trackLengthMm(track);
  const change = (index: number, what: string, part: Partial<SceneLineside>) =>
    put(`${what} of ${lineside[index].name}`, {
      lineside: lineside.with(index, { ...lineside[index], ...part } as SceneLineside),
    });
  const add = (propose: typeof proposedMouth | typeof proposedWall, wish: string) => (): string | null => {
    if (drawn === null) return 'This track cannot be laid as it is.';
    const name = freeName(lineside, wish);
    return put(`new ${wish.toLowerCase()}`, {
      lineside: [...lineside, propose(scene, { id: track.id, drawn }, name)],
    });
  };
  return (
    <>
      <h3 id="lineside-rows">Beside the line</h3>
      <ol className="room-list" aria-labelledby="lineside-rows">
        {lineside.map((thing, index) =>
          thing.track !== track.id ? null : (
            // biome-ignore lint/suspicious/noArrayIndexKey: two may be called the same
            <li key={index} className="edit-row" data-lineside={index}>
              <TypedField
                className="dimension-field text"
                label={thing.kind === 'portal' ? 'Over the track' : 'Along the track'}
                value={thing.name}
                onTake={(name) => change(index, 'name', { name })}
              />
              {thing.kind === 'portal' ? (
                <PortalFields portal={thing} lengthMm={lengthMm} onChange={(what, part) => change(index, what, part)} />
              ) : (
                <WallFields wall={thing} lengthMm={lengthMm} onChange={(what, part) => change(index, what, part)} />
              )}
              <Refusable
                acts={[
                  {
                    words: 'Show',
                    spoken: `Show ${thing.name}`,
                    act: () => {
                      route.actions.pointOut({ trackId: track.id, chainage: placeMm(thing) / 1000 });
                      return null;
                    },
                  },
                  {
                    words: 'Remove',
                    spoken: `Remove ${thing.name}`,
                    act: () => put(`removal of ${thing.name}`, { lineside: lineside.toSpliced(index, 1) }),
                  },
                ]}
              />
            </li>
          ),
        )}
      </ol>
      <div className="add-row">
        <span>Add</span>
        <Refusable
          acts={[
            { words: 'Tunnel mouth', spoken: 'Add a tunnel mouth', act: add(proposedMouth, 'Tunnel mouth') },
            { words: 'Platform', spoken: 'Add a platform', act: add(proposedPlatform, 'Platform') },
            { words: 'Wall', spoken: 'Add a wall', act: add(proposedWall, 'Wall') },
          ]}
        />
      </div>
    </>
  );
}
