import { radiusText } from '../../../state/index.ts';
import { supportLabel, supportName, supportOffWords } from '../../../state/route/index.ts';
import { profileHeights, type SceneTrack, type SupportSpan } from '../../../state/routeEdits/index.ts';
import {
  chainageWords,
  gradeOneForm,
  lengthFigure,
  lengthUnit,
  roundLengthWords,
  type Show,
  withUnit,
} from '../words.ts';
import { gradeFrom, type SectionHandle } from './sectionHandles.ts';

/** What a handle is called, for whoever hears it. */
export function handleName(handle: SectionHandle): string {
  switch (handle.kind) {
    case 'point':
      return `Grade point ${handle.index + 1}`;
    case 'curve':
      return `${handle.side < 0 ? 'Start' : 'End'} of the vertical curve at grade point ${handle.index + 1}`;
    case 'support':
      return supportName(handle.index);
  }
}

/** What a change by it, or by the chosen supports that it is one of, is called after "Undo". */
export function handleLabel(handle: SectionHandle, span: SupportSpan | null): string {
  switch (handle.kind) {
    case 'point':
      return `move of grade point ${handle.index + 1}`;
    case 'curve':
      return `vertical curve at grade point ${handle.index + 1}`;
    case 'support':
      return supportLabel(handle.index, span);
  }
}

const length = (mm: number, show: Show, signed = false): string =>
  withUnit(lengthFigure(mm / 1000, show, signed), lengthUnit(show));

/** A grade with an arrow for its way. */
const grade = (share: number, show: Show): string => {
  const words = gradeOneForm(share, show);
  return words === 'level' ? words : `${words} ${share > 0 ? '↗' : '↘'}`;
};

/** The numbers of a handle: what it sets first, then what follows from it. */
export function handleFigures(track: SceneTrack, handle: SectionHandle, show: Show): string[] {
  switch (handle.kind) {
    case 'support':
      return [supportOffWords(handle.offMm, show), chainageWords(handle.atMm / 1000, show)];
    case 'curve':
      return [
        `curve ${roundLengthWords(handle.lengthMm / 1000, show)}`,
        radiusText(handle.lengthMm / handle.change / 1000, show),
      ];
    case 'point': {
      const points = profileHeights(track);
      const [before, after] = [gradeFrom(points, handle.index - 1), gradeFrom(points, handle.index)];
      const change = Math.abs(after - before);
      const { verticalCurveLengthMm, verticalCurveRadiusMm } = track.profile[handle.index];
      const radiusMm =
        verticalCurveRadiusMm ??
        (verticalCurveLengthMm !== undefined && change > 0 ? verticalCurveLengthMm / change : 0);
      return [
        length(handle.heightMm, show),
        chainageWords(handle.atMm / 1000, show),
        [before, after]
          .filter((share) => Number.isFinite(share))
          .map((share) => grade(share, show))
          .join(' | '),
        ...(radiusMm > 0 && change > 0 ? [radiusText(radiusMm / 1000, show)] : []),
      ];
    }
  }
}
