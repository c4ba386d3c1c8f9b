import { type GradeLine, gradeLines, plannedBreaks, turnsBetween } from '../../../core/track/index.ts';
import type { Track } from '../../../core/track/types.ts';
import type { Pass } from '../../../state/routeEdits/index.ts';
import type { TrialLeg } from '../../../state/types.ts';
import type { BadSupport, Fonts } from '../frame/bandFrame.ts';
import { stretchesOf } from '../frame/columns.ts';
import { leastClear, passRuns } from '../handles/passRuns.ts';
import { LabelRoom } from '../labelRoom.ts';
import { type MeasureText, textWidth } from '../textWidth.ts';
import {
  gradeBothForms,
  gradeOneForm,
  lengthFigure,
  lengthUnit,
  roundLengthWords,
  type Show,
  turnsWords,
  withUnit,
} from '../words.ts';
import type { Ground } from './ground.ts';
import type { ProfileDrawing } from './profileDrawing.ts';

export interface Lettering {
  readonly leaders: readonly {
    readonly key: string;
    readonly x: number;
    readonly top: number;
    readonly bottom: number;
    readonly marked: boolean;
  }[];
  readonly texts: readonly {
    readonly key: string;
    readonly text: string;
    readonly x: number;
    readonly y: number;
    readonly anchor: 'start' | 'middle' | 'end';
    /** Degrees, clockwise on the screen. */
    readonly turn: number;
    readonly className: string;
  }[];
}

export interface LetteringTask {
  readonly track: Track;
  readonly ground: Ground;
  readonly profile: ProfileDrawing;
  readonly show: Show;
  readonly fonts: Fonts;
  readonly bad: readonly BadSupport[];
  /** The legs of a route, whose tracks are named where they begin; absent: one track. */
  readonly legs?: readonly Pick<TrialLeg, 'trackName' | 'start'>[];
  /** What passes over and under the track, drawn as lines that lettering keeps off; absent: nothing is drawn. */
  readonly passes?: readonly Pass[];
  /** The train goes against the chainage, so what falls along it climbs for the train. */
  readonly reversed: boolean;
}

/** Lettering above the line and below it: baseline and box relative to the line, px. */
const SIDES = [
  { base: -5.5, top: -15, bottom: -3, className: 'gwb-grade' },
  { base: 13, top: 3, bottom: 16, className: 'gwb-grade gwb-in-fill' },
] as const;
/** How much further from the line than beside it lettering is tried, px: a line of it at a time. */
const OFFSETS = [0, 14, 28].flatMap((further) =>
  SIDES.map((side) => ({ ...side, off: side.base < 0 ? -further : further })),
);
/** Where along a stretch its lettering is tried, as shares. */
const TRIES = [0.5, 0.36, 0.64, 0.24, 0.76];
/** Free line at either end of a lettered stretch, px. */
const CLEAR = 5;
/** A place of a line that passes keeps this much to either side free, px: places along one lie nearer than twice that at any usual width. */
const PASS_REACH = 4;
/** Vertical curves shorter than this on the screen are not written. */
const LEAST_CURVE = 14;

/** The section's lettering, in order of weight: what is wrong, heights where grades meet, the grades themselves. */
export function letterSection(task: LetteringTask, measure: MeasureText = textWidth): Lettering {
  const { track, ground, profile, show, fonts, bad, legs = [], passes = [] } = task;
  const width = ground.axis.width;
  const room = new LabelRoom({ left: -1, right: width + 1, top: 0, bottom: profile.datum });
  const leaders: Lettering['leaders'][number][] = [];
  const texts: Lettering['texts'][number][] = [];

  for (const { support, leg, chainage, departure } of bad) {
    const of = leg === undefined ? '' : ` of ${legs[leg]?.trackName ?? ''}`;
    const text = `support ${support + 1}${of} is ${withUnit(lengthFigure(Math.abs(departure), show), lengthUnit(show))} ${departure > 0 ? 'high' : 'low'}`;
    const size = measure(text, `600 12px ${fonts.ui}`);
    for (const [turn, x] of ground.xsOf(chainage).entries()) {
      const key = `bad ${leg ?? ''} ${support} ${turn}`;
      leaders.push({ key, x, top: 8, bottom: profile.yAtX(x), marked: true });
      room.block({ left: x - 3, right: x + 3, top: 8, bottom: profile.datum });
      for (const anchor of ['start', 'end'] as const) {
        const left = anchor === 'start' ? x + 6 : x - 6 - size;
        if (!room.take({ left, right: left + size, top: 4, bottom: 18 })) continue;
        texts.push({
          key,
          text,
          x: anchor === 'start' ? left : left + size,
          y: 15,
          anchor,
          turn: 0,
          className: 'gwb-fault',
        });
        break;
      }
    }
  }

  for (const side of ['above', 'below'] as const) {
    for (const { points } of passRuns(passes, side)) {
      for (const [chainage, height] of points) {
        const y = profile.yOf(height);
        for (const x of ground.xsOf(chainage)) {
          room.block({ left: x - PASS_REACH, right: x + PASS_REACH, top: y - 2, bottom: y + 2 });
        }
      }
    }
  }
  const clear = leastClear(passes);
  for (const x of clear === null ? [] : ground.xsOf(clear.chainage)) {
    // The least clear height is written at the foot there.
    room.block({ left: x - 60, right: x + 60, top: profile.datum - 16, bottom: profile.datum });
  }

  if (legs.length > 1) letterLegs(task, legs, leaders, texts, room, measure);

  for (const { chainage, height, curve } of plannedBreaks(track)) {
    const figure = lengthFigure(height, show);
    for (const [turn, x] of ground.xsOf(chainage).entries()) {
      const key = `break ${chainage} ${turn}`;
      const span = ground.axis.span;
      const curveWidth = ground.axis.kind === 'chainage' ? (curve / (span.to - span.from)) * width : 0;
      const written = curve > 0 ? `${figure} · curve ${roundLengthWords(curve, show)}` : figure;
      // A curve that would be a speck is worth no words.
      const options = curveWidth >= LEAST_CURVE ? [written, figure] : [figure];
      placing: for (const text of options) {
        const size = measure(text, `11.5px ${fonts.letter}`);
        for (const anchor of ['end', 'start'] as const) {
          const left = anchor === 'start' ? x + 4 : x - 4 - size;
          if (!room.take({ left: left - 3, right: left + size + 3, top: 4, bottom: 17 })) continue;
          texts.push({
            key,
            text,
            x: anchor === 'start' ? left : left + size,
            y: 14,
            anchor,
            turn: 0,
            className: 'gwb-figure',
          });
          leaders.push({ key, x, top: 6, bottom: profile.yAtX(x), marked: false });
          room.block({ left: x - 2, right: x + 2, top: 6, bottom: profile.yAtX(x) });
          break placing;
        }
      }
    }
  }

  for (const line of gradeLines(track)) {
    const stretches = stretchesOf(
      ground.places.length,
      (x) => ground.places[x] >= line.from && ground.places[x] <= line.to,
    );
    for (const stretch of stretches) letterGrade(task, line, stretch, room, texts, measure);
  }
  return { leaders, texts };
}

