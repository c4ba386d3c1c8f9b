import type { Reading as CoreReading, CrossReading, Place } from '../../core/survey/types.ts';
import { type LengthUnit, parseGrade, parseLength, type Reading } from '../../core/units/index.ts';
import type { SceneReading } from '../../scene/index.ts';
import type { Stop } from './stops.ts';
import { tidy } from './tools.ts';
import type { ReadingKind, Tool } from './types.ts';

const degree = Math.PI / 180;

/** Understands a number typed for a kind of reading: bare, in the instrument's unit or the builder's, or with a unit of its own. */
export function readTyped(kind: ReadingKind, unit: Tool['unit'], lengthUnit: LengthUnit, text: string): Reading {
  return kind === 'grade' || kind === 'cross'
    ? parseGrade(text, { bare: unit })
    : parseLength(text, { unit: lengthUnit });
}

/** What was read at a stop: a grade, or m. */
export function newReading(kind: ReadingKind, tool: Tool, stop: Stop, value: number, turned: boolean): SceneReading {
  const mm = tidy(value * 1000);
  const where = stop.support === null ? { atMm: tidy(stop.chainage * 1000) } : { support: stop.support + 1 };
  switch (kind) {
    case 'grade':
      return { kind, ...where, baseMm: tool.baseMm, ...gradeFields(value, tool.unit), ...(turned && { turned: true }) };
    case 'height':
      return { kind, ...where, heightMm: mm, ...(tool.line !== '' && { line: tool.line }) };
    case 'rise': {
      const [from, to] = stop.beside.map((support) => support + 1);
      return { kind, fromSupport: from, toSupport: to, riseMm: mm, ...(tool.boardMm > 0 && { boardMm: tool.boardMm }) };
    }
    case 'gap':
      return { kind, ...where, baseMm: tool.baseMm, gapMm: mm };
    case 'cross':
      return { kind, ...where, ...crossFields(value, tool.unit) };
  }
}

const gradeFields = (grade: number, unit: Tool['unit']) =>
  unit === 'degree' ? { gradeDeg: tidy(Math.atan(grade) / degree) } : { gradePercent: tidy(grade * 100) };

const crossFields = (slope: number, unit: Tool['unit']) =>
  unit === 'degree' ? { crossDeg: tidy(Math.atan(slope) / degree) } : { crossPercent: tidy(slope * 100) };

/** What a reading read: a grade, or m. */
export function readingValue(reading: SceneReading): number {
  switch (reading.kind) {
    case 'grade':
      return reading.gradeDeg === undefined ? (reading.gradePercent ?? 0) / 100 : Math.tan(reading.gradeDeg * degree);
    case 'height':
      return reading.heightMm / 1000;
    case 'rise':
      return reading.riseMm / 1000;
    case 'gap':
      return reading.gapMm / 1000;
    case 'cross':
      return reading.crossDeg === undefined ? (reading.crossPercent ?? 0) / 100 : Math.tan(reading.crossDeg * degree);
  }
}

export const unitOf = (reading: SceneReading): Tool['unit'] =>
  (reading.kind === 'grade' && reading.gradeDeg !== undefined) ||
  (reading.kind === 'cross' && reading.crossDeg !== undefined)
    ? 'degree'
    : 'percent';

/** The same reading with another number: a grade, or m. */
export function withValue(reading: SceneReading, value: number): SceneReading {
  const mm = tidy(value * 1000);
  switch (reading.kind) {
    case 'grade': {
      const { gradeDeg: _deg, gradePercent: _percent, ...rest } = reading;
      return { ...rest, ...gradeFields(value, unitOf(reading)) };
    }
    case 'height':
      return { ...reading, heightMm: mm };
    case 'rise':
      return { ...reading, riseMm: mm };
    case 'gap':
      return { ...reading, gapMm: mm };
    case 'cross': {
      const { crossDeg: _deg, crossPercent: _percent, ...rest } = reading;
      return { ...rest, ...crossFields(value, unitOf(reading)) };
    }
  }
}

/** A reading from a table as a scene holds it. */
export function sceneReading(reading: CoreReading): SceneReading {
  switch (reading.kind) {
    case 'grade':
      return {
        kind: 'grade',
        ...placeFields(reading.at),
        baseMm: tidy(reading.base * 1000),
        ...(reading.anchor === 'start' && { anchor: 'start' as const }),
        ...gradeFields(reading.grade, reading.unit),
        ...(reading.face < 0 && { turned: true }),
      };
    case 'height':
      return {
        kind: 'height',
        ...placeFields(reading.at),
        heightMm: tidy(reading.height * 1000),
        ...(reading.line !== null && { line: reading.line }),
      };
    case 'rise':
      return {
        kind: 'rise',
        fromSupport: supportOf(reading.from),
        toSupport: supportOf(reading.to),
        riseMm: tidy(reading.rise * 1000),
        ...(reading.board > 0 && { boardMm: tidy(reading.board * 1000) }),
      };
    case 'gap':
      return {
        kind: 'gap',
        ...placeFields(reading.at),
        baseMm: tidy(reading.base * 1000),
        gapMm: tidy(reading.gap * 1000),
      };
  }
}

/** A cross-level from a table, likewise. */
export const sceneCross = ({ at, slope, unit }: CrossReading): SceneReading => ({
  kind: 'cross',
  ...placeFields(at),
  ...crossFields(slope, unit),
});

const placeFields = (place: Place) =>
  'support' in place ? { support: place.support + 1 } : { atMm: tidy(place.chainage * 1000) };

/** Tables give spacers between supports only. */
const supportOf = (place: Place): number => ('support' in place ? place.support + 1 : 0);
