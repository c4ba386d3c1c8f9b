import { openKept } from '../../state/index.ts';
import { useDesk, useSession } from '../context.tsx';

/** The railways kept on this machine, each where it was left. */
export function OwnRailways({ onClose }: { readonly onClose: () => void }) {
  const desk = useDesk();
  const { actions, kept, bundled } = desk;
  const name = useSession((state) => (state.savedAt === null ? null : state.scene?.name));
  const own = kept.list();
  if (own.length === 0) return null;
  const isExample = (entry: string) => bundled.some(({ scene }) => scene.name === entry);
  return (
    <section aria-label="Yours">
      <h3>Yours, kept on this machine</h3>
      <ul>
        {own.map((entry) => (
          <li key={entry.name}>
            <button
              type="button"
              className="choice"
              aria-current={name === entry.name ? 'true' : undefined}
              onClick={() => {
                onClose();
                void openKept(desk, entry).then((opened) => {
                  if (!opened) actions.report({ title: `“${entry.name}” can no longer be read`, lines: [] });
                });
              }}
            >
              <span>{isExample(entry.name) ? `${entry.name}, as you changed it` : entry.name}</span>
              <small>
                changed {new Date(entry.at).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' })}
              </small>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
