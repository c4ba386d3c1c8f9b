import { renamedRailway } from '../../state/index.ts';
import { useDesk, useSession } from '../context.tsx';
import { TypedField } from '../controls/TypedField.tsx';

/** The name of the open railway, to type anew: one step that Undo takes back. */
export function OpenName() {
  const { actions } = useDesk();
  const name = useSession((state) => state.scene?.name ?? null);
  if (name === null) return null;
  return (
    <TypedField
      className="dimension-field text open-name"
      label="The open railway is called"
      value={name}
      onTake={(typed) => actions.attempt('name of the railway', (scene) => renamedRailway(scene, typed))}
    />
  );
}
