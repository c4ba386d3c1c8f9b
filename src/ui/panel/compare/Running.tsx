import { useStudyActions } from './useStudy.ts';

/** Long work under way: how far it is, and the way to stop it; what is done is kept. */
export function Running({ label, progress }: { readonly label: string; readonly progress: number }) {
  const actions = useStudyActions();
  return (
    <div className="study-progress">
      <progress className="progress-line" value={progress} max={1} aria-label={label} />
      <button type="button" className="link" onClick={() => actions.stop()}>
        Stop
      </button>
    </div>
  );
}
