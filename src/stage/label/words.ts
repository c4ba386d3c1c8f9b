import type { Finding } from '../../core/findings/types.ts';
import { trackPoint } from '../../core/track/index.ts';
import type { TrackPoint } from '../../core/track/types.ts';
import { formatGrade, formatLength, formatNumber, thinSpace } from '../../core/units/index.ts';
import { describeOf, placeWords, radiusText } from '../../state/index.ts';
import type { LensView, SessionState } from '../../state/types.ts';

type Trial = NonNullable<SessionState['trial']>;
type Units = Pick<SessionState, 'lengthUnit' | 'gradeForm'>;

/** A length in the person's units: tenths of a millimetre, or inches. */
export const lengthWords = (metres: number, { lengthUnit }: Pick<Units, 'lengthUnit'>, digits = 1): string =>
  lengthUnit === 'mm'
    ? formatLength(metres, { unit: 'mm', digits })
    : formatLength(metres, Math.abs(metres) < 0.0254 ? { unit: 'in', digits: 3 } : { unit: 'in' });

/** A grade's size, whichever way it goes. */
export const gradeWords = (grade: number, { gradeForm }: Pick<Units, 'gradeForm'>): string =>
  formatGrade(Math.abs(grade), gradeForm === 'percent' ? { form: 'percent', digits: 1 } : { form: 'one-in' });

/** The first clause of a finding's headline, without its place: "Joint 6 rides up". */
export function shortHeadline(headline: string): string {
  return headline.split(/ (?:at|on|in|where|near|from|clear) |[.,;]/u, 1)[0];
}

/** What a label on the stage says of a finding. */
export function labelWords(state: SessionState, finding: Finding): { readonly head: string; readonly line: string } {
  const told = describeOf(state, finding);
  const size = told.margin.replace(/^[−-]/u, '');
  return {
    head: shortHeadline(told.headline),
    line: finding.margin < 0 ? `${size} past its limit` : `${size} left`,
  };
}

/** Fractions of a turn that have a sign of their own. */
const quarters = ['', '¼', '½', '¾'];

/** Turns of all helix elements together and their radius: "3½ turns, R 600 mm"; empty without a helix. */
export function turnWords(trial: Trial, units: Units): string {
  let turns = 0;
  let radius = Infinity;
  for (const element of trial.path.track.spec.elements) {
    if (element.kind !== 'helix') continue;
    turns += Math.abs(element.length * element.startCurvature) / (2 * Math.PI);
    radius = Math.min(radius, 1 / Math.abs(element.startCurvature));
  }
  if (turns === 0) return '';
  const whole = Math.floor(turns);
  const quarter = Math.round((turns - whole) * 4);
  const plain = Math.abs(turns - whole - quarter / 4) < 0.005;
  const count = plain
    ? `${quarter === 4 ? whole + 1 : whole || ''}${quarters[quarter % 4]}`
    : formatNumber(turns, { digits: 1, trim: true });
  return `${count} ${turns === 1 ? 'turn' : 'turns'}, ${radiusText(radius, units)}`;
}

/** The line under the title: gauge, turns, fall and length. */
export function railwayWords(state: Pick<SessionState, 'scene' | 'trial' | 'lengthUnit' | 'gradeForm'>): string {
  const { scene, trial } = state;
  if (scene === null || trial === null) return '';
  const { track } = trial.path;
  const point = {} as TrackPoint;
  const from = trackPoint(track, 0, point).z;
  const to = trackPoint(track, track.length, point).z;
  const rise = to - from;
  const length = placeWords(track.length, state);
  const height =
    Math.abs(rise) < 5e-5
      ? `level over ${length}`
      : `${rise < 0 ? 'falls' : 'climbs'} ${lengthWords(Math.abs(rise), state)} in ${length}`;
  const gauge = `${scene.scale.name}, ${lengthWords(scene.scale.gaugeMm / 1000, state)}`;
  return [gauge, turnWords(trial, state), height].filter((part) => part !== '').join(' · ');
}

/** Whether the strip stands anywhere off its planned height. */
const asBuilt = ({ path }: Trial): boolean =>
  (path.legs ?? [path]).some(
    ({ track }) => track.spec.profile.strip?.supports.some((support) => support.departure !== 0) ?? false,
  );

/** A time of the trial, s. */
export const clockWords = (time: number, digits = 1): string => `${formatNumber(time, { digits })}${thinSpace}s`;

/** The stage's title at a time (s). */
export function titleWords(state: Pick<SessionState, 'scene' | 'trial' | 'result' | 'progress'>, time: number): string {
  const { scene, trial, result } = state;
  if (scene === null) return 'No railway is open';
  if (trial === null) return scene.name;
  const shown = asBuilt(trial) ? 'As built' : 'As planned';
  if (result === null) return `${shown}, before the trial`;
  return `${shown}, with the trial at ${clockWords(time)}`;
}

/** Where the lens looks from, in words that follow a comma. */
export const lensWords: Readonly<Record<LensView, string>> = {
  side: 'from the side',
  above: 'from above',
  along: 'along the train',
};
