import type { Track } from '../../core/track/types.ts';
import type { BadSupport, Fonts } from './bandFrame.ts';
import { stretchesOf } from './columns.ts';
import { type GradeLine, gradeLines, plannedBreaks, turnsBetween } from './gradeLines.ts';
import type { Ground } from './ground.ts';
import { LabelRoom } from './labelRoom.ts';
import type { ProfileDrawing } from './profileDrawing.ts';
import { type MeasureText, textWidth } from './textWidth.ts';
import {
  gradeBothForms,
  gradeOneForm,
  lengthFigure,
  lengthUnit,
  roundLengthWords,
  type Show,
  turnsWords,
  withUnit,
} from './words.ts';

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
  /** The train goes against the chainage, so what falls along it climbs for the train. */
  readonly reversed: boolean;
}

/** Lettering above the line and below it: baseline and box relative to the line, px. */
const SIDES = [
  { base: -5.5, top: -15, bottom: -3, className: 'gwb-grade' },
  { base: 13, top: 3, bottom: 16, className: 'gwb-grade gwb-in-fill' },
] as const;
/** Where along a stretch its lettering is tried, as shares. */
const TRIES = [0.5, 0.36, 0.64, 0.24, 0.76];
/** Free line at either end of a lettered stretch, px. */
const CLEAR = 5;
/** Vertical curves shorter than this on the screen are not written. */
const LEAST_CURVE = 14;

/** The section's lettering, in order of weight: what is wrong, heights where grades meet, the grades themselves. */
export function letterSection(task: LetteringTask, measure: MeasureText = textWidth): Lettering {
  const { track, ground, profile, show, fonts, bad } = task;
  const width = ground.axis.width;
  const room = new LabelRoom({ left: -1, right: width + 1, top: 0, bottom: profile.datum });
  const leaders: Lettering['leaders'][number][] = [];
  const texts: Lettering['texts'][number][] = [];

  for (const { support, chainage, departure } of bad) {
    const text = `support ${support + 1} is ${withUnit(lengthFigure(Math.abs(departure), show), lengthUnit(show))} ${departure > 0 ? 'high' : 'low'}`;
    const size = measure(text, `600 12px ${fonts.ui}`);
    for (const [turn, x] of ground.xsOf(chainage).entries()) {
      const key = `bad ${support} ${turn}`;
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
    // Above the line anywhere along the stretch if there is room, else in the fill below it.
    for (const { base, top, bottom, className } of SIDES) {
      for (const share of TRIES) {
        const x = stretch.first + CLEAR + size / 2 + share * (free - size);
        const from = profile.yAtX(x - size / 2);
        const to = profile.yAtX(x + size / 2);
        const turn = (Math.atan2(to - from, size) * 180) / Math.PI;
        const box = {
          left: x - size / 2 - 3,
          right: x + size / 2 + 3,
          top: Math.min(from, to) + top,
          bottom: Math.max(from, to) + bottom,
        };
        if (!room.take(box)) continue;
        texts.push({
          key: `grade ${line.from} ${stretch.first}`,
          text,
          x,
          y: (from + to) / 2 + base,
          anchor: 'middle',
          turn,
          className,
        });
        return;
      }
    }
  }
}
