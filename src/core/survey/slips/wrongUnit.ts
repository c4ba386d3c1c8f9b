import { atan, tan } from '../../math/index.ts';
import type { Row } from '../rows.ts';
import type { GradeReading } from '../types.ts';
import { type Candidate, type Family, fitsWell, type SlipContext } from './candidate.ts';

const degree = Math.PI / 180;

/** Written as one unit, meant as the other: the number that was written, taken in the other unit. */
function otherUnit(reading: GradeReading): { grade: number; factor: number } {
  // 1 % is 0.01 and 1° is 0.01746: an error of the display grows or shrinks alike.
  if (reading.unit === 'percent') return { grade: tan(reading.grade * 100 * degree), factor: 100 * degree };
  return { grade: atan(reading.grade) / degree / 100, factor: 1 / (100 * degree) };
}

function inOtherUnit(row: Row, reading: GradeReading): Row {
  const { grade, factor } = otherUnit(reading);
  return { ...row, observed: grade, deviation: row.deviation * factor, halfStep: row.halfStep * factor };
}

/** Per cent read as degrees and back: one reading, or all that an instrument gave in that unit. */
export function wrongUnit({ readings, rows, normalised }: SlipContext): Family {
  const grades = readings.flatMap((reading, index) => (reading.kind === 'grade' ? [{ reading, index }] : []));
  const candidates: Candidate[] = [];
  const candidate = (members: readonly { reading: GradeReading; index: number }[]): void => {
    candidates.push({
      kind: members[0].reading.unit === 'percent' ? 'degrees-for-percent' : 'percent-for-degrees',
      readings: members.map(({ index }) => index),
      support: -1,
      at: 'readings',
      instead: new Map(members.map(({ reading, index }) => [index, inOtherUnit(rows[index], reading)])),
      amount: members.length === 1 ? members[0].reading.grade - otherUnit(members[0].reading).grade : 0,
    });
  };
  for (const one of grades) if (Math.abs(normalised[one.index]) > fitsWell) candidate([one]);
  const groups = new Map<string, { reading: GradeReading; index: number }[]>();
  for (const one of grades) {
    const key = `${one.reading.unit} ${one.reading.instrument}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  for (const group of groups.values()) if (group.length > 1) candidate(group);
  return { candidates, alternatives: grades.length + groups.size };
}
