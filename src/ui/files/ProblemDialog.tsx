import { openFile } from '../../state/commands/index.ts';
import { runCommand, useDesk, useSession } from '../context.tsx';
import { Dialog } from '../controls/Dialog.tsx';
import './files.css';

/** What went wrong, calmly: every place in a file with what was found, what is allowed and an example. */
export function ProblemDialog() {
  const desk = useDesk();
  const problem = useSession((state) => state.problem);
  const kept = useSession((state) => state.scene?.name ?? null);
  if (!problem) return null;
  const { places = [], lines, title } = problem;
  const close = () => desk.actions.dismissProblem();
  return (
    <Dialog title={title} onClose={close} className="problem">
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {places.length > 0 && (
        <>
          <p>
            {places.length === 1
              ? 'One place in it is not as it must be.'
              : `${places.length} places in it are not as they must be.`}
          </p>
          <ol>
            {places.map((place) => (
              <li key={`${place.path} ${place.found}`}>
                <code>{place.path || 'the whole file'}</code>
                {place.excerpt && <pre>{place.excerpt.join('\n')}</pre>}
                <dl>
                  <dt>found</dt>
                  <dd>{place.found}</dd>
                  <dt>allowed</dt>
                  <dd>{place.allowed}</dd>
                  {place.example && (
                    <>
                      <dt>example</dt>
                      <dd>
                        <code>{place.example}</code>
                      </dd>
                    </>
                  )}
                </dl>
              </li>
            ))}
          </ol>
        </>
      )}
      {kept && <p>“{kept}” stays open as it was.</p>}
      <div className="actions">
        {places.length > 0 && (
          <button
            type="button"
            className="plain-button"
            onClick={() => {
              close();
              runCommand(desk, openFile);
            }}
          >
            Open another file…
          </button>
        )}
        <button type="button" className="plain-button first" onClick={close}>
          Close
        </button>
      </div>
    </Dialog>
  );
}
