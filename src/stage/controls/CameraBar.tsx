import { type StoreApi, useStore } from 'zustand';
import type { CameraName, SessionState } from '../../state/types.ts';

const cameras: readonly (readonly [CameraName, string])[] = [
  ['walk', 'Walk round'],
  ['eye', 'Eye height'],
  ['ride', 'Ride'],
  ['down', 'Straight down'],
  ['follow', 'Follow'],
];

/** The five cameras. */
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
    </div>
  );
}
