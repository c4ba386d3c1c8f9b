import { useStore } from 'zustand';
import type { StudyState } from '../../../state/study/index.ts';
import { useDesk } from '../../context.tsx';

/** Selects from the studies; the selector must give back something stable. */
export function useStudy<T>(select: (state: StudyState) => T): T {
  return useStore(useDesk().studies.study, select);
}

export const useStudyActions = () => useDesk().studies.actions;
