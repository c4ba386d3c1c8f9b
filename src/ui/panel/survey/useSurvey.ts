import { useStore } from 'zustand';
import type { SceneSurvey, SurveyState } from '../../../state/survey/index.ts';
import { useDesk, useSession } from '../../context.tsx';

/** Selects from the surveys; the selector must give back something stable. */
export function useSurvey<T>(select: (state: SurveyState) => T): T {
  return useStore(useDesk().surveys.survey, select);
}

export const useSurveyActions = () => useDesk().surveys.actions;

/** The survey on show as the scene has it. */
export function useChosenSurvey(): SceneSurvey | null {
  const chosen = useSurvey((state) => state.chosen);
  return useSession((state) => state.scene?.surveys?.find(({ id }) => id === chosen) ?? null);
}
