import { useSyncExternalStore } from 'react';
import { useDesk } from '../context.tsx';
import './newVersion.css';

/** Says that a newer version waits; nothing changes until the person agrees. */
export function NewVersion() {
  const { update } = useDesk();
  const waits = useSyncExternalStore(update.subscribe, update.waits);
  if (!waits) return null;
  return (
    <p className="new-version" role="status">
      New version ready.
      <button type="button" className="plain-button first" onClick={update.takeOver}>
        Reload
      </button>
    </p>
  );
}
