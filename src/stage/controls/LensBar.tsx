import { type StoreApi, useStore } from 'zustand';
import type { LensView, PlaybackState, SessionState } from '../../state/types.ts';

const views: readonly (readonly [LensView, string])[] = [
  ['side', 'Side'],
  ['above', 'Above'],
  ['along', 'Along'],
];

/** One press of the step buttons, s, and the slow speed. */
const step = 0.005;
const slowRate = 1 / 20;

interface LensBarProps {
  readonly session: StoreApi<SessionState>;
  readonly playback: StoreApi<PlaybackState>;
}

/** What the lens can be asked while it is open. */
export function LensBar({ session, playback }: LensBarProps) {
  const view = useStore(session, (state) => state.lens.view);
  const ghost = useStore(session, (state) => state.ghost !== null);
  const slow = useStore(playback, (state) => Math.abs(state.rate - slowRate) < 1e-9);

  const close = () => session.setState(({ lens }) => ({ lens: { ...lens, open: false } }));
  const move = (by: number) =>
    playback.setState(({ time, duration }) => ({ playing: false, time: Math.min(duration, Math.max(0, time + by)) }));

  return (
    <div className="stage-controls" role="toolbar" aria-label="Magnifier">
      {views.map(([name, words]) => (
        <button
          key={name}
          type="button"
          aria-pressed={view === name}
          onClick={() => session.setState(({ lens }) => ({ lens: { ...lens, view: name } }))}
        >
          <span>{words}</span>
        </button>
      ))}
      <i />
      <button type="button" aria-pressed={slow} onClick={() => playback.setState({ rate: slow ? 1 : slowRate })}>
        <span>1/20 speed</span>
      </button>
      <div className="stage-stepper">
        <button type="button" aria-label="Back 5 milliseconds" onClick={() => move(-step)}>
          ‹
        </button>
        <em>5 ms</em>
        <button type="button" aria-label="On 5 milliseconds" onClick={() => move(step)}>
          ›
        </button>
      </div>
      <i />
      <button type="button" className="stage-close" onClick={close}>
        Close {/* While a cure is shown, Escape drops that first. */}
        {ghost ? null : <kbd>Esc</kbd>}
      </button>
    </div>
  );
}
