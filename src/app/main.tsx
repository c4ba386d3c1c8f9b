import { lazy, StrictMode, Suspense } from 'react';
import { createRoot } from 'react-dom/client';
import { createBestSolver } from '../platform/best/bestWorker.ts';
import { captionedPicture } from '../platform/captionedPicture.ts';
import { openKeptScenes } from '../platform/keptScenes.ts';
import { keptText } from '../platform/keptText.ts';
import { createOfflineKeeper } from '../platform/offline/offlineKeeper.ts';
import { outputFiles } from '../platform/outputFiles.ts';
import { sceneFiles } from '../platform/sceneFiles.ts';
import { createSimWorker } from '../platform/simWorker.ts';
import { createStudyWorkers } from '../platform/studyWorkers.ts';
import { createSurveySolver } from '../platform/survey/surveyWorker.ts';
import { createTiltSensor } from '../platform/tilt/tiltSensor.ts';
import type { SimHost } from '../sim/types.ts';
import type { StageProps } from '../stage/index.ts';
import { createBuilding } from '../state/build/index.ts';
import { createSession, keepScenes, keepUnits } from '../state/index.ts';
import { createPages } from '../state/page/index.ts';
import { createPictures } from '../state/picture/index.ts';
import { createRoute } from '../state/route/index.ts';
import { createStudies } from '../state/study/index.ts';
import { createSurveys } from '../state/survey/index.ts';
import { Band, makeRowKeeper } from '../ui/band/index.ts';
import { type Desk, Shell } from '../ui/index.ts';
import { bundledScenes } from './bundledScenes.ts';
import { startClock } from './clock.ts';
import { openFirst } from './openFirst.ts';
import { ShownToTests } from './ShownToTests.tsx';

/** The drawing library is most of the program's weight: it comes in while the first trial is being solved. */
const stage = import('../stage/index.ts');

/** Puts the whole program together and opens a railway in it; `solver` runs its trials, `renderer` is what draws, once that is known. */
export async function openProgram(solver: SimHost, renderer: Promise<string>): Promise<void> {
  const Stage = lazy(async () => {
    const [{ Stage: Drawn }, name] = await Promise.all([stage, renderer]);
    return { default: (props: Omit<StageProps, 'renderer'>) => <Drawn {...props} renderer={name} /> };
  });
  const keptScenes = await openKeptScenes();
  const session = createSession(solver);
  keepUnits(session.session, keptText('units'), navigator.language);
  const offline = createOfflineKeeper('./serviceWorker.js');
  const rowKeeper = makeRowKeeper(keptText('rows'));
  const studyWorkers = createStudyWorkers();
  const studies = createStudies(session, studyWorkers, createBestSolver());
  const route = createRoute(session, studyWorkers);
  const surveys = createSurveys(session, createSurveySolver(), studyWorkers, createTiltSensor());
  const bandActions = {
    ...session.actions,
    choosePoint: (point: number) => route.actions.chooseHandle(`point:${point}`),
    chooseSupports: route.actions.chooseSupports,
  };
  const desk: Desk = {
    ...session,
    files: sceneFiles,
    kept: keptScenes,
    bundled: bundledScenes,
    studies,
    route,
    surveys,
    building: createBuilding(),
    pictures: createPictures(session, { captioned: captionedPicture, save: outputFiles.savePicture }),
    pages: createPages(session, {
      solver: createSimWorker,
      layOut: async (page, date) => (await import('../export/page/index.ts')).clubPageHtml(page, date),
      output: outputFiles,
      today: () => new Date().toLocaleDateString([], { dateStyle: 'long' }),
    }),
    update: offline,
  };

  const keeper = keepScenes(session, keptScenes, Date.now);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') keeper.flush();
  });
  window.addEventListener('pagehide', keeper.flush);
  session.session.subscribe(({ scene }) => {
    document.title = scene ? `${scene.name} – Gradewright` : 'Gradewright';
  });

  // The trial is under way before anything is drawn. What keeps the program for later waits until the first verdict is there.
  const opened = openFirst(session, bundledScenes, keptScenes);
  startClock(session.actions.tick);

  const root = document.getElementById('root');
  if (!root) throw new Error('The page has no place for the program');
  createRoot(root).render(
    <StrictMode>
      <ShownToTests session={session}>
        <Shell
          desk={desk}
          stage={
            <Suspense>
              <Stage
                session={session.session}
                playback={session.playback}
                sight={session.sight}
                route={route}
                drawnBy={desk.pictures.drawnBy}
                onChooseFinding={session.actions.seekToFinding}
              />
            </Suspense>
          }
          band={
            <Band
              session={session.session}
              playback={session.playback}
              route={route.route}
              actions={bandActions}
              rowKeeper={rowKeeper}
            />
          }
        />
      </ShownToTests>
    </StrictMode>,
  );

  void opened.then(() => {
    if (import.meta.env.PROD) void offline.start();
  });
}
