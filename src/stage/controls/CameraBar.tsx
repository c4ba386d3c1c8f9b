import { type StoreApi, useStore } from 'zustand';
import type { Route } from '../../state/route/index.ts';
import type { CameraName, SessionState } from '../../state/types.ts';

const cameras: readonly (readonly [CameraName, string])[] = [
  ['walk', 'Walk round'],
  ['eye', 'Eye height'],
  ['ride', 'Ride'],
  ['down', 'Straight down'],
  ['follow', 'Follow'],
];

interface CameraBarProps {
  readonly session: StoreApi<SessionState>;
  /** What the plan is changed through; undefined where it cannot be. */
  readonly route: Route | undefined;
}

/** The five cameras, the way back to all of it and, where the plan is worked at, the way to the room around it. */
export function CameraBar({ session, route }: CameraBarProps) {
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
      {route !== undefined && <RoomSwitch session={session} route={route} />}
    </div>
  );
}

/** Hands the stage to the room, or back to the line. */
function RoomSwitch({ session, route }: { readonly session: StoreApi<SessionState>; readonly route: Route }) {
  const chapter = useStore(session, (state) => state.chapter);
  const works = useStore(route.route, (state) => state.works);
  if (chapter !== 'route') return null;
  return (
    <>
      <i />
      <button
        type="button"
        title="Walls, doors, boards, bridges, piers and what stands in the way, by hand"
        aria-pressed={works === 'room'}
        onClick={() => route.actions.workAt(works === 'room' ? 'line' : 'room')}
      >
        <span>Room</span>
      </button>
    </>
  );
}
