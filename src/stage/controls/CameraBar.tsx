import { type StoreApi, useStore } from 'zustand';
import type { CameraName, SessionState } from '../../state/types.ts';

const cameras: readonly (readonly [CameraName, string])[] = [
  ['walk', 'Walk round'],
  ['eye', 'Eye height'],
  ['ride', 'Ride'],
  ['down', 'Straight down'],
  ['follow', 'Follow'],
];

/** The five cameras, and the way back to all of it. */
export function CameraBar({ session }: { readonly session: StoreApi<SessionState> }) {
  const camera = useStore(session, (state) => state.camera);
  return (
    <div className="stage-controls" role="toolbar" aria-label="Camera">
      {cameras.map(([name, words]) => (
        <button
          key={name}
          type="button"
          aria-pressed={camera === name}
          onClick={() => session.setState({ camera: name })}
        >
          <span>{words}</span>
        </button>
      ))}
      <i />
      <button
        type="button"
        title="Show the whole railway (Shift 0)"
        onClick={() => session.setState(({ wholeAsked }) => ({ camera: 'walk', wholeAsked: wholeAsked + 1 }))}
      >
        <span>Whole railway</span>
      </button>
    </div>
  );
}
