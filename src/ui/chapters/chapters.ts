import type { ComponentType } from 'react';
import { commandsWith } from '../../state/commands/index.ts';
import { surveyChapter } from '../../state/survey/index.ts';
import type { Chapter } from '../../state/types.ts';
import { BuildSheet } from '../panel/build/BuildSheet.tsx';
import { CompareSheet } from '../panel/compare/CompareSheet.tsx';
import { RouteSheet } from '../panel/route/RouteSheet.tsx';
import { ShowSheet } from '../panel/show/ShowSheet.tsx';
import { SurveySheet } from '../panel/survey/SurveySheet.tsx';
import { TrainsSheet } from '../panel/trains/TrainsSheet.tsx';
import { TrialSheet } from '../panel/trial/TrialSheet.tsx';
import { BuildIcon, CompareIcon, RouteIcon, ShowIcon, SurveyIcon, TrainsIcon, TrialIcon } from './icons.tsx';

/** One chapter of the job: a tab on the rail, a number key, a command, and the sheet beside the stage. */
export interface ChapterEntry {
  readonly id: Chapter;
  readonly label: string;
  readonly Icon: ComponentType;
  readonly Sheet: ComponentType;
  /** The sheet needs more room than a column of figures. */
  readonly wide?: true;
  /** The sheet stays while the lens is open. */
  readonly stays?: true;
}

/** The chapters in the order of the job. Another one is another entry here and nothing else. */
export const chapters: readonly ChapterEntry[] = [
  { id: 'route', label: 'Route', Icon: RouteIcon, Sheet: RouteSheet, wide: true },
  { id: 'trains', label: 'Trains', Icon: TrainsIcon, Sheet: TrainsSheet, wide: true },
  { id: 'trial', label: 'Trial', Icon: TrialIcon, Sheet: TrialSheet },
  { id: 'compare', label: 'Compare', Icon: CompareIcon, Sheet: CompareSheet, wide: true },
  { id: surveyChapter, label: 'Survey', Icon: SurveyIcon, Sheet: SurveySheet, wide: true },
  { id: 'build', label: 'Build', Icon: BuildIcon, Sheet: BuildSheet, wide: true },
  { id: 'show', label: 'Show', Icon: ShowIcon, Sheet: ShowSheet, wide: true, stays: true },
];

/** Every command there is, those of the chapters among them. */
export const commands = commandsWith(chapters);

/** A chapter by its name; the first one for a name that is not there. */
export const chapterOf = (id: Chapter): ChapterEntry => chapters.find((chapter) => chapter.id === id) ?? chapters[0];
