import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { keptScenes } from '../platform/keptScenes.ts';
import { sceneFiles } from '../platform/sceneFiles.ts';
import { createSimWorker } from '../platform/simWorker.ts';
import { Stage } from '../stage/index.ts';
import { createSession, keepScenes } from '../state/index.ts';
import { Band } from '../ui/band/index.ts';
import { type Desk, Shell } from '../ui/index.ts';
import { bundledScenes } from './bundledScenes.ts';
import { startClock } from './clock.ts';
import { openFirst } from './openFirst.ts';
import { showToTests } from './showToTests.ts';

const session = createSession(createSimWorker());
const desk: Desk = { ...session, files: sceneFiles, kept: keptScenes, bundled: bundledScenes };

startClock(session.actions.tick);
showToTests(session);

const keeper = keepScenes(session, keptScenes, Date.now);
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') keeper.flush();
});

session.session.subscribe(({ scene }) => {
  document.title = scene ? `${scene.name} – Gradewright` : 'Gradewright';
});

const root = document.getElementById('root');
if (!root) throw new Error('The page has no place for the program');
createRoot(root).render(
  <StrictMode>
    <Shell
      desk={desk}
      stage={
        <Stage session={session.session} playback={session.playback} onChooseFinding={session.actions.seekToFinding} />
      }
      band={<Band session={session.session} playback={session.playback} actions={session.actions} />}
    />
  </StrictMode>,
);

void openFirst(session, bundledScenes, keptScenes);