/** The name of each track of a route after the place where it begins, at the top, else at the foot of the section. */
function letterLegs(
  { ground, profile, fonts }: LetteringTask,
  legs: NonNullable<LetteringTask['legs']>,
  leaders: Lettering['leaders'][number][],
  texts: Lettering['texts'][number][],
  room: LabelRoom,
  measure: MeasureText,
): void {
  for (const [index, { trackName, start }] of legs.entries()) {
    const size = measure(trackName, `600 11.5px ${fonts.letter}`);
    const [begin, end] = [start, legs[index + 1]?.start ?? Number.POSITIVE_INFINITY];
    const inside = (x: number): boolean => ground.places[x] >= begin && ground.places[x] < end;
    for (const [turn, { first, last }] of stretchesOf(ground.places.length, inside).entries()) {
      const key = `leg ${index} ${turn}`;
      if (index > 0 && first > 0) {
        leaders.push({ key, x: first, top: 2, bottom: profile.datum, marked: false });
        room.block({ left: first - 2, right: first + 2, top: 2, bottom: profile.datum });
      }
      if (size + 2 * CLEAR > last - first) continue;
      const left = first + CLEAR;
      for (const foot of [14, profile.datum - 4]) {
        if (!room.take({ left, right: left + size, top: foot - 10, bottom: foot + 2 })) continue;
        texts.push({ key, text: trackName, x: left, y: foot, anchor: 'start', turn: 0, className: 'gwb-leg' });
        break;
      }
    }
  }
}

function gradeTexts({ track, show, reversed }: LetteringTask, line: GradeLine): string[] {
  const both = gradeBothForms(line.grade, show);
  if (both === 'level') return [both];
  const way = line.grade > 0 !== reversed ? 'climbing' : 'falling';
  const turns = turnsWords(turnsBetween(track, line.from, line.to));
  return [`${both} · ${way}${turns ? `, ${turns}` : ''}`, both, gradeOneForm(line.grade, show)];
}

function letterGrade(
  task: LetteringTask,
  line: GradeLine,
  stretch: { readonly first: number; readonly last: number },
  room: LabelRoom,
  texts: Lettering['texts'][number][],
  measure: MeasureText,
): void {
  const { profile, fonts } = task;
  const free = stretch.last - stretch.first - 2 * CLEAR;
  for (const text of gradeTexts(task, line)) {
    const size = measure(text, `12.5px ${fonts.letter}`);
    if (size > free) continue;
    // At the line anywhere along the stretch if there is room, above or in the fill below it, else further off, beyond what passes close by.
    for (const { base, top, bottom, className, off } of OFFSETS) {
      for (const share of TRIES) {
        const x = stretch.first + CLEAR + size / 2 + share * (free - size);
        const from = profile.yAtX(x - size / 2);
        const to = profile.yAtX(x + size / 2);
        const turn = (Math.atan2(to - from, size) * 180) / Math.PI;
        const box = {
          left: x - size / 2 - 3,
          right: x + size / 2 + 3,
          top: Math.min(from, to) + top + off,
          bottom: Math.max(from, to) + bottom + off,
        };
        if (!room.take(box)) continue;
        texts.push({
          key: `grade ${line.from} ${stretch.first}`,
          text,
          x,
          y: (from + to) / 2 + base + off,
          anchor: 'middle',
          turn,
          className,
        });
        return;
      }
    }
  }
}
