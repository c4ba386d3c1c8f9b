import { useState } from 'react';
import { ranInto } from '../../../state/route/index.ts';
import {
  addTrack,
  besideSpacing,
  elementStartsMm,
  layTurnout,
  ledSpacing,
  normSpacings,
  parallelTrack,
  removeTrack,
  renameTrack,
  type SceneTrack,
  straightTrack,
} from '../../../state/routeEdits/index.ts';
import { useDesk } from '../../context.tsx';
import { DimensionField } from '../../controls/DimensionField.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { mmShown, readMm } from '../../measures.ts';
import { useShow } from '../../show.ts';
import { freeName } from '../freeName.ts';

interface TrackRowsProps {
  readonly tracks: readonly SceneTrack[];
  readonly track: SceneTrack;
  readonly onChoose: (trackId: string) => void;
}

/** Where a turnout is first laid, mm: a third along the longest straight, to a whole cm, so that there is room beyond. */
function roomForTurnout(track: SceneTrack): number {
  const starts = elementStartsMm(track);
  const lengths = track.alignment.map(({ kind }, k) => (kind === 'straight' ? starts[k + 1] - starts[k] : 0));
  const longest = lengths.indexOf(Math.max(...lengths));
  return Math.round((starts[longest] + lengths[longest] / 3) / 10) * 10;
}

/** How far a further track is first laid from where the last began, mm. */
const asideMm = 200;

/** A drag is led to the spacing of a standard from this far, mm: the sheet goes by a millimetre for every 3 px. */
const spacingReachMm = 2;

/** The tracks of the railway: which is on the sheet, its name, and further ones. */
export function TrackRows({ tracks, track, onChoose }: TrackRowsProps) {
  const { actions, session } = useDesk();
  const show = useShow();
  const scene = session.getState().scene;
  const proposed = scene && besideSpacing(scene, track);
  const [said, setSpacing] = useState<number | null>(null);
  const spacingMm = said ?? proposed?.mm ?? asideMm;
  const norms = scene ? normSpacings(scene, track) : [];
  const norm = ledSpacing(spacingMm, norms, 0);
  /** Does it and chooses the track it made. */
  const lay = (label: string, make: Parameters<typeof actions.attempt>[1]): string | null => {
    const why = actions.attempt(label, make);
    const made = session.getState().scene?.tracks.at(-1);
    if (why === null && made) onChoose(made.id);
    return why;
  };
  const beside = (side: 1 | -1) =>
    lay(`track beside ${track.name}`, (scene) =>
      parallelTrack(scene, track.id, side * spacingMm, { name: freeName(tracks, `${track.name}, beside`) }),
    );
  const turnout = (hand: 'left' | 'right') =>
    lay(`turnout in ${track.name}`, (scene) =>
      layTurnout(scene, track.id, {
        name: freeName(scene.tracks, `${track.name}, branch`),
        atMm: roomForTurnout(track),
        hand,
        towards: 'end',
      }),
    );
  return (
    <>
      {tracks.length > 1 && (
        <ul className="trial-list track-list" aria-label="Tracks">
          {tracks.map((one) => (
            <li key={one.id}>
              <button
                type="button"
                aria-current={one.id === track.id ? 'true' : undefined}
                onClick={() => onChoose(one.id)}
              >
                {one.name}
              </button>
            </li>
          ))}
        </ul>
      )}
      <TypedField
        className="dimension-field text"
        label="Name of the track"
        value={track.name}
        onTake={(name) => actions.attempt('name of the track', (scene) => renameTrack(scene, track.id, name))}
      />
      <div className="add-row">
        <span>Tracks</span>
        <Refusable
          acts={[
            {
              words: 'Add one',
              spoken: 'Add a track',
              act: () =>
                lay('new track', (scene) => {
                  const { start } = track;
                  const [xMm, yMm] = 'xMm' in start ? [start.xMm, start.yMm - asideMm] : [0, 0];
                  const name = freeName(scene.tracks, 'New track');
                  return addTrack(
                    scene,
                    straightTrack(scene, { name, xMm, yMm, headingDeg: 0, lengthMm: 1000, heightMm: 0 }),
                  );
                }),
            },
            {
              words: 'Turnout, left',
              spoken: 'Lay a turnout to the left and a track from it',
              act: () => turnout('left'),
            },
            {
              words: 'Turnout, right',
              spoken: 'Lay a turnout to the right and a track from it',
              act: () => turnout('right'),
            },
            {
              words: 'Run into the nearest',
              spoken: 'Lay this track on from its end into the nearest other track',
              act: () => actions.attempt(`end of ${track.name}`, (scene) => ranInto(scene, track.id)),
            },
            { words: 'Beside, left', spoken: 'Lay a track beside this one, to its left', act: () => beside(1) },
            { words: 'Beside, right', spoken: 'Lay a track beside this one, to its right', act: () => beside(-1) },
            ...(tracks.length > 1
              ? [
                  {
                    words: 'Remove',
                    spoken: `Remove ${track.name}`,
                    act: () => {
                      const other = tracks.find(({ id }) => id !== track.id);
                      const why = actions.attempt(`removal of ${track.name}`, (scene) => removeTrack(scene, track.id));
                      if (why === null && other) onChoose(other.id);
                      return why;
                    },
                  },
                ]
              : []),
          ]}
        />
      </div>
      <div className="fields three">
        <DimensionField
          label="Spacing beside"
          value={spacingMm}
          shown={mmShown(spacingMm, show).shown}
          others={mmShown(spacingMm, show).other}
          read={(text) => readMm(text, show)}
          step={1}
          least={1}
          most={10_000}
          onChange={(value) => {
            setSpacing(value);
            return null;
          }}
          leads={(wanted) => {
            const led = ledSpacing(wanted, norms, spacingReachMm);
            return led && { value: led.mm, words: led.because.source };
          }}
          onDragStart={() => undefined}
          onDragEnd={() => undefined}
          onDragCancel={() => undefined}
        />
      </div>
      {norm !== null && <p className="quiet">{norm.because.source}.</p>}
    </>
  );
}
