import { formatNumber, thinSpace } from '../../../core/units/index.ts';
import { runTrial, stopRun } from '../../../state/commands/index.ts';
import type { TrialResult } from '../../../state/types.ts';
import { runCommand, useDesk, useSession } from '../../context.tsx';
import { percentWords } from '../../show.ts';

const outcomeWords: Readonly<Record<TrialResult['run']['outcome'], string>> = {
  arrived: 'Arrives after',
  stalled: 'Stalls after',
  parted: 'Parts after',
  'end-of-track': 'Runs off the end after',
  'time-limit': 'Still under way after',
};

/** Whether moments of a run were left out so that it fits into memory, when one is asked for each `every` s. */
const isThinned = ({ interval }: TrialResult['run'], every: number): boolean => every > 0 && interval > 1.5 * every;

const milliseconds = (s: number): string => `${formatNumber(s * 1000, { digits: 0 })}${thinSpace}ms`;

/** How the run of this trial stands: under way with a way to stop it, how it ended, or not run. */
export function RunState() {
  const desk = useDesk();
  const progress = useSession((state) => state.progress);
  const result = useSession((state) => state.result);
  const every = useSession((state) => state.trial?.options.frameInterval ?? 0);
  const stale = useSession((state) => state.compiled?.scene !== state.scene || state.trial?.id !== state.trialId);
  if (progress !== null) {
    return (
      <div className="run-state">
        <div>
          Solving <b>{percentWords(progress)}</b>
        </div>
        <progress className="progress-line" max={1} value={progress} aria-label="Solving the trial" />
        <div>
          <button type="button" className="link" onClick={() => runCommand(desk, stopRun)}>
            Stop
          </button>
        </div>
      </div>
    );
  }
  if (stale || !result) {
    return (
      <div className="run-state">
        <div>
          Not run yet
          <button type="button" className="link" onClick={() => runCommand(desk, runTrial)}>
            Run
          </button>
        </div>
      </div>
    );
  }
  const duration = result.run.time.at(-1) ?? 0;
  return (
    <div className="run-state">
      <div>
        {outcomeWords[result.run.outcome]} <b>{formatNumber(duration, { digits: 1 }) + thinSpace}s</b>
      </div>
      {isThinned(result.run, every) && (
        <div className="run-thinned">
          {`A long run: what is shown and judged lies ${milliseconds(result.run.interval)} apart instead of ${milliseconds(every)}.`}
        </div>
      )}
    </div>
  );
}
