import { useEffect, useState } from 'react';
import { runTrial, stopRun } from '../../state/commands/index.ts';
import { runCommand, useDesk, useSession } from '../context.tsx';
import { savedWords } from './savedWords.ts';
import { openedWords, stateWords } from './stateWords.ts';

/** How often "12 s ago" is looked at again, ms. */
const refreshEvery = 5000;

function SavedAgo({ savedAt }: { readonly savedAt: number }) {
  const [now, setNow] = useState(savedAt);
  useEffect(() => {
    setNow(Date.now());
    const timer = setInterval(() => setNow(Date.now()), refreshEvery);
    return () => clearInterval(timer);
  }, []);
  return savedWords(savedAt, Math.max(now, savedAt));
}

const notKeptWords = {
  full: 'this machine is full: save it as a file',
  blocked: 'not kept: close the window with another version of Gradewright',
  forbidden: 'this browser keeps nothing: save it as a file',
} as const;

/** What is going on, with the way to stop or start it beside it. */
export function StateLine() {
  const desk = useDesk();
  const words = useSession(stateWords);
  const savedAt = useSession((state) => state.savedAt);
  const notKept = useSession((state) => state.notKept);
  const file = useSession((state) => state.file?.name ?? null);
  const quiet = useSession((state) => state.opened !== null && words === openedWords(state.opened));
  const stoppable = useSession(() => stopRun.canRun(desk));
  const stale = useSession(() => words.startsWith('not run'));
  return (
    <span className="state-line">
      <span className="state-words">
        {notKept && <b role="alert">{notKeptWords[notKept]}</b>}
        {file !== null && <i title="The file that Save writes to">{file}</i>}
        <span className="words">{quiet && savedAt !== null ? <SavedAgo savedAt={savedAt} /> : words}</span>
      </span>
      {stoppable && (
        <button type="button" className="link" onClick={() => runCommand(desk, stopRun)}>
          Stop
        </button>
      )}
      {stale && (
        <button type="button" className="link" onClick={() => runCommand(desk, runTrial)}>
          Run
        </button>
      )}
    </span>
  );
}
