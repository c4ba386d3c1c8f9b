import { cameras } from './cameras.ts';
import { type ChapterName, chapterCommands } from './chapters.ts';
import { chooseRailway } from './chooseRailway.ts';
import type { Command } from './command.ts';
import { keepCure } from './keepCure.ts';
import { lensViews } from './lensViews.ts';
import { newRailway } from './newRailway.ts';
import { nextEvent } from './nextEvent.ts';
import { openFile } from './openFile.ts';
import { openPalette } from './openPalette.ts';
import { previousEvent } from './previousEvent.ts';
import { rates } from './rates.ts';
import { redo } from './redo.ts';
import { renameRailway } from './renameRailway.ts';
import { runTrial } from './runTrial.ts';
import { saveElsewhere, saveFile } from './saveFile.ts';
import { showWhole } from './showWhole.ts';
import { stepBack } from './stepBack.ts';
import { stopRun } from './stopRun.ts';
import { toggleAxis } from './toggleAxis.ts';
import { toggleGradeForm } from './toggleGradeForm.ts';
import { toggleLengthUnit } from './toggleLengthUnit.ts';
import { toggleLens } from './toggleLens.ts';
import { togglePlay } from './togglePlay.ts';
import { addView, guessFirst, nextStop, presentTour, previousStop, proposeTour, runTour } from './tour.ts';
import { turnBeside } from './turnBeside.ts';
import { undo } from './undo.ts';
import { workings } from './workings.ts';
import { worstFinding } from './worstFinding.ts';

/** Every command there is with these chapters, in the order the palette lists them. */
export const commandsWith = (chapters: readonly ChapterName[]): readonly Command[] => [
  togglePlay,
  nextEvent,
  previousEvent,
  worstFinding,
  keepCure,
  toggleLens,
  ...lensViews,
  stepBack,
  undo,
  redo,
  runTrial,
  stopRun,
  ...workings,
  ...chapterCommands(chapters),
  presentTour,
  runTour,
  nextStop,
  previousStop,
  guessFirst,
  addView,
  proposeTour,
  turnBeside,
  showWhole,
  ...cameras,
  ...rates,
  toggleAxis,
  toggleLengthUnit,
  toggleGradeForm,
  chooseRailway,
  renameRailway,
  newRailway,
  openFile,
  saveFile,
  saveElsewhere,
  openPalette,
];
