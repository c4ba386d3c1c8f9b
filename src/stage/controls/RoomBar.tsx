import { type StoreApi, useStore } from 'zustand';
import type { RoomTool } from '../../state/room/index.ts';
import type { Route } from '../../state/route/index.ts';
import type { SessionState } from '../../state/types.ts';

interface RoomBarProps {
  readonly session: StoreApi<SessionState>;
  readonly route: Route;
}

const tools: readonly (readonly [RoomTool, words: string, how: string])[] = [
  ['walls', 'Walls', 'Pull the room open from corner to corner'],
  ['door', 'Door', 'Pull along a wall'],
  ['pillar', 'Pillar', 'Pull it open from corner to corner'],
  ['post', 'Post', 'Pull it open from its middle'],
  ['board', 'Board', 'Pull it open from corner to corner'],
];

/** What a hand can draw in the room, while it works there. */
export function RoomBar({ session, route }: RoomBarProps) {
  const works = useStore(route.route, (state) => state.works);
  const drawing = useStore(route.route, (state) => state.drawing);
  const chapter = useStore(session, (state) => state.chapter);
  const walls = useStore(session, (state) => state.scene?.room?.corners !== undefined);
  if (chapter !== 'route' || works !== 'room') return null;
  const offered = tools.filter(([tool]) => (tool === 'walls' ? !walls : tool !== 'door' || walls));
  return (
    <div className="stage-controls stage-room-bar" role="toolbar" aria-label="Draw in the room">
      <em>{tools.find(([tool]) => tool === drawing)?.[2] ?? 'Draw'}</em>
      {offered.map(([tool, words, how]) => (
        <button
          key={tool}
          type="button"
          aria-pressed={drawing === tool}
          title={`${how}; by keyboard one is put in and chosen`}
          onClick={({ detail }) => {
            // A press by the keyboard has no place on the stage: one is put where it is usual.
            if (detail === 0) route.actions.putIn(tool);
            else route.actions.drawWith(drawing === tool ? null : tool);
          }}
        >
          <span>{words}</span>
        </button>
      ))}
    </div>
  );
}
