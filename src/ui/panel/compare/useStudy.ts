import { useStore } from 'zustand';
import type { StudyState } from '../../../state/study/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk, useSession } from '../../context.tsx';

/** Selects from the studies; the selector must give back something stable. */
export function useStudy<T>(select: (state: StudyState) => T): T {
  return useStore(useDesk().studies.study, select);
}

export const useStudyActions = () => useDesk().studies.actions;

/** The railway that studies start from: the one that is open, or the variant chosen for it. */
export function useBaseScene(): Scene | null {
  const open = useSession((state) => state.scene);
  const base = useStudy((state) => state.rows.find(({ id }) => id === state.base)?.scene ?? null);
  return base ?? open;
}
