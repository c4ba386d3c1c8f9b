import type { Scene } from '../../scene/index.ts';
import type { SurveyActions } from './actions.ts';
import { type SurveyDesk, showSurvey } from './desk.ts';
import { withoutSurvey, withSurvey } from './edits.ts';
import { workOut } from './follow.ts';
import { supportsToDeckAbove } from './stops.ts';
import { usualTools } from './tools.ts';

/** Which survey is worked with, and which part of the job. */
export function choosingActions(
  desk: SurveyDesk,
): Pick<SurveyActions, 'choose' | 'setPart' | 'begin' | 'rename' | 'remove'> {
  const { survey, document } = desk;
  return {
    choose(id) {
      desk.stop();
      showSurvey(desk, desk.scene()?.surveys?.find((one) => one.id === id) ?? null);
      void workOut(desk);
    },
    setPart: (part) => survey.setState({ part, ...(part !== 'read' && { walk: null }) }),
    begin: (name) => beginSurvey(desk, name),
    rename(name) {
      const { draft, chosen } = survey.getState();
      if (draft !== null) survey.setState({ draft: { ...draft, name } });
      else if (chosen !== null)
        document.attempt(`name “${name}”`, (now) => withSurvey(now, chosen, (one) => ({ ...one, name })));
    },
    remove: (id) => void document.attempt('taking a survey out', (now: Scene) => withoutSurvey(now, id)),
  };
}

/** Makes ready for a new survey of the track on show, or of the first that has supports. */
export function beginSurvey(desk: SurveyDesk, name: string): void {
  const { survey } = desk;
  const trackId = usableTrack(desk);
  if (trackId === null) {
    survey.setState({ problem: 'No track here has two supports or more: give the route supports first.' });
    return;
  }
  desk.stop();
  showSurvey(desk, null);
  survey.setState({ draft: { name, trackId }, tools: usualTools(), part: 'read' });
  const under = desk.track();
  if (under === null) return;
  const further = supportsToDeckAbove(under);
  survey.setState(({ tools }) => ({ tools: { ...tools, rise: { ...tools.rise, further } } }));
}

function usableTrack({ session }: SurveyDesk): string | null {
  const { compiled, trial } = session.getState();
  const usable = [...(compiled?.tracks ?? [])].flatMap(([id, { spec }]) =>
    (spec.profile.strip?.supports.length ?? 0) >= 2 ? [id] : [],
  );
  return (
    usable.find((id) => trial?.trackId === id || trial?.legs?.some((leg) => leg.trackId === id)) ?? usable[0] ?? null
  );
}
