import type { Mend, MendTask, Survey } from '../../core/survey/types.ts';

export type { LimitConflict, Mend, MendProof, Objective } from '../../core/survey/types.ts';

/** A survey worked out and, if the readings call for it, how to mend the track. */
export interface SurveyResult {
  /** Null for readings that are not the scene's own. */
  readonly surveyId: string | null;
  readonly trackId: string;
  readonly survey: Survey;
  readonly task: MendTask;
  readonly mend: Mend;
}

/** One of the scene's surveys worked out, mended only where that was asked. */
export interface SurveyAnswer extends Omit<SurveyResult, 'surveyId' | 'mend'> {
  readonly surveyId: string;
  readonly mend: Mend | null;
}
