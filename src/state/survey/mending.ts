import type { Scene, SceneSurvey } from '../../scene/index.ts';
import { asBuiltScene, leansOf } from '../../sim/survey/index.ts';
import { isAbort, wordsOf } from '../aborting.ts';
import type { SurveyActions } from './actions.ts';
import type { SurveyDesk } from './desk.ts';
import { withSurvey } from './edits.ts';
import { mendKey } from './keys.ts';

/** What the mending may do and must keep, the mending itself, and what of it goes into the railway. */
export function mendingActions(
  desk: SurveyDesk,
): Pick<SurveyActions, 'setObjective' | 'setWishes' | 'setFixed' | 'mend' | 'putEstimate' | 'putMended'> {
  const { survey, document, host } = desk;
  const change = (label: string, make: (own: SceneSurvey) => SceneSurvey) => {
    const own = desk.chosenSurvey();
    if (own === null) return;
    survey.setState({ problem: document.attempt(label, (now: Scene) => withSurvey(now, own.id, make)) });
  };
  return {
    setObjective(objective) {
      desk.stop();
      survey.setState({ objective, mended: null, trains: null });
    },
    setWishes: (label, make) =>
      change(label, ({ mend = {}, ...rest }) => {
        const wishes = make(mend);
        return Object.keys(wishes).length === 0 ? rest : { ...rest, mend: wishes };
      }),
    setFixed(supports) {
      const fixed = supports.map((support) => support + 1);
      change('what is known to stand right', ({ fixed: _old, ...rest }) =>
        fixed.length === 0 ? rest : { ...rest, fixed },
      );
    },
    async mend() {
      const now = desk.scene();
      const own = desk.chosenSurvey();
      if (now === null || own === null) return;
      const { signal } = desk.begun();
      survey.setState({ mending: true, mended: null, mendedFrom: mendKey(now, own), trains: null });
      try {
        const { objective } = survey.getState();
        const mended = await host.work({ scene: now, surveyId: own.id, objective }, signal);
        if (!signal.aborted) survey.setState({ mended, mending: false });
      } catch (error) {
        if (!isAbort(error)) survey.setState({ mending: false, problem: wordsOf(error) });
      }
    },
    async putEstimate() {
      const { worked } = survey.getState();
      const own = desk.chosenSurvey();
      if (worked === null || own === null) return false;
      const { departures } = worked.survey.explanation;
      const leans = leansOf(worked.survey)?.before;
      return document.change(`heights as “${own.name}” found them`, (now) =>
        asBuiltScene(now, own.track, departures, leans),
      );
    },
    async putMended() {
      const { mended } = survey.getState();
      const own = desk.chosenSurvey();
      if (mended?.mend?.outcome !== 'mended' || own === null) return false;
      const { departures } = mended.mend;
      const leans = leansOf(mended.survey)?.after;
      return document.change('supports as mended', (now) => asBuiltScene(now, own.track, departures, leans));
    },
  };
}
