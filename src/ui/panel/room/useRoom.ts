import { changeRoom, type RoomChange, type SceneRoom } from '../../../state/room/index.ts';
import { useDesk, useSession } from '../../context.tsx';

/** The room of the railway on the desk, and how a part of it is changed: one step of the history, or why not. */
export function useRoom(): {
  readonly room: Partial<SceneRoom>;
  readonly put: (label: string, change: RoomChange) => string | null;
} {
  const { actions } = useDesk();
  const room = useSession((state) => state.scene?.room) ?? {};
  return { room, put: (label, change) => actions.attempt(label, (scene) => changeRoom(scene, change)) };
}
