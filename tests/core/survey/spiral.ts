import { seededRandom } from '../../../src/core/math/index.ts';
import type { Instrument, Reading, SurveyInput } from '../../../src/core/survey/index.ts';
import { helix, makeTrack, straight, type Track, trackPoint } from '../../../src/core/track/index.ts';

/** Two and a half turns of 600 mm radius at 2.2 %, on 24 supports 400 mm apart. */
export const spacing = 0.4;
export const supports = Array.from({ length: 24 }, (_, i) => i * spacing);
export const grade = 0.022;

export const spiral = (departures: readonly number[] = []): Track =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [helix(0.6, 2.5)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: 9, height: 9 * grade },
      ],
      ...(departures.length === 0
        ? {}
        : { strip: { supports: supports.map((chainage, i) => ({ chainage, departure: departures[i] })), hinges: [] } }),
    },
  });

/** A straight ramp at the same grade on supports `spacing` apart. */
export const ramp = (length: number): Track =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(length)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: length, height: length * grade },
      ],
    },
  });

export const level: Instrument = { id: 'level', deviation: 0.0005, step: 0.001, zero: 0.0015 };
export const line: Instrument = { id: 'line', deviation: 0.0003, step: 0.0005, zero: 0 };
export const caliper: Instrument = { id: 'spacer', deviation: 0.0002, step: 0.0001, zero: 0 };

export const gradeAt = (chainage: number, value: number, more: Partial<Reading & { kind: 'grade' }> = {}): Reading => ({
  kind: 'grade',
  name: `grade ${Math.round(chainage * 1e3)}`,
  instrument: 'level',
  at: { chainage },
  anchor: 'centre',
  base: 0.3,
  grade: value,
  unit: 'percent',
  face: 1,
  ...more,
});

export const heightAt = (support: number, value: number, of: string | null = null): Reading => ({
  kind: 'height',
  name: `height ${support + 1}`,
  instrument: 'line',
  at: { support },
  height: value,
  line: of,
});

export const surveyOf = (readings: readonly Reading[], more: Partial<SurveyInput> = {}): SurveyInput => ({
  track: spiral(),
  supports,
  strip: { hinges: [] },
  instruments: [level, line, caliper],
  readings,
  fixed: [],
  board: 0.009,
  setting: 0.0002,
  ...more,
});

/** Departures of all supports, m, from those that are off, mm by number from 1. */
export function standing(offMm: Readonly<Record<number, number>>): number[] {
  return supports.map((_, i) => (offMm[i + 1] ?? 0) / 1e3);
}

const rounded = (value: number, step: number): number => Math.round(value / step) * step;

/** What a track built so would show: its own geometry asked, noise of the stated size added, rounded to the step. */
export function readOff(built: Track, readings: readonly Reading[], seed: number, zero = 0.001): Reading[] {
  const random = seededRandom(seed);
  const z = (s: number): number => trackPoint(built, s).z;
  const chainage = (place: Reading extends never ? never : { support: number } | { chainage: number }): number =>
    'support' in place ? supports[place.support] : place.chainage;
  return readings.map((reading): Reading => {
    if (reading.kind === 'height') {
      const own = reading.line === null ? 0 : 0.37;
      const value = z(chainage(reading.at)) + own + line.deviation * random.normal();
      return { ...reading, height: rounded(value, line.step) };
    }
    if (reading.kind === 'rise') {
      const value = z(chainage(reading.to)) - z(chainage(reading.from)) - reading.board;
      return { ...reading, rise: rounded(value + caliper.deviation * random.normal(), caliper.step) };
    }
    if (reading.kind === 'gap') return reading;
    // On a curve of radius R two feet a chord apart are 2R·asin(chord/2R) apart along the track.
    const way = 2 * 0.6 * Math.asin(reading.base / Math.sqrt(1 + grade * grade) / 1.2);
    const at = chainage(reading.at);
    const chord = reading.base / Math.sqrt(1 + grade * grade);
    const value = (z(at + way / 2) - z(at - way / 2)) / chord;
    return { ...reading, grade: rounded(value + reading.face * zero + level.deviation * random.normal(), level.step) };
  });
}

/** Forty readings: a grade in every span but the outer ones, two of them on both faces, and heights from a laser line. */
export const fortyReadings: readonly Reading[] = [
  ...supports.slice(1, -2).map((s) => gradeAt(s + spacing / 2, 0)),
  gradeAt(2.2, 0, { face: -1 }),
  gradeAt(6.6, 0, { face: -1 }),
  ...[0, 2, 4, 5, 6, 8, 9, 10, 12, 14, 15, 16, 17, 18, 20, 22, 23].map((i) => heightAt(i, 0, 'laser')),
];
