import { useStore } from 'zustand';
import type { StoreApi } from 'zustand/vanilla';
import type { PlaybackState, SessionState } from '../../../state/types.ts';
import { Segmented } from '../../controls/Segmented.tsx';
import type { BandFrame } from '../frame/bandFrame.ts';
import { LiveText } from '../frame/LiveText.tsx';
import { Scrub } from './Scrub.tsx';
import './transport.css';

interface Props {
  readonly frame: BandFrame;
  readonly session: StoreApi<SessionState>;
  readonly playback: StoreApi<PlaybackState>;
}

const RATES = [
  { value: '0.25', label: '¼×', spoken: 'a quarter of real speed' },
  { value: '1', label: '1×', spoken: 'real speed' },
  { value: '4', label: '4×', spoken: 'four times real speed' },
] as const;
/** What the lens plays at. */
const SLOW = { value: '0.05', label: '1/20×', spoken: 'a twentieth of real speed' } as const;

/** Play, events, clock, scrub, rate, and what the axis measures. */
export function Transport({ frame, session, playback }: Props) {
  const playing = useStore(playback, (state) => state.playing);
  const rate = useStore(playback, (state) => state.rate);
  const duration = useStore(playback, (state) => state.duration);
  const progress = useStore(session, (state) => state.progress);
  const { actions, layout, axis, show } = frame;
  const slow = rate < 0.2;
  const rates = slow ? [SLOW, RATES[1]] : RATES;
  const length = show.lengthUnit === 'in' ? 'ft' : 'm';
  return (
    <div className="gwb-transport" style={{ height: layout.transport }}>
      <div className="gwb-controls">
        <button
          type="button"
          className="gwb-play"
          aria-label={playing ? 'Pause' : 'Play'}
          disabled={duration === 0}
          onClick={actions.toggle}
        >
          <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
            <path d={playing ? 'M2 1h3v10h-3zM7 1h3v10h-3z' : 'M2.5 .8L11 6L2.5 11.2Z'} fill="currentColor" />
          </svg>
        </button>
        <button
          type="button"
          className="gwb-step"
          aria-label="Back one event"
          disabled={duration === 0}
          onClick={actions.previousEvent}
        >
          <svg width="13" height="12" aria-hidden="true">
            <path d="M1.2 1V11M11.5 1.4L4 6L11.5 10.6Z" fill="none" stroke="currentColor" strokeWidth="1.3" />
          </svg>
        </button>
        <button
          type="button"
          className="gwb-step"
          aria-label="Next event"
          disabled={duration === 0}
          onClick={actions.nextEvent}
        >
          <svg width="13" height="12" aria-hidden="true">
            <path d="M11.8 1V11M1.5 1.4L9 6L1.5 10.6Z" fill="none" stroke="currentColor" strokeWidth="1.3" />
          </svg>
        </button>
        <div className="gwb-clock">
          <LiveText
            live={frame.live}
            className={slow ? 'gwb-now gwb-fine' : 'gwb-now'}
            read={(moment) => `${moment.time.toFixed(slow ? 3 : 1)} s`}
          />
          {layout.narrow ? null : (
            <span className="gwb-of">
              {duration > 0 ? `of ${duration.toFixed(1)}` : progress === null ? '' : 'solving'}
            </span>
          )}
        </div>
      </div>
      <Scrub frame={frame} height={layout.transport - 1} />
      <div className="gwb-switches">
        {layout.narrow ? (
          <button
            type="button"
            className="gwb-rate"
            aria-label={`Rate ${rate}, change`}
            onClick={() => actions.setRate(rate === 1 ? 4 : rate === 4 ? 0.25 : 1)}
          >
            {[SLOW, ...RATES].find((choice) => Number(choice.value) === rate)?.label ?? `${rate}×`}
          </button>
        ) : (
          <Segmented
            label="Rate"
            choices={rates}
            value={String(rate)}
            onChange={(value) => actions.setRate(Number(value))}
          />
        )}
        <Segmented
          label="Axis"
          choices={[
            { value: 'chainage', label: length, spoken: 'along the track' },
            { value: 'time', label: 's', spoken: 'in time' },
          ]}
          value={axis.kind}
          onChange={actions.setAxis}
        />
      </div>
      {progress === null ? null : (
        <div
          className="gwb-progress"
          role="progressbar"
          aria-label="Solving"
          aria-valuemin={0}
          aria-valuemax={100}
          aria-valuenow={Math.round(progress * 100)}
        >
          <div style={{ transform: `scaleX(${progress})` }} />
        </div>
      )}
    </div>
  );
}
