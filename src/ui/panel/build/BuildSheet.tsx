import { useMemo } from 'react';
import { useStore } from 'zustand';
import { planToBuild } from '../../../state/build/index.ts';
import type { CompiledScene } from '../../../state/types.ts';
import { useDesk, useSession } from '../../context.tsx';
import { printOnly } from '../../printOnly.ts';
import { BuildFields } from './BuildFields.tsx';
import { BuildPaper } from './BuildPaper.tsx';
import { PieceList } from './PieceList.tsx';
import { Schedule } from './Schedule.tsx';
import { SheetDrawing } from './SheetDrawing.tsx';
import { TurnWords } from './TurnWords.tsx';
import './build.css';

/** What to build: heights to set supports to, blocks to cut, pieces to saw. */
export function BuildSheet() {
  const compiled = useSession((state) => state.compiled);
  return compiled === null ? null : <BuildParts compiled={compiled} />;
}

function BuildParts({ compiled }: { readonly compiled: CompiledScene }) {
  const { building, actions } = useDesk().building;
  const { sheet, every, thread, trackId } = useStore(building);
  const onShow = useSession((state) => state.trial?.trackId ?? null);
  const plan = useMemo(() => planToBuild(compiled, { sheet, every }), [compiled, sheet, every]);
  const track = typeof plan === 'string' ? undefined : chosenOf(plan.tracks, trackId ?? onShow);
  return (
    <section className="build" aria-label="Build">
      <h2>Build</h2>
      <p className="quiet">As planned, vertical curves included; heights from the datum</p>
      {track !== undefined && typeof plan !== 'string' && (
        <>
          {plan.tracks.length > 1 && (
            <div className="sheet-field">
              <label htmlFor="build-track">Track</label>
              <select
                id="build-track"
                value={track.trackId}
                onChange={(event) => actions.set({ trackId: event.target.value })}
              >
                {plan.tracks.map((one) => (
                  <option key={one.trackId} value={one.trackId}>
                    {one.trackName}
                  </option>
                ))}
              </select>
            </div>
          )}
          <button type="button" className="sheet-button" onClick={() => printOnly('build-paper')}>
            Print what to build
          </button>
          <h3 id="build-heights">Heights of supports</h3>
          <BuildFields part="heights" assumed={isAssumed(compiled, track.trackId)} />
          <Schedule track={track} thread={thread} />
          <TurnWords helices={track.helices} />
        </>
      )}
      <h3 id="build-pieces">Pieces to saw</h3>
      <BuildFields part="pieces" />
      {typeof plan === 'string' ? (
        <p className="said wrong" role="alert">
          {plan}
        </p>
      ) : (
        track !== undefined && (
          <>
            <PieceList track={track} index={plan.tracks.indexOf(track)} />
            <h3 id="build-sheets">Sheets, of all tracks</h3>
            <SheetDrawing plan={plan} />
            <p className="build-cautions">
              Guards on saws, dust out of lungs, caps on the ends of rods. Whatever carries trains over a drop needs a
              guard at its edge; shelves want fixings for that wall; mains wiring is for qualified people. Local rules
              come first.
            </p>
            <BuildPaper plan={plan} thread={thread} name={compiled.scene.name} />
          </>
        )
      )}
    </section>
  );
}

const chosenOf = <T extends { readonly trackId: string }>(tracks: readonly T[], id: string | null): T | undefined =>
  tracks.find((one) => one.trackId === id) ?? tracks[0];

/** Whether a track has no supports of its own, so that they are laid out evenly. */
const isAssumed = ({ scene }: CompiledScene, trackId: string): boolean =>
  scene.tracks.find(({ id }) => id === trackId)?.supports === undefined;
