import { compareSurveys } from '../../core/survey/index.ts';
import { runsOn, type Scene } from '../../scene/index.ts';
import { isAbort, wordsOf } from '../aborting.ts';
import type { SurveyActions } from './actions.ts';
import type { SurveyDesk } from './desk.ts';
import { runTrains } from './trains.ts';

/** What trains make of the line before and after the work, and what a second survey says that the work did. */
export function provingActions(desk: SurveyDesk): Pick<SurveyActions, 'runTrains' | 'compareWith'> {
  const { survey, session, host, pool } = desk;
  return {
    async runTrains(exactness) {
      const now = desk.scene();
      const { worked, mended } = survey.getState();
      const trial = now && worked && trialOn(now, worked.trackId, session.getState().trialId);
      if (!now || !worked || !trial) {
        survey.setState({ problem: 'No trial of this scene runs on the track that was surveyed.' });
        return;
      }
      const { signal } = desk.begun();
      const { twist, explanation } = worked.survey;
      // Cross-levels can be set right where no height need be touched.
      const level = twist?.places.some(({ wrong }) => wrong) ? explanation.departures : null;
      const after = mended?.mend?.outcome === 'mended' ? mended.mend.departures : level;
      const task = { scene: now, trackId: worked.trackId, trial, survey: worked.survey, mended: after, exactness };
      try {
        await runTrains(task, pool, signal, (trains) => survey.setState({ trains }));
      } catch (error) {
        if (!isAbort(error)) survey.setState({ problem: wordsOf(error) });
        survey.setState(({ trains }) => ({ trains: trains && { ...trains, progress: null } }));
      }
    },
    async compareWith(id) {
      const now = desk.scene();
      const later = survey.getState().worked;
      survey.setState({ against: id === null ? null : { id, changes: null } });
      if (now === null || later === null || id === null) return;
      try {
        const earlier = await host.work({ scene: now, surveyId: id, objective: null });
        const changes = compareSurveys(earlier.survey, later.survey);
        if (survey.getState().against?.id === id) survey.setState({ against: { id, changes } });
      } catch (error) {
        survey.setState({ against: null, problem: isAbort(error) ? null : wordsOf(error) });
      }
    },
  };
}

/** The trial on show where it runs on a track, else the first that does. */
function trialOn({ trials }: Scene, trackId: string, shown: string | null): Scene['trials'][number] | null {
  const on = trials.filter((trial) => runsOn(trial, trackId));
  return on.find(({ id }) => id === shown) ?? on[0] ?? null;
}
